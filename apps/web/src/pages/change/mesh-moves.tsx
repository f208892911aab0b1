import type { Coupling, Machine } from '@rotorwright/machine';
import { matingPhase } from '@rotorwright/mechanics';
import { showNumber } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { outlinePath } from '../drive/train/shapes.ts';
import { distanceOf, wheelOf } from '../drive/train/wheels.ts';

/** Width and height of a picture on paper, in modules of the mesh. */
const span = { width: 24, height: 17 };
/** px for each mm at which the outlines are set; the picture is scaled to its column. */
const grain = 40;

/** Every mesh whose tooth counts change: true flanks today and after, the driven gear held still. */
export function MeshMoves({ today, after }: { readonly today: Machine; readonly after: Machine }): ReactNode {
  const moved = [...after.couplings.values()].flatMap((coupling) => {
    const before = today.couplings.get(coupling.id);
    if (before === undefined || coupling.kind !== 'external' || before.kind !== 'external') return [];
    return before.driver.teeth === coupling.driver.teeth && before.driven.teeth === coupling.driven.teeth ? [] : [{ before, coupling }];
  });
  if (moved.length === 0) return null;
  return <section className="area" aria-label="Meshes"><div className="area-head"><h2>The mesh moves</h2><span className="soft small">dashed today, solid after</span></div>{moved.map((pair) => <Mesh key={pair.coupling.id} {...pair} />)}</section>;
}

function Mesh({ before, coupling }: { readonly before: Coupling; readonly coupling: Coupling }): ReactNode {
  const [was, is] = [before, coupling].map(distanceOf);
  if (was === undefined || is === undefined) return <p className="soft">{coupling.title}: the file gives no module, so nothing can be drawn.</p>;
  const module = (coupling.module ?? 1e-3) * 1000;
  const [width, height] = [span.width * module * grain, span.height * module * grain];
  // The driven gear stands at the origin, its driver to the left; the picture is centred on where they meet.
  const meet = -(wheelOf(coupling, 'driven').radius * grain);
  const moves = is - was;
  const words = `${coupling.title}: axes ${moves === 0 ? 'stay' : `${moves > 0 ? 'apart' : 'together'} by ${showNumber(Math.abs(moves), { decimals: 2 })} mm, from ${showNumber(was, { decimals: 2 })} to ${showNumber(is, { decimals: 2 })} mm`}`;
  return (
    <figure className="mesh-moved">
      <svg viewBox={`${(meet - width * 0.7).toFixed(0)} ${(-height / 2).toFixed(0)} ${width.toFixed(0)} ${height.toFixed(0)}`} role="img" aria-label={words}>
        <line className="axis" x1={meet - width} x2={meet + width} y1="0" y2="0" />
        {[[before, was, 'was'], [coupling, is, 'is']].map(([pair, distance, name]) => <Pair key={name as string} coupling={pair as Coupling} distance={distance as number} name={name as string} />)}
      </svg>
      <figcaption>{words}</figcaption>
    </figure>
  );
}

function Pair({ coupling, distance, name }: { readonly coupling: Coupling; readonly distance: number; readonly name: string }): ReactNode {
  const [driver, driven] = [wheelOf(coupling, 'driver'), wheelOf(coupling, 'driven')];
  const { teeth: z1, outline: small } = driver;
  const { teeth: z2, outline: big } = driven;
  if (z1 === undefined || z2 === undefined || small === undefined || big === undefined) return null;
  // A gap of the driven gear faces the driver; on paper y runs down, so turns are drawn the other way.
  const phase = matingPhase(z2, Math.PI + Math.PI / z2, z1, Math.PI);
  const turn = (angle: number): number => (-angle * 180) / Math.PI;
  return (
    <g className={name}>
      <path d={outlinePath(big, grain)} transform={`rotate(${turn(Math.PI + Math.PI / z2).toFixed(3)})`} />
      <path d={outlinePath(small, grain)} transform={`translate(${(-distance * grain).toFixed(2)} 0) rotate(${turn(phase).toFixed(3)})`} />
    </g>
  );
}
