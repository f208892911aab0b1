import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Machine } from '@rotorwright/machine';
import { plateOf } from '../../src/controls/plate.ts';
import type { Plate } from '../../src/controls/plate-types.ts';
import { tailOf, type Tail } from '../../src/controls/tail.ts';
import { solveDrive } from '../../src/drive/solve.ts';
import { read } from '../read.ts';

/** A bare mast with a plate, written for the tests. Every number is invented. */
export const bench = (controls: string, { sense = 'clockwise', stops = '-10 to 12 °', axis = 'up', hub = '[0 mm, 0 mm, 180 mm]' } = {}): Machine => read(`
rotorwright: 1
machine: {name: Bench}
power: {motor: {on: mast, speed: 1700 rpm, turns: ${sense} from above}}
shafts: {mast: {axis: ${axis}}, tail: {axis: left}}
rotors:
  main: {on: mast, blades: 2, diameter: 1500 mm, at: ${hub}, stops: ${stops}, cyclic: 7 °}
  tail: {on: tail, blades: 2, diameter: 260 mm, at: [-900 mm, 60 mm, 0 mm], stops: -14 to 24 °}
controls:
${controls}
`);

const pitchLink = 'pitch: {from: swashplate, to: main, from-ball: [9 mm, 31 mm, 7 mm], to-ball: [10 mm, 30 mm, -4 mm]}';

type Triple = readonly [number, number, number];

/** The same bench with a point of it taken somewhere by a rotation whose columns are given: forward, left, up. */
const turnedBy = (columns: readonly [Triple, Triple, Triple], [x, y, z]: Triple): Triple => [0, 1, 2].map((row) => columns[0][row]! * x + columns[1][row]! * y + columns[2][row]! * z) as unknown as Triple;
const millimetres = (point: Triple): string => `[${point.map((each) => `${each} mm`).join(', ')}]`;

/** Arms square to their radius, servos at some angles round a mast that may lean, all of it about the origin. */
export const around = (angles: readonly number[], options?: Parameters<typeof bench>[1], mast: readonly [Triple, Triple, Triple] = [[1, 0, 0], [0, 1, 0], [0, 0, 1]]): Machine => {
  const at = (point: Triple): string => millimetres(turnedBy(mast, point));
  const along = (direction: Triple): string => `[${turnedBy(mast, direction).join(', ')}]`;
  const servos = angles.map((degrees, index) => {
    const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    const [x, y] = [40 * c + 17 * s, 40 * s - 17 * c];
    return `    s${index + 1}: {arm: 17 mm, points: ${along([-s, c, 0])}, axis: ${along([c, s, 0])}, pivot: ${at([x, y, 30])}, azimuth: ${degrees} °, travel: 100 °}`;
  });
  return bench(`
  swashplate: {on: mast, radius: 40 mm, at: ${at([0, 0, 100])}, guide: [-45 mm, 0 mm, -2 mm], driver: [0 mm, -25 mm, 7 mm]}
  servos:
${servos.join('\n')}
  links:
${angles.map((_, index) => `    l${index + 1}: {from: s${index + 1}, to: swashplate, play: 0.01 mm}`).join('\n')}
    ${pitchLink}`, { axis: along([0, 0, 1]), hub: at([0, 0, 180]), ...options });
};

/** One of three rods comes from a bell-crank; with `riding` that bell-crank's pivot rides on a lever of a fourth servo. */
export const levered = (riding = false): Machine => bench(`
  swashplate: {on: mast, radius: 40 mm, at: [0 mm, 0 mm, 100 mm], guide: [-45 mm, 0 mm, -2 mm]}
  servos:
    front: {arm: 18 mm, points: up, axis: left, pivot: [110 mm, 0 mm, -8 mm], travel: 100 °}
    left: {arm: 17 mm, points: fore, axis: left, pivot: [-37 mm, 34.6 mm, 30 mm], azimuth: 120 °, travel: 100 °}
    right: {arm: 17 mm, points: fore, axis: left, pivot: [-37 mm, -34.6 mm, 30 mm], azimuth: 240 °, travel: 100 °}
    ${riding ? 'lift: {arm: 15 mm, points: up, axis: left, pivot: [160 mm, 20 mm, 10 mm], travel: 100 °}' : ''}
  levers:
    crank: {pivot: [60 mm, 0 mm, 30 mm], axis: left${riding ? ', on: beam' : ''}, play: 0.02 mm}
    ${riding ? 'beam: {pivot: [95 mm, 0 mm, 32 mm], axis: left}' : ''}
  links:
    push: {from: front, to: crank, to-ball: [60 mm, 0 mm, 10 mm], play: 0.01 mm}
    ${riding ? 'lifting: {from: lift, to: beam, to-ball: [95 mm, 20 mm, 50 mm]}' : ''}
    l1: {from: crank, to: swashplate, from-ball: [40 mm, 0 mm, 30 mm], to-ball: [40 mm, 0 mm, 0 mm]}
    l2: {from: left, to: swashplate}
    l3: {from: right, to: swashplate}
    ${pitchLink}`);

export const plateIn = (machine: Machine): Plate => {
  const plate = plateOf(machine, solveDrive(machine));
  if (!plate || !('rest' in plate)) throw new Error(`the test's plate is not known: ${JSON.stringify(plate)}`);
  return plate;
};

export const tailIn = (machine: Machine): Tail => {
  const tail = tailOf(machine);
  if (!tail || !('hub' in tail)) throw new Error(`the test's tail is not known: ${JSON.stringify(tail)}`);
  return tail;
};

/** A machine of the demo. */
export const example = (name: 'whimbrel' | 'sanderling'): Machine => read(readFileSync(path.resolve(import.meta.dirname, `../../../../examples/${name}/machine.yaml`), 'utf8'));
