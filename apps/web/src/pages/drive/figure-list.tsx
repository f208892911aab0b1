import type { Figure, FigureSet } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { StateMark } from '../../sheet/index.ts';

/** Figures that stand in other places of this sheet. */
const elsewhere = /^(speed |ratio |turns |centre-distance |mesh-frequency |belt-tooth-frequency )/;

const groups: readonly (readonly [string, RegExp])[] = [
  ['Rotors', /^(tip-speed|tip-mach|bolt-pull|blade-pull|stored-energy|rotor-inertia|blade-centre|blade-passing)/],
  ['Governor and sensors', /^(sensor|governor)/],
  ['Meshes and belts', /^(hunting|belt-frequency)/],
  ['Air', /^(speed-of-sound|air-density)/],
];

/** All other figures of the machine; each opens into its working. */
export function FigureList({ set, onOpen }: { readonly set: FigureSet; readonly onOpen: (figure: string) => void }): ReactNode {
  const rest = set.all.filter(({ name }) => !elsewhere.test(name));
  const known = new Set(groups.flatMap(([, pattern]) => rest.filter(({ name }) => pattern.test(name))));
  const sections = [...groups.map(([title, pattern]) => [title, rest.filter(({ name }) => pattern.test(name))] as const), ['Further', rest.filter((figure) => !known.has(figure))] as const].filter(([, list]) => list.length > 0);
  return (
    <section className="area">
      <div className="area-head"><h2>Figures</h2><span className="small soft">each opens into its working</span></div>
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
