import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { temporaryFolder } from './shell.ts';

/** Invented: an engine, one mesh with a choice, one rotor, one screw to lock and one gap to measure. */
export const plover = `# The plover, invented for tests
machine:
  name: Plover
  invented: true
power:
  engine: { on: crank, speed: 12400 rpm, turns: counter-clockwise from above }
shafts:
  crank: { axis: up }
  mast: { axis: up }
drive:
  main-mesh:
    kind: external
    driver: { on: crank, teeth: 10, choices: [ { teeth: 9 }, { teeth: 10 }, { teeth: 11, code: PL-11, price: 9.50 EUR } ] }
    driven: { on: mast, teeth: 77 }
rotors:
  main: { on: mast, blades: 2, diameter: 1310 mm, wanted: 1500 to 1700 rpm }
modules:
  head:
    parts:
      plate: { ground: true }
      post: { mass: 11 g }
    joints:
      post-screw: { kind: screw, in: post, holds: plate, thread: M3, class: "12.9", lock: medium, torque: 1.2 N·m }
    measurements:
      gap: { of: gap, with: feeler gauge, window: 0.1 to 0.3 mm }
      swing: { of: drag, ask: "Does the post swing freely?" }
`;

/** A folder with the file in it, and a home beside it. */
export function bench(text = plover): { readonly folder: string; readonly home: string } {
  const folder = temporaryFolder();
  writeFileSync(path.join(folder, 'plover.yaml'), text);
  return { folder, home: path.join(folder, 'home') };
}
