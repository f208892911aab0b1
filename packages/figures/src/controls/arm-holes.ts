import type { Machine, Servo } from '@rotorwright/machine';
import type { DriveSolution } from '../drive/solve.ts';
import { envelopeOf } from './envelope.ts';
import { plateOf } from './plate.ts';
import { servoForPitch, tailAnswer, tailOf } from './tail.ts';

/** What one hole of an arm would do. */
export interface ArmHole {
  /** m from the axis */
  readonly hole: number;
  readonly fitted: boolean;
  /** Largest turn of the servo from mid travel over all sticks, rad; absent where something does not reach. */
  readonly turn?: number;
  /** Whether the travel of the servo is enough for it; false where something does not reach. */
  readonly reaches: boolean;
  /** Pitch that one step of the servo moves a blade by, rad, where it answers most. */
  readonly pitchPerStep?: number;
}

/** Holes of a servo's arm, or of several that are drilled alike, and the one to take. */
export interface ArmChoice {
  /** Path of the entry `arm`. */
  readonly path: string;
  readonly servos: readonly Servo[];
  readonly holes: readonly ArmHole[];
  /** The shortest that reaches everything: it gives most force and finest steps. */
  readonly take?: number;
}

/** @param machine  its links are taken as long as they must be for each hole */
export function armChoices(machine: Machine, drive: DriveSolution): readonly ArmChoice[] {
  const drilled = [...machine.controls.servos.values()].filter(({ holes }) => holes !== undefined);
  const paths = [...new Set(drilled.map(({ path }) => path))];
  return paths.map((path): ArmChoice => {
    const servos = drilled.filter((servo) => servo.path === path);
    const all = [...new Set(servos.flatMap(({ holes = [], arm }) => [...holes, ...(arm === undefined ? [] : [arm])]))].toSorted((a, b) => a - b);
    const holes = all.map((hole) => ({ hole, fitted: servos.every(({ arm }) => arm === hole), ...tried(withArm(machine, servos, hole), drive, servos) }));
    const take = holes.find(({ reaches }) => reaches)?.hole;
    return { path: `${path}.arm`, servos, holes, ...(take === undefined ? {} : { take }) };
  });
}

/** The machine with other holes taken, and its links cut anew for them. */
function withArm(machine: Machine, servos: readonly Servo[], arm: number): Machine {
  const { controls } = machine;
  const ids = new Set(servos.map(({ id }) => id));
  const fitted = [...controls.servos].map(([id, servo]) => [id, ids.has(id) ? { ...servo, arm } : servo] as const);
  const links = [...controls.links].map(([id, { length: _length, ...link }]) => [id, link] as const);
  return { ...machine, controls: { ...controls, servos: new Map(fitted), links: new Map(links) } };
}

function tried(machine: Machine, drive: DriveSolution, servos: readonly Servo[]): Pick<ArmHole, 'turn' | 'reaches' | 'pitchPerStep'> {
  const ids = servos.map(({ id }) => id);
  const plate = plateOf(machine, drive);
  if (plate && 'rest' in plate && plate.servos.some(({ id }) => ids.includes(id))) {
    const { unreached, servoTurns } = envelopeOf(plate);
    if (unreached.length > 0) return { reaches: false };
    const turns = plate.servos.flatMap((servo, index) => (ids.includes(servo.id) ? [{ servo, turn: servoTurns[index]! }] : []));
    const answers = plate.servos.flatMap(({ id }, index) => (ids.includes(id) ? [Math.abs(plate.sensitivity[0][index]!) + Math.hypot(plate.sensitivity[1][index]!, plate.sensitivity[2][index]!)] : []));
    return judged(turns, Math.max(...answers), servos[0]!);
  }
  const tail = tailOf(machine);
  const [servo] = tail && 'hub' in tail ? tail.servos : [];
  if (!tail || !('hub' in tail) || servo === undefined || !ids.includes(servo.id)) return { reaches: false };
  const ends = [tail.wanted.low, tail.wanted.high].map((pitch) => servoForPitch(tail, pitch));
  const answer = tailAnswer(tail, 0);
  if (ends.includes(undefined) || answer === undefined) return { reaches: false };
  return judged([{ servo, turn: Math.max(...ends.map((end) => Math.abs(end!.angle))) }], Math.abs(answer), servo);
}

function judged(turns: readonly { readonly servo: Servo; readonly turn: number }[], answer: number, { travel, pulses, step }: Servo): Pick<ArmHole, 'turn' | 'reaches' | 'pitchPerStep'> {
  const turn = Math.max(...turns.map((each) => each.turn));
  const finest = travel === undefined || step === undefined || pulses?.min === undefined || pulses.max === undefined ? undefined : (travel * step) / (pulses.max - pulses.min);
  return { turn, reaches: travel !== undefined && turn <= travel / 2, ...(finest === undefined ? {} : { pitchPerStep: finest * answer }) };
}
