import type { Figure, FigureSet } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { useId, useState, type ReactNode } from 'react';
import { StateMark } from '../../sheet/index.ts';
import { sheetOfFigure } from '../../sheet/sheets.ts';

/** Figures that stand in other places of this sheet, or with their step on the Build sheet. */
const elsewhere = /^(speed |ratio |turns |centre-distance |mesh-frequency |belt-tooth-frequency |torque |preload |utilisation |thread-margin )/;

const groups: readonly (readonly [string, RegExp])[] = [
  ['Rotors', /^(tip-speed|tip-mach|bolt-pull|blade-pull|stored-energy|rotor-inertia|blade-centre|blade-passing)/],
  ['Governor and sensors', /^(sensor|governor)/],
  ['Meshes and belts', /^(hunting|belt-frequency)/],
  ['Air', /^(speed-of-sound|air-|dry-air)/],
];

/** The air in which tip Mach numbers are asked for, against the standard atmosphere. */
export interface Air {
  /** m */
  readonly altitude: number;
  /** K */
  readonly temperatureOffset: number;
}

function AirField({ title, value, least, most, onValue }: { readonly title: string; readonly value: number; readonly least: number; readonly most: number; readonly onValue: (value: number) => void }): ReactNode {
  const id = useId();
  const [typed, setTyped] = useState(String(value));
  const valid = (text: string): boolean => /^[-−]?\d+([.]\d+)?$/.test(text.trim()) && inside(numberOf(text));
  const numberOf = (text: string): number => Number(text.trim().replace('−', '-'));
  const inside = (number: number): boolean => number >= least && number <= most;
  return (
    <div>
      <label htmlFor={id}>{title}</label>
      <input
        id={id} type="text" inputMode="decimal" value={typed} aria-invalid={!valid(typed)} {...(valid(typed) ? {} : { 'aria-describedby': `${id}-wrong` })}
        onChange={({ target }) => {
          setTyped(target.value);
          if (valid(target.value)) onValue(numberOf(target.value));
        }}
      />
      {!valid(typed) && <span id={`${id}-wrong`} className="rule-wrong">{least} to {most}</span>}
    </div>
  );
}

/** All other figures of the machine; each opens into its working. */
export function FigureList({ set, air, onAir, onOpen }: { readonly set: FigureSet; readonly air: Air; readonly onAir: (air: Air) => void; readonly onOpen: (figure: string) => void }): ReactNode {
  const rest = set.all.filter(({ name }) => !elsewhere.test(name) && sheetOfFigure(name) === 'drive');
  const known = new Set(groups.flatMap(([, pattern]) => rest.filter(({ name }) => pattern.test(name))));
  const sections = [...groups.map(([title, pattern]) => [title, rest.filter(({ name }) => pattern.test(name))] as const), ['Further', rest.filter((figure) => !known.has(figure))] as const].filter(([, list]) => list.length > 0);
  return (
    <section className="area">
      <div className="area-head"><h2>Figures</h2><span className="small soft">each opens into its working</span></div>
      <div className="air" role="group" aria-label="Air">
        <AirField title="Altitude, m" value={air.altitude} least={-500} most={5000} onValue={(altitude) => onAir({ ...air, altitude })} />
        <AirField title="Warmer than standard, K" value={air.temperatureOffset} least={-60} most={60} onValue={(temperatureOffset) => onAir({ ...air, temperatureOffset })} />
      </div>
      <div className="figure-groups">{sections.map(([title, list]) => <div key={title}><h3>{title}</h3><ul>{list.map((figure) => <Row key={figure.name} figure={figure} onOpen={onOpen} />)}</ul></div>)}</div>
    </section>
  );
}

function Row({ figure, onOpen }: { readonly figure: Figure; readonly onOpen: (figure: string) => void }): ReactNode {
  return (
    <li>
      <button type="button" className="figure-link" onClick={() => onOpen(figure.name)}>{figure.title}</button>
      <span className="figure-value">{figure.value === undefined ? <span className="state-word unknown"><StateMark state="unknown" size={12} />{figure.missing.length > 0 ? 'entry missing' : 'not known'}</span> : <>{showQuantity(figure.value, figure.shown)}{figure.exact !== undefined && figure.exact !== String(figure.value) && <span className="soft"> = {figure.exact}</span>}</>}</span>
    </li>
  );
}
