import { bladePitches, closed, harmonicAzimuths, linearServoAngles, poseFor, poseOf, servoAnglesAt, sweepPlate, trainAt, type PlatePose, type PlateServo, type PlateSweep, type SwashplateGeometry, type WantedPitch } from '@rotorwright/mechanics';
import { less } from './mast-frame.ts';
import type { Plate, Posed, Sticks } from './plate-types.ts';
import { solveBack } from './solve-back.ts';
import { turnBack } from './turn-back.ts';

const rides = ({ train }: Posed): boolean => train.levers.some(({ on }) => on !== undefined);

/**
 * The cranks of the plate with the servos at some angles: arms and levers where they stand, and how far each has turned.
 *
 * @returns undefined where a lever's rod does not reach
 */
export function cranksAt(plate: Posed, angles: readonly number[]): { readonly geometry: SwashplateGeometry; readonly angles: readonly number[] } | undefined {
  const { train, ends, geometry } = plate;
  if (train.levers.length === 0) return { geometry, angles: ends.map(({ mover }) => angles['servo' in mover ? mover.servo : 0]!) };
  const position = trainAt(train, angles);
  if ('unreached' in position) return undefined;
  const turned = ends.map(({ mover }) => ('servo' in mover ? angles[mover.servo]! : position.levers[mover.lever]!));
  if (!rides(plate)) return { geometry, angles: turned };
  // A crank whose pivot rides along is put where it has gone, with its own turn in it.
  const moved = ends.map(({ mover, balls: [ball] }, index): PlateServo => {
    const servo = geometry.servos[index]!;
    if ('servo' in mover) return servo;
    const pivot = position.at(mover, servo.pivot);
    const tip = position.at(mover, [servo.pivot[0] + servo.axis[0], servo.pivot[1] + servo.axis[1], servo.pivot[2] + servo.axis[2]]);
    return { ...servo, pivot, axis: less(tip, pivot), arm: less(position.at(mover, ball), pivot) };
  });
  return { geometry: { ...geometry, servos: moved }, angles: ends.map(({ mover }, index) => ('servo' in mover ? turned[index]! : 0)) };
}

/** Where the plate goes when the servos stand at some angles [rad]; undefined where something does not reach. */
export function poseAt(plate: Posed, angles: readonly number[], near?: PlatePose): { readonly pose: PlatePose; readonly rodErrors: readonly number[] } | undefined {
  const cranks = cranksAt(plate, angles);
  const found = cranks && poseOf(cranks.geometry, cranks.angles, near);
  if (!found || (plate.ends.length === 3 && found.rodErrors.some((error) => Math.abs(error) > closed))) return undefined;
  return { pose: found.pose, rodErrors: [...found.rodErrors] };
}

/**
 * Pitch that some sticks ask for. A disc follows its blades a quarter of a turn later: it goes down in front when
 * the pitch is least over the left or right side that the blade passes on its way to the front.
 *
 * @source the quarter turn holds for a hinge on the axis and blades in their own frequency; common practice takes it for all heads
 */
export function wantedAt({ wanted, geometry }: Pick<Plate, 'wanted' | 'geometry'>, { collective, fore, right }: Sticks): WantedPitch {
  const { low, high, cyclic } = wanted;
  return { collective: (low + high) / 2 + (collective * (high - low)) / 2, cyclicCos: (geometry.rotation === 'clockwise' ? 1 : -1) * right * cyclic, cyclicSin: -fore * cyclic };
}

/** Servo angles that a mixer commands which knows the sensitivities at mid travel; undefined where the servos cannot give all three. */
export function mixed(plate: Pick<Plate, 'sensitivity' | 'atRest'>, wanted: WantedPitch): readonly number[] | undefined {
  return linearServoAngles(plate.sensitivity, plate.atRest, wanted);
}

/**
 * Servo angles that give the wanted pitch exactly, without a mixer's straight lines.
 *
 * @returns undefined where plate, levers or links do not reach
 */
export function servosFor(plate: Plate, wanted: WantedPitch): readonly number[] | undefined {
  const pose = poseFor(plate.geometry, wanted, plate.rest);
  if (pose === undefined) return undefined;
  if (!rides(plate)) return servosAt(plate, pose);
  const start = mixed(plate, wanted);
  return start && solveBack((angles) => {
    const there = poseAt(plate, angles, pose)?.pose;
    return there && [there.height - pose.height, there.p - pose.p, there.q - pose.q];
  }, start);
}

/** Servo angles at which the rods carry the plate in a pose, each from its own rod and levers. */
function servosAt(plate: Plate, pose: PlatePose): readonly number[] | undefined {
  const cranks = servoAnglesAt(plate.geometry, pose);
  if ('unreached' in cranks) return undefined;
  const angles = plate.servos.map((): number | undefined => undefined);
  plate.ends.forEach(({ mover }, index) => {
    const back = turnBack(plate.train, mover, cranks[index]!);
    if (back !== undefined) angles[back.servo] = back.angle;
  });
  return angles.includes(undefined) ? undefined : (angles as readonly number[]);
}

/** A plate taken through many positions of the sticks. */
export interface StickSweep extends PlateSweep {
  /** Servo angles, rad, position by position. */
  readonly angles: Float64Array;
}

/** Pose and pitch at `harmonicAzimuths` azimuths for many positions of the sticks that lie near one another, as the mixer commands them. */
export function sweepSticks(plate: Plate, positions: readonly Sticks[]): StickSweep | undefined {
  const count = plate.servos.length;
  const angles = new Float64Array(count * positions.length);
  for (const [index, sticks] of positions.entries()) {
    const commanded = mixed(plate, wantedAt(plate, sticks));
    if (commanded === undefined) return undefined;
    angles.set(commanded, count * index);
  }
  return { angles, ...sweepAngles(plate, angles) };
}

const azimuths = Float64Array.from({ length: harmonicAzimuths }, (_, index) => (2 * Math.PI * index) / harmonicAzimuths);

function sweepAngles(plate: Plate, angles: Float64Array): PlateSweep {
  const { geometry, ends, servos, rest } = plate;
  const positions = angles.length / servos.length;
  if (!rides(plate)) {
    const cranks = new Float64Array(ends.length * positions);
    for (let position = 0; position < positions; position += 1) {
      cranks.set(cranksAt(plate, [...angles.subarray(servos.length * position, servos.length * (position + 1))])?.angles ?? ends.map(() => Number.NaN), ends.length * position);
    }
    return sweepPlate(geometry, cranks, azimuths, rest);
  }
  // Levers that ride on others make a geometry of their own at each position.
  const poses = new Float64Array(3 * positions).fill(Number.NaN);
  const pitches = new Float64Array(azimuths.length * positions).fill(Number.NaN);
  for (let position = 0; position < positions; position += 1) {
    const pose = poseAt(plate, [...angles.subarray(servos.length * position, servos.length * (position + 1))], rest)?.pose;
    if (pose === undefined) continue;
    poses.set([pose.height, pose.p, pose.q], 3 * position);
    bladePitches(geometry, pose, azimuths, pitches.subarray(azimuths.length * position, azimuths.length * (position + 1)));
  }
  return { poses, pitches };
}
