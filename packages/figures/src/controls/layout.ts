import type { Controls, EntryPath, Lever, Link, Machine, Rotor, Servo } from '@rotorwright/machine';
import { dot, type LeverTrain, type Mover, type TrainLever, type Vector3 } from '@rotorwright/mechanics';
import { directionIn, less, pointIn, type Frame } from './mast-frame.ts';

/** A link as it lies at rest: servos at mid travel, plate level, slider and blades in their middle. */
export interface Rod {
  readonly link: Link;
  /** Its balls there, m: seen from the origin of what it belongs to; of a rotor's link in hub coordinates. */
  readonly balls: readonly [from: Vector3, to: Vector3];
  /** Length that it must have for that, m, ball to ball. */
  readonly wanted: number;
  /** That of the file; the wanted one where the file has none. */
  readonly length: number;
}

/** Servos and levers that lead to a plate or a slider. */
export interface Lead {
  readonly servos: readonly Servo[];
  readonly levers: readonly Lever[];
  readonly train: LeverTrain;
  /** Links between servos and levers, one a lever. */
  readonly rods: readonly Rod[];
}

/** What a layout lacks: entries that would make it known. */
export interface Lacks {
  readonly missing: readonly EntryPath[];
}

const lengthOf = (a: Vector3): number => Math.sqrt(dot(a, a));

/** Collects the lead to what some links move; what is missing is gathered on the way. */
export function leadBuilder({ controls }: Machine, frame: Frame, missing: Set<EntryPath>) {
  const servos: Servo[] = [];
  const levers: Lever[] = [];
  const train: { readonly servos: LeverTrain['servos'][number][]; readonly levers: TrainLever[] } = { servos: [], levers: [] };
  const rods: Rod[] = [];
  const building = new Set<string>();

  /** What a link starts from, and where its ball is at rest; undefined where the file does not say. */
  function start(link: Link): { readonly mover: Mover; readonly ball: Vector3 } | undefined {
    const servo = controls.servos.get(link.from);
    if (servo) return servoStart(servo);
    const lever = controls.levers.get(link.from);
    if (!lever) {
      missing.add(`${link.path}.from`);
      return undefined;
    }
    const index = leverAt(lever);
    if (link.fromBall === undefined) missing.add(link.fromBallPath);
    return index === undefined || link.fromBall === undefined ? undefined : { mover: { lever: index }, ball: pointIn(frame, link.fromBall) };
  }

  function servoStart(servo: Servo): { readonly mover: Mover; readonly ball: Vector3 } | undefined {
    const { pivot, axis, points, arm } = servo;
    for (const [key, value] of [['pivot', pivot], ['axis', axis], ['points', points], ['arm', arm]] as const) if (value === undefined) missing.add(`${servo.path}.${key}`);
    if (pivot === undefined || axis === undefined || points === undefined || arm === undefined) return undefined;
    const [line, way] = [directionIn(frame, axis), directionIn(frame, points)];
    const along = dot(way, line);
    const square: Vector3 = less(way, [along * line[0], along * line[1], along * line[2]]);
    const size = lengthOf(square);
    if (!(size > 1e-6)) {
      missing.add(`${servo.path}.points`);
      return undefined;
    }
    let index = servos.findIndex(({ id }) => id === servo.id);
    if (index < 0) {
      index = servos.length;
      servos.push(servo);
      train.servos.push({ pivot: pointIn(frame, pivot), axis: line });
    }
    const from = pointIn(frame, pivot);
    return { mover: { servo: index }, ball: [from[0] + (arm * square[0]) / size, from[1] + (arm * square[1]) / size, from[2] + (arm * square[2]) / size] };
  }

  /** Place of a lever in the train; what moves it and what it rides on come first. */
  function leverAt(lever: Lever): number | undefined {
    const known = levers.findIndex(({ id }) => id === lever.id);
    if (known >= 0) return known;
    if (building.has(lever.id)) {
      missing.add(`${lever.path}.on`);
      return undefined;
    }
    building.add(lever.id);
    const carrier = lever.on === undefined ? undefined : controls.levers.get(lever.on);
    const on = carrier && leverAt(carrier);
    const link = [...controls.links.values()].find(({ to }) => to === lever.id);
    if (link === undefined) missing.add('controls.links');
    if (link && link.toBall === undefined) missing.add(link.toBallPath);
    const from = link && start(link);
    if (link?.toBall === undefined || from === undefined || (lever.on !== undefined && on === undefined)) return undefined;
    const ball = pointIn(frame, link.toBall);
    const rod = rodOf(link, from.ball, ball);
    rods.push(rod);
    levers.push(lever);
    train.levers.push({ pivot: pointIn(frame, lever.pivot), axis: directionIn(frame, lever.axis), ball, rod: { from: from.mover, ball: from.ball, length: rod.length }, ...(on === undefined ? {} : { on }) });
    return levers.length - 1;
  }

  return { start, leverAt, lead: (): Lead => ({ servos, levers, train, rods }) };
}

export function rodOf(link: Link, from: Vector3, to: Vector3): Rod {
  const wanted = lengthOf(less(to, from));
  return { link, balls: [from, to], wanted, length: link.length ?? wanted };
}

/** Link that moves the blades of a rotor. */
export function bladeLink({ links }: Controls, from: string, rotors: ReadonlyMap<string, Rotor>): Link | undefined {
  return [...links.values()].find((link) => link.from === from && rotors.has(link.to));
}

/** Middle of the pitch that the builder wants, rad. */
export const middleOf = ({ stops }: Rotor): number | undefined => (stops?.min === undefined || stops.max === undefined ? undefined : (stops.min + stops.max) / 2);

/** A ball of a grip at some pitch, hub coordinates: leading edge up. */
export const gripAt = ([r, t, z]: Vector3, pitch: number): Vector3 => [r, t * Math.cos(pitch) - z * Math.sin(pitch), t * Math.sin(pitch) + z * Math.cos(pitch)];
