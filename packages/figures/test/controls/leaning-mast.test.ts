import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Machine } from '@rotorwright/machine';
import { numberIn } from '../../../../tests/number-in.ts';
import { mixed, poseAt, servosFor, wantedAt } from '../../src/controls/plate-motion.ts';
import { plateOf } from '../../src/controls/plate.ts';
import { controlsReport } from '../../src/controls/report.ts';
import { solveDrive } from '../../src/drive/solve.ts';
import { figures } from '../../src/set/figures.ts';
import { around, example, plateIn } from './benches.ts';

type Triple = readonly [number, number, number];

const minus = (a: readonly number[], b: readonly number[]): readonly number[] => a.map((each, index) => each - b[index]!);

/** Forward, left and up of a mast that leans by an angle [rad] towards a side [rad from forward]: forward stays over the machine's forward. */
function leaning(angle: number, side: number): readonly [Triple, Triple, Triple] {
  const up: Triple = [Math.sin(angle) * Math.cos(side), Math.sin(angle) * Math.sin(side), Math.cos(angle)];
  // Square to the mast and in the plane of it and the way forward: the way forward, less its part along the mast.
  const long = Math.sqrt(1 - up[0] ** 2);
  const forward: Triple = [(1 - up[0] ** 2) / long, (-up[0] * up[1]) / long, (-up[0] * up[2]) / long];
  const left: Triple = [up[1] * forward[2] - up[2] * forward[1], up[2] * forward[0] - up[0] * forward[2], up[0] * forward[1] - up[1] * forward[0]];
  return [forward, left, up];
}

const angles = [0, 120, 240];
const upright = around(angles, { sense: 'counter-clockwise' });
const stick = numberIn(-0.7, 0.7);
// Nearer to lying than 30° the file's “from above” says nothing any more.
const lean = fc.record({ angle: numberIn(0, 1), side: fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }) });

describe('a mast that leans', () => {
  it('asks for the same lengths and moves its blades alike: nothing depends on how the bench stands', () => {
    // Law: physics does not know the axes of a file.
    const plate = plateIn(upright);
    fc.assert(fc.property(lean, stick, stick, stick, ({ angle, side }, collective, fore, right) => {
      const other = plateIn(around(angles, { sense: 'counter-clockwise' }, leaning(angle, side)));
      const wanted = wantedAt(plate, { collective, fore, right });
      expect(wantedAt(other, { collective, fore, right })).toEqual(wanted);
      for (const [index, end] of plate.ends.entries()) expect(other.ends[index]!.wanted).toBeCloseTo(end.wanted, 12);
      expect(other.pitchRod.wanted).toBeCloseTo(plate.pitchRod.wanted, 12);
      const [one, two] = [mixed(plate, wanted)!, mixed(other, wanted)!];
      expect(Math.max(...minus(one, two).map(Math.abs))).toBeLessThan(1e-8);
      const [a, b] = [poseAt(plate, one)!.pose, poseAt(other, one)!.pose];
      expect(Math.max(...minus([a.height, a.p, a.q], [b.height, b.p, b.q]).map(Math.abs))).toBeLessThan(1e-9);
      expect(Math.max(...minus(servosFor(plate, wanted)!, servosFor(other, wanted)!).map(Math.abs))).toBeLessThan(1e-8);
    }), { numRuns: 25 });
  });

  it('leaves the length of every rod what the points of the file make it', () => {
    // Independent route: distance of two points, without any frame.
    const machine = around(angles, {}, leaning(0.2, 2));
    const [forward, left, up] = leaning(0.2, 2);
    const plate = plateIn(machine);
    for (const end of plate.ends) {
      const { pivot, points, arm } = machine.controls.servos.get(end.link.from)!;
      const tip = pivot!.map((each, index) => each + points![index]! * arm!);
      const [x, y, z] = end.balls[1];
      const ball = [0, 1, 2].map((row) => machine.controls.swashplate!.at![row]! + x * forward[row]! + y * left[row]! + z * up[row]!);
      expect(Math.hypot(...minus(ball, tip))).toBeCloseTo(end.wanted, 12);
    }
  });

  it('may point down in the file: up is from the plate to the hub', () => {
    const plate = plateIn(upright);
    const down = { ...upright, shafts: new Map(upright.shafts).set('mast', { ...upright.shafts.get('mast')!, axis: [0, 0, -1] as const }) };
    const other = plateIn(down);
    expect(other.ends.map(({ wanted }) => wanted)).toEqual(plate.ends.map(({ wanted }) => wanted));
    expect(other.geometry.grip.height).toBe(plate.geometry.grip.height);
  });

  it('may lean on the demo too: half a degree forward, about the plate, and links differ by next to nothing', () => {
    const machine = example('whimbrel');
    const tilt = Math.PI / 360;
    const rotor = machine.rotors.get('main')!;
    const [x, y, z] = machine.controls.swashplate!.at!;
    const high = rotor.at![2] - z;
    const leant: Machine = {
      ...machine,
      // Gears lean with the mast that they sit on.
      shafts: new Map([...machine.shafts].map(([id, shaft]) => [id, shaft.axis?.[2] === 1 ? { ...shaft, axis: [Math.sin(tilt), 0, Math.cos(tilt)] } : shaft])),
      rotors: new Map(machine.rotors).set('main', { ...rotor, at: [x + high * Math.sin(tilt), y, z + high * Math.cos(tilt)] }),
    };
    const [was, is] = [machine, leant].map((each) => new Map(controlsReport(figures(each)).links.map(({ link, wanted }) => [link.id, wanted])));
    expect(is!.get('pitch-link')).toBeCloseTo(was!.get('pitch-link')!, 12);
    // By hand: the front ball of the plate goes down by radius · sin ½°, and its servo stays where it is.
    expect(was!.get('servo-link.front')! - is!.get('servo-link.front')!).toBeCloseTo(machine.controls.swashplate!.radius! * Math.sin(tilt), 5);
  });
});

describe('a mast that cannot be', () => {
  const stuckOf = (machine: Machine): unknown => plateOf(machine, solveDrive(machine));

  it('is one whose hub lies beside it', () => {
    const shafts = new Map(upright.shafts).set('mast', { ...upright.shafts.get('mast')!, axis: [0, 0.6, 0.8] });
    // By hand: 80 mm up, a mast that leans by 0.6 passes 48 mm beside the hub.
    expect(stuckOf({ ...upright, shafts })).toEqual({ stuck: 'the hub of the rotor lies 48 mm beside the line of the shaft mast through controls.swashplate.at; both must lie on it' });
  });

  it('is one that lies along the machine, with no forward for its plate', () => {
    const rotor = upright.rotors.get('main')!;
    const shafts = new Map(upright.shafts).set('mast', { ...upright.shafts.get('mast')!, axis: [1, 0, 0] });
    const rotors = new Map(upright.rotors).set('main', { ...rotor, at: [0.08, 0, 0.1] });
    expect(stuckOf({ ...upright, shafts, rotors })).toEqual({ stuck: expect.stringMatching(/lies along the machine/u) });
  });
});
