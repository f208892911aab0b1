import { showNumber } from '@rotorwright/units';
import { useId, type ReactNode } from 'react';
import { axisTicks } from '../../sheet/axis-ticks.ts';
import { useWidth } from '../../sheet/use-width.ts';
import { pathOf, scaleOf, spanOf, spread, type Place, type Span } from './chart-layout.ts';

export interface Curve {
  readonly title: string;
  readonly places: readonly Place[];
  /** The one that is read, what it is read against, what lies behind. */
  readonly kind: 'heavy' | 'limit' | 'fine';
  /** From low to high, about a heavy curve. */
  readonly band?: { readonly low: readonly Place[]; readonly high: readonly Place[] };
}

export interface ChartProps {
  readonly title: string;
  /** What the picture says, in a sentence, for who does not see it. */
  readonly words: string;
  readonly x: Span & { readonly title: string };
  readonly y: { readonly title: string };
  readonly curves: readonly Curve[];
  /** Dashed uprights, each with a word. */
  readonly marks?: readonly { readonly x: number; readonly title: string }[];
  /** Where one would like to be. */
  readonly hatched?: Span & { readonly title: string };
}

const HEIGHT = 258;
const LETTER = 14;

/** Curves on one pair of axes, each with its name at its end; the same as a table below. */
export function Chart({ title, words, x, y, curves, marks = [], hatched }: ChartProps): ReactNode {
  const [frame, width] = useWidth<HTMLDivElement>();
  const id = useId();
  const narrow = width < 480;
  const paper = { left: 56, right: Math.max(120, width - (narrow ? 12 : 138)), top: 22, bottom: HEIGHT - 40 };
  const drawn = curves.filter(({ places }) => places.length > 1);
  const span = spanOf(drawn.flatMap(({ places, band }) => [...places, ...(band?.high ?? [])].map(([, value]) => value)));
  const { atX, atY } = scaleOf(paper, x, span);
  const put = (places: readonly Place[]): readonly Place[] => places.filter(([at]) => at >= x.from - 1e-9 && at <= x.to + 1e-9).map(([at, value]) => [atX(at), atY(value)]);
  const ends = drawn.map(({ places }) => put(places).at(-1) ?? [paper.right, paper.top]);
  const heights = spread(ends.map(([, at]) => at + 4), LETTER, { top: paper.top, bottom: paper.bottom });
  return (
    <figure className="rotor-chart" aria-labelledby={`${id}-title`}>
      <figcaption id={`${id}-title`}>{title}</figcaption>
      <div ref={frame}>
        {width > 0 && (
          <svg width={width} height={HEIGHT} role="img" aria-label={words}>
            <defs><pattern id={`${id}-hatch`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V7" className="hatch" /></pattern></defs>
            {hatched && <><rect x={atX(Math.max(x.from, hatched.from))} y={paper.top} width={Math.max(0, atX(Math.min(x.to, hatched.to)) - atX(Math.max(x.from, hatched.from)))} height={paper.bottom - paper.top} style={{ fill: `url(#${id}-hatch)` }} /><text x={atX((hatched.from + hatched.to) / 2)} y={paper.bottom - 6} textAnchor="middle" className="over">{hatched.title}</text></>}
            {axisTicks(x.from, x.to, narrow ? 4 : 7).map((tick) => <g key={tick}><path d={`M${atX(tick)} ${paper.top}V${paper.bottom + 5}`} className="grid" /><text x={atX(tick)} y={paper.bottom + 19} textAnchor="middle">{showNumber(tick, { significant: 6 })}</text></g>)}
            {axisTicks(span.from, span.to, 5).map((tick) => <g key={tick}><path d={`M${paper.left - 5} ${atY(tick)}H${paper.right}`} className="grid" /><text x={paper.left - 8} y={atY(tick) + 4} textAnchor="end">{showNumber(tick, { significant: 6 })}</text></g>)}
            <path d={`M${paper.left} ${paper.top}V${paper.bottom}H${paper.right}`} className="axis" />
            <text x={paper.left - 44} y={paper.top - 9}>{y.title}</text>
            <text x={paper.right} y={HEIGHT - 6} textAnchor="end">{x.title}</text>
            {marks.filter((mark) => mark.x >= x.from && mark.x <= x.to).map((mark, index) => <g key={mark.title}><path d={`M${atX(mark.x)} ${paper.top}V${paper.bottom}`} className="now" /><text x={atX(mark.x) + (atX(mark.x) > paper.right - 90 ? -4 : 4)} y={paper.top + 10 + (index % 3) * LETTER} textAnchor={atX(mark.x) > paper.right - 90 ? 'end' : 'start'} className="over">{mark.title}</text></g>)}
            {drawn.map(({ title: name, places, kind, band }, index) => (
              <g key={name}>
                {band && <path d={`${pathOf(put(band.high))}L${pathOf(put(band.low).toReversed()).slice(1)}Z`} style={{ fill: `url(#${id}-hatch)` }} className="band" />}
                <path d={pathOf(put(places))} className={kind} />
                {!narrow && <text x={paper.right + 8} y={heights[index]} className={`name ${kind}`}>{name}</text>}
              </g>
            ))}
          </svg>
        )}
      </div>
      {narrow && <p className="small soft">{drawn.map(({ title: name, kind }) => `${{ heavy: 'Heavy', limit: 'Dashed', fine: 'Fine' }[kind]}: ${name}.`).join(' ')}</p>}
      <details>
        <summary>As a table</summary>
        <div className="rotor-table" role="group" aria-label="Table" tabIndex={0}><table>
          <thead><tr><th scope="col">{x.title}</th>{drawn.map(({ title: name, band }) => <th key={name} scope="col">{name}, {y.title}{band && ' (low to high)'}</th>)}</tr></thead>
          <tbody>{(drawn[0]?.places ?? []).map(([at], row) => <tr key={at}><th scope="row">{showNumber(at, { significant: 4 })}</th>{drawn.map(({ title: name, places, band }) => <td key={name}>{numberAt(places, row)}{band && ` (${numberAt(band.low, row)} to ${numberAt(band.high, row)})`}</td>)}</tr>)}</tbody>
        </table></div>
      </details>
    </figure>
  );
}

const numberAt = (places: readonly Place[], row: number): string => {
  const place = places[Math.min(row, places.length - 1)];
  return place === undefined ? '' : showNumber(place[1], { significant: 4 });
};
