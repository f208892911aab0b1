import type { Figure, FigureSet } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { StateMark } from '../../sheet/index.ts';
import { markOf, roundedDown } from './verdict.ts';

/** Figure, or with a star all whose names begin so, and the figures of its band where it has one. `margin`: capacity over demand, with its mark. */
type Row = readonly [name: string, kind?: 'band' | 'margin'];

const groups: readonly (readonly [title: string, rows: readonly Row[]])[] = [
  ['Hover', [['power-needed hover', 'band'], ['hover-power main', 'band'], ['hover-power-ground main'], ['hover-thrust main'], ['hover-collective main'], ['blade-loading main'], ['power-lost hover']]],
  ['Power', [['power-in-hand hover', 'margin'], ['power-available'], ['rotor-power-available hover'], ['pack-voltage hover'], ['governor-headroom hover'], ['motor-heat hover']]],
  ['Clutch', [['clutch-in-hand *', 'margin'], ['clutch-grips *'], ['clutch-holds *']]],
  ['Reserve', [['thrust-reserve main', 'margin'], ['thrust-most main'], ['climb-rate']]],
  ['Tail', [['tail-margin hover', 'margin'], ['tail-margin full-power', 'margin'], ['tail-least-speed hover'], ['tail-least-speed full-power'], ['tail-fast-speed'], ['tail-power hover', 'band'], ['tail-collective hover'], ['yaw-acceleration hover']]],
  ['Time', [['endurance hover', 'band'], ['fuel-flow hover', 'band'], ['pack-current hover', 'band']]],
  ['Fast flight', [['endurance-speed'], ['endurance-speed-power'], ['range-speed'], ['range-speed-power'], ['top-speed'], ['tip-mach main'], ['tip-mach tail']]],
  ['Measured in flight', [['flown band-narrowed main'], ['flown blade-drag main'], ['flown blade-inflow main'], ['flown pitch-deviation main']]],
  ['Engine stopped', [['hover-reserve main'], ['autorotation-decay main'], ['autorotation-least-speed main'], ['autorotation-descent main']]],
];

/** The figures of this sheet; each opens into its working. */
export function FigureGroups({ set, onOpen }: { readonly set: FigureSet; readonly onOpen: (figure: string) => void }): ReactNode {
  return (
    <section className="area">
      <div className="area-head"><h2>Figures</h2><span className="small soft">each opens into its working</span></div>
      <div className="rotor-groups">
        {groups.map(([title, rows]) => {
          const known = rows.flatMap(([name, kind]) => {
            const figures = name.endsWith('*') ? set.all.filter((each) => each.name.startsWith(name.slice(0, -1))) : [set.get(name)];
            return figures.flatMap((figure) => (figure ? [{ figure, kind }] : []));
          });
          return known.length === 0 ? null : (
            <div key={title}>
              <h3>{title}</h3>
              <ul>{known.map(({ figure, kind }) => <li key={figure.name}><button type="button" className="figure-link" onClick={() => onOpen(figure.name)}>{figure.title}</button><span className="rotor-value"><Value set={set} figure={figure} {...(kind === undefined ? {} : { kind })} /></span></li>)}</ul>
            </div>
          );
        })}
      </div>
    </section>
  );
}

function Value({ set, figure: { name, value, shown, missing, warnings }, kind }: { readonly set: FigureSet; readonly figure: Figure; readonly kind?: 'band' | 'margin' }): ReactNode {
  if (value === undefined) return <span className="state-word unknown"><StateMark state="unknown" size={12} />{missing.length > 0 ? 'entry missing' : warnings.length > 0 ? 'left out' : 'not known'}</span>;
  if (kind === 'margin') return <span className={`state-word ${markOf(value)}`}><StateMark state={markOf(value)} size={12} label={markOf(value)} />{roundedDown(value)}</span>;
  const [low, high] = kind === 'band' ? ['low', 'high'].map((end) => set.get(bandName(name, end))?.value) : [];
  const show = (each: number): string => showQuantity(each, shown, { significant: 3 });
  return <>{showQuantity(value, shown, { significant: kind === 'band' ? 3 : 4 })}{low !== undefined && high !== undefined && <small className="rotor-band"> {show(low)} to {show(high)}</small>}</>;
}

/** `power-needed hover` has its ends under `power-needed-low hover` and `power-needed-high hover`. */
function bandName(name: string, end: string): string {
  const [first, ...rest] = name.split(' ');
  return [`${first}-${end}`, ...rest].join(' ');
}
