import type { FigureChange } from '@rotorwright/figures';
import { showNumber, showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';

/** What a builder asks for first; the rest stands behind a fold. */
const leading = /^(?:speed |tip-speed |tip-mach |bolt-pull |blade-pull |stored-energy |hover-power |hover-torque |power-in-hand |thrust-reserve |tail-margin )/u;

export interface FigureBarsProps {
  readonly changes: readonly FigureChange[];
  /** Shafts of rotors: of all speeds these are asked for first. */
  readonly rotorShafts: ReadonlySet<string>;
  readonly onOpen: (figure: string) => void;
}

/** Every figure that moves, as a bar from "as today": ink to the right is more, hollow to the left is less. */
export function FigureBars({ changes, rotorShafts, onOpen }: FigureBarsProps): ReactNode {
  const isFirst = ({ name }: FigureChange): boolean => leading.test(name) && (!name.startsWith('speed ') || rotorShafts.has(name.slice('speed '.length)));
  const first = changes.filter(isFirst);
  const rest = changes.filter((change) => !isFirst(change));
  const scale = scaleFor(changes.flatMap((change) => shareOf(change) ?? []));
  if (changes.length === 0) return <p className="soft">No figure moves.</p>;
  return (
    <>
      <Bars changes={first.length > 0 ? first : rest} scale={scale} onOpen={onOpen} />
      {first.length > 0 && rest.length > 0 && <details className="more-figures"><summary>{rest.length} more figures move</summary><Bars changes={rest} scale={scale} onOpen={onOpen} /></details>}
    </>
  );
}

function Bars({ changes, scale, onOpen }: { readonly changes: readonly FigureChange[]; readonly scale: number; readonly onOpen: (figure: string) => void }): ReactNode {
  return (
    <table className="figure-bars">
      <thead><tr><th scope="col">Figure</th><th scope="col" className="bar-head"><span>−{showNumber(scale * 100, { significant: 2 })} %</span><span>as today</span><span>+{showNumber(scale * 100, { significant: 2 })} %</span></th></tr></thead>
      <tbody>
        {changes.map((change) => (
          <tr key={change.name}>
            <th scope="row"><button type="button" className="link" onClick={() => onOpen(change.name)}>{change.title}</button><span className="values">{valueWords(change)}</span></th>
            <td><Bar share={shareOf(change)} scale={scale} /></td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Bar({ share, scale }: { readonly share: number | undefined; readonly scale: number }): ReactNode {
  const words = share === undefined ? 'not comparable' : `${share < 0 ? '−' : '+'}${showNumber(Math.abs(share) * 100, { significant: 3 })} %`;
  const width = share === undefined ? 0 : (Math.min(1, Math.abs(share) / scale) * 96);
  return (
    <svg className="change-bar" viewBox="0 0 200 24" preserveAspectRatio="none" role="img" aria-label={words}>
      <line className="grid-line" x1="4" x2="4" y1="0" y2="24" /><line className="grid-line" x1="52" x2="52" y1="0" y2="24" /><line className="grid-line" x1="148" x2="148" y1="0" y2="24" /><line className="grid-line" x1="196" x2="196" y1="0" y2="24" />
      <line className="today" x1="100" x2="100" y1="0" y2="24" />
      {share !== undefined && <rect className={share < 0 ? 'less' : 'more'} x={share < 0 ? 100 - width : 100} y="7" width={width} height="10" />}
    </svg>
  );
}

const shareOf = ({ before, after }: FigureChange): number | undefined => (before === undefined || after === undefined || before === 0 ? undefined : (after - before) / Math.abs(before));

/** A round share that all bars fit into, but for those that more than double. */
function scaleFor(shares: readonly number[]): number {
  const largest = Math.max(0, ...shares.map(Math.abs).filter((share) => share <= 1));
  return [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1].find((each) => largest <= each) ?? 1;
}

/** "1,765 rpm → 1,891 rpm", with digits enough to tell the two apart. */
export function valueWords({ before, after, shown }: Pick<FigureChange, 'before' | 'after' | 'shown'>): string {
  const words = (significant: number): readonly string[] => [before, after].map((value) => (value === undefined ? 'not known' : showQuantity(value, shown, { significant })));
  const [was, is] = [4, 5, 6, 7].map(words).find(([one, other]) => one !== other) ?? words(8);
  return `${was} → ${is}`;
}
