import { HOLDS_FROM, showMargin, type Margin, type Margins } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { StateMark } from '../../sheet/index.ts';
import { barAt, barWidth, beyond, marks } from './bar-scale.ts';
import { marginWords } from './words.ts';

export interface MarginBarsProps {
  readonly found: Margins;
  readonly shown: readonly Margin[];
  readonly chosen: string | undefined;
  readonly onChoose: (name: string) => void;
}

/** Room beside the scale, in its own units. */
const edge = 14;

/** Every margin as a bar from one: to the right it is left over, to the left it lacks. Dashed is not assessed. */
export function MarginBars({ found, shown, chosen, onChoose }: MarginBarsProps): ReactNode {
  return (
    <table className="margin-bars">
      <thead>
        <tr><th scope="col"><span className="unseen">Part and state</span></th><th scope="col" className="margin-axis"><span className="unseen">As a bar, from one</span><Axis /></th><th scope="col" className="margin-number">Margin</th></tr>
      </thead>
      <tbody>
        {shown.map((margin) => (
          <tr key={margin.name} className={margin.name === chosen ? 'chosen' : undefined}>
            <th scope="row">
              <button type="button" aria-pressed={margin.name === chosen} onClick={() => onChoose(margin.name)}>
                <StateMark state={margin.word} size={16} label={marginWords[margin.word]} />
                <span className="margin-title">{margin.title}</span>
                <span className="margin-sides">{sidesOf(found, margin)}</span>
              </button>
            </th>
            <td><Bar margin={margin} /></td>
            <td className={`margin-number ${margin.word}`}>{margin.value === undefined ? <span className="small">{margin.improve.length > 0 ? 'entry missing' : 'not reckoned'}</span> : showMargin(margin.value)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** "830 N of 722 N, start": what it bears, what it sees, and when. */
export function sidesOf({ set, cases }: Margins, margin: Margin): string {
  if (margin.value === undefined) return margin.improve.length > 0 ? `needs ${margin.improve[0]}${margin.improve.length > 1 ? ` and ${margin.improve.length - 1} more` : ''}` : (margin.reason ?? '');
  const [capacity, demand] = [margin.capacity, margin.demand].map((name) => {
    const figure = set.get(name);
    return figure?.value === undefined ? '' : showQuantity(figure.value, figure.shown, { significant: 3 });
  });
  const when = cases.find(({ id }) => id === margin.loadCase)?.title;
  return `${capacity} of ${demand}${when === undefined ? '' : `, ${when}`}`;
}

function Axis(): ReactNode {
  return (
    <span className="margin-scale" aria-hidden="true">
      {marks.map((mark) => <span key={mark} className={`at-${String(mark).replace('.', '-')}`} style={{ left: `${((barAt(mark) + edge) / (barWidth + 2 * edge)) * 100}%` }}>{mark}</span>)}
    </span>
  );
}

/** The same behind every bar: what is one element is drawn once. */
const ground = (
  <>
    {marks.map((mark) => <path key={mark} className="grid-line" d={`M${barAt(mark)} 0V30`} />)}
    <path className="from" d={`M${barAt(HOLDS_FROM)} 0V30`} />
    <path className="one" d={`M${barAt(1)} 0V30`} />
  </>
);

function Bar({ margin: { value, word } }: { readonly margin: Margin }): ReactNode {
  const one = barAt(1);
  const end = value === undefined ? one : barAt(value);
  return (
    <svg className={`margin-bar ${word}`} viewBox={`${-edge} 0 ${barWidth + 2 * edge} 30`} preserveAspectRatio="none" aria-hidden="true">
      {ground}
      {value === undefined
        ? <path className="missing" d={`M${one} 15H${barAt(2.2)}`} />
        : <><rect x={Math.min(one, end)} y="10" width={Math.max(Math.abs(end - one), 1.5)} height="10" /><path className="end" d={beyond(value) ? `M${end - 5} 8L${end + 2} 15L${end - 5} 22` : `M${end} 6V24`} /></>}
    </svg>
  );
}
