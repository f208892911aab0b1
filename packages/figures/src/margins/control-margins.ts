import { remembered, type Rotor, type Servo } from '@rotorwright/machine';
import { tailQualityOf } from '../controls/quality.ts';
import { plateOf } from '../controls/plate.ts';
import { tailOf } from '../controls/tail.ts';
import { inSentence } from '../drive/in-sentence.ts';
import { solveDrive } from '../drive/solve.ts';
import type { FigureInput } from '../figure.ts';
import { entry, gather } from '../set/builder.ts';
import { hardest, type MarginBench } from './bench.ts';
import { featheringMoment } from './rotor-loads.ts';

/** A servo that moves blades, and how: change of collective, and of cyclic over cosine and sine of the azimuth, for its turn, rad/rad. */
interface Moves {
  readonly servo: Servo;
  readonly rotor: Rotor;
  readonly gains: readonly [collective: number, cosine: number, sine: number];
  readonly cyclic: number;
  /** The pitch at which the gains hold and the blades push hardest, rad; those of mid travel, for all pitches, when absent. */
  readonly at?: number;
}

interface Lacking {
  /** Servos, or the slider, that this is of. */
  readonly of: readonly { readonly id: string; readonly title: string }[];
  readonly missing: readonly string[];
}

/** Follows from the places of the controls, at whatever speed. */
const movesOf = remembered((machine: MarginBench['machine']): { readonly moves: readonly Moves[]; readonly lacking: readonly Lacking[] } => {
  const [plate, tail] = [plateOf(machine, solveDrive(machine)), tailOf(machine)];
  const cyclic = plate && 'rest' in plate ? plate.servos.map((servo, at): Moves => ({ servo, rotor: plate.rotor, gains: [plate.sensitivity[0][at]!, plate.sensitivity[1][at]!, plate.sensitivity[2][at]!], cyclic: plate.wanted.cyclic })) : [];
  const quality = tail && 'hub' in tail ? tailQualityOf(tail) : undefined;
  const rudder = tail && 'hub' in tail && quality ? [{ servo: tail.servos[0]!, rotor: tail.rotor, gains: [quality.hardest?.answer ?? quality.pitchPerServo, 0, 0], cyclic: 0, ...(quality.hardest ? { at: quality.hardest.pitch } : {}) } satisfies Moves] : [];
  const around = [...machine.controls.servos.values()].filter(({ azimuth }) => azimuth !== undefined);
  return {
    moves: [...cyclic, ...rudder],
    lacking: [
      ...(plate && 'missing' in plate ? [{ of: around, missing: plate.missing }] : []),
      ...(tail && 'missing' in tail ? [{ of: [{ id: 'slider', title: 'Servo of the tail' }], missing: tail.missing }] : []),
    ],
  };
});

/** The blades want to lie flat, and the servos hold against them. */
export function addControlMargins(bench: MarginBench): void {
  const { moves, lacking } = movesOf(bench.machine);
  for (const each of moves) addServo(bench, each);
  for (const { of, missing } of lacking) {
    for (const { id, title } of of) {
      const torque = { unit: 'N·m', shown: 'N·m', inputs: {}, missing } as const;
      bench.add({ kind: 'servo', of: id, title: `${title}, torque`, capacity: { title: `Stall torque of ${inSentence(title)}`, ...torque }, demand: { title: `Torque at ${inSentence(title)}`, ...torque } });
    }
  }
}

function sides({ title, path, torque }: Servo): { readonly capacity: Parameters<MarginBench['add']>[0]['capacity'] } {
  const stall = entry(`${path}.torque`, torque, 'N·m');
  return { capacity: { title: `Stall torque of ${inSentence(title)}`, unit: 'N·m', shown: 'N·m', inputs: stall ? { value: stall } : {}, missing: stall ? [] : [`${path}.torque`] } };
}

function addServo(bench: MarginBench, { servo, rotor, gains, cyclic, at }: Moves): void {
  const load = hardest(bench, (each) => featheringMoment(bench, rotor, each));
  if (!load) return;
  const { stops, path } = rotor;
  const gain = (value: number): FigureInput => ({ constant: value, unit: 'rad/rad', source: `by the places of servos, links and levers, ${at === undefined ? 'at mid travel' : 'where the blades push hardest'}` });
  const there = at === undefined ? undefined : { constant: at, unit: 'rad', source: 'pitch at which the blades push hardest on the servo' } as const;
  const { inputs, missing } = gather([
    ['moment', { figure: load.name }, ''],
    ['pitch', entry(`${path}.stops`, stops?.max, 'rad'), `${path}.stops`],
    ['blades', entry(`${path}.blades`, rotor.blades, '-'), `${path}.blades`],
    ['lowest', there ?? entry(`${path}.stops`, stops?.min, 'rad'), `${path}.stops`],
    ['highest', there ?? entry(`${path}.stops`, stops?.max, 'rad'), `${path}.stops`],
    ['collectiveGain', gain(gains[0]), ''],
    ['cosineGain', gain(gains[1]), ''],
    ['sineGain', gain(gains[2]), ''],
    ['cyclic', { entry: `${path}.cyclic`, value: cyclic, unit: 'rad' }, ''],
  ]);
  bench.add({
    kind: 'servo', of: servo.id, title: `${servo.title}, torque`, loadCase: load.loadCase, ...sides(servo),
    demand: { title: `Torque at ${inSentence(servo.title)}, ${load.loadCase.title}`, unit: 'N·m', shown: 'N·m', calculation: 'servo-torque', output: 'torque', inputs, missing },
    leavesOut: ['The file’s torque is that at stall, where a servo no longer moves: half of it is usable. Lift ahead or behind of the feathering axis, friction, weights on the grips, and the jerk of quick sticks.'],
  });
}
