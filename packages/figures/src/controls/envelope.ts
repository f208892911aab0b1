import { linkBalls, leanOf, servoRodLeans, tiltOf, trainAt, type PlatePose, type Vector3 } from '@rotorwright/mechanics';
import type { Lead } from './layout.ts';
import { less } from './mast-frame.ts';
import { cranksAt, sweepSticks } from './plate-motion.ts';
import type { Plate, Sticks } from './plate-types.ts';
import type { Tail } from './tail.ts';
import { tailAt } from './tail.ts';

/** The steepest that a rod stands on a ball over all positions of the sticks. */
export interface WorstLean {
  /** Id of the link, and which of its balls. */
  readonly link: string;
  readonly ball: 'from' | 'to';
  /** rad */
  readonly lean: number;
  /** What the file allows, rad. */
  readonly limit?: number;
  readonly sticks: Sticks | { readonly yaw: number };
  /** Where the blade then is, rad from over the tail; links that turn only. */
  readonly azimuth?: number;
}

/** What a plate goes through over all positions of the sticks. */
export interface Envelope {
  /** Positions that something does not reach. */
  readonly unreached: readonly Sticks[];
  /** Steepest first. */
  readonly leans: readonly WorstLean[];
  /** Largest turn of each servo from mid travel, rad. */
  readonly servoTurns: readonly number[];
  /** Least turn that an arm has left to the dead centre, rad. */
  readonly toDeadCentre: { readonly link: string; readonly angle: number; readonly sticks: Sticks } | undefined;
  readonly tilt: number;
  /** Lowest and highest of the plate's centre from mid travel, m. */
  readonly rise: readonly [low: number, high: number];
}

const around = 12;
/** Sticks at both ends and the middle of collective, in the middle and all round the circle of cyclic. */
const positions: readonly Sticks[] = [-1, 0, 1].flatMap((collective) => [
  { collective, fore: 0, right: 0 },
  ...Array.from({ length: around }, (_, index) => ({ collective, fore: Math.cos((2 * Math.PI * index) / around), right: Math.sin((2 * Math.PI * index) / around) })),
]);

export function envelopeOf(plate: Plate): Envelope {
  const sweep = sweepSticks(plate, positions);
  const count = plate.servos.length;
  const worst = new Map<string, WorstLean>();
  const keep = (lean: WorstLean): void => keepWorst(worst, lean);
  const unreached: Sticks[] = [];
  const servoTurns = plate.servos.map(() => 0);
  let [tilt, low, high] = [0, 0, 0];
  let dead: Envelope['toDeadCentre'];
  positions.forEach((sticks, position) => {
    const [height, p, q] = sweep ? sweep.poses.subarray(3 * position, 3 * position + 3) : [];
    const pitches = sweep?.pitches.subarray(azimuths * position, azimuths * (position + 1));
    const angles = sweep ? [...sweep.angles.subarray(count * position, count * (position + 1))] : [];
    const cranks = sweep && cranksAt(plate, angles);
    if (height === undefined || p === undefined || q === undefined || !pitches || !cranks || Number.isNaN(height) || pitches.includes(Number.NaN)) {
      unreached.push(sticks);
      return;
    }
    const pose: PlatePose = { height, p, q };
    angles.forEach((angle, servo) => (servoTurns[servo] = Math.max(servoTurns[servo]!, Math.abs(angle))));
    tilt = Math.max(tilt, tiltOf(pose).whole);
    low = Math.min(low, height);
    high = Math.max(high, height);
    // 1. Rods below the plate, and those between servos and levers.
    servoRodLeans(cranks.geometry, cranks.angles, pose)?.forEach(({ from, to, toDeadCentre }, end) => {
      const { link } = plate.ends[end]!;
      keep({ link: link.id, ball: 'from', lean: from, ...limitOf(link.lean), sticks });
      keep({ link: link.id, ball: 'to', lean: to, ...limitOf(link.lean), sticks });
      if (dead === undefined || toDeadCentre < dead.angle) dead = { link: link.id, angle: toDeadCentre, sticks };
    });
    for (const lean of leverLeans(plate, angles)) keep({ ...lean, sticks });
    // 2. The link above it, all round.
    const { link } = plate.pitchRod;
    pitches.forEach((pitch, index) => {
      const azimuth = (2 * Math.PI * index) / azimuths;
      const balls = linkBalls(plate.geometry, pose, azimuth, pitch);
      if (balls === undefined) return;
      const rod = less(balls.grip, balls.upper);
      keep({ link: link.id, ball: 'from', lean: leanOf(rod, balls.upperStud), ...limitOf(link.lean), sticks, azimuth });
      keep({ link: link.id, ball: 'to', lean: leanOf(rod, balls.gripStud), ...limitOf(link.lean), sticks, azimuth });
    });
  });
  return { unreached, leans: steepestFirst(worst), servoTurns, toDeadCentre: dead, tilt, rise: [low, high] };
}

/** Of each ball the steepest. */
function keepWorst(worst: Map<string, WorstLean>, lean: WorstLean): void {
  const key = `${lean.link} ${lean.ball}`;
  if ((worst.get(key)?.lean ?? -1) < lean.lean) worst.set(key, lean);
}

const azimuths = 72;
const limitOf = (limit: number | undefined): { readonly limit?: number } => (limit === undefined ? {} : { limit });

/** The ball that has least left of its limit first; where the file has no limit, by the lean. */
const steepestFirst = (worst: ReadonlyMap<string, WorstLean>): readonly WorstLean[] =>
  [...worst.values()].toSorted((a, b) => left(a) - left(b) || b.lean - a.lean);
const left = ({ lean, limit }: WorstLean): number => (limit ?? Math.PI / 2) - lean;

function leverLeans(lead: Pick<Lead, 'train' | 'rods'>, angles: readonly number[]): readonly Omit<WorstLean, 'sticks'>[] {
  const { train, rods } = lead;
  const position = trainAt(train, angles);
  if ('unreached' in position) return [];
  return train.levers.flatMap(({ rod, ball, axis }, index) => {
    const { link } = rods[index]!;
    const along: Vector3 = less(position.at({ lever: index }, ball), position.at(rod.from, rod.ball));
    const before = 'servo' in rod.from ? train.servos[rod.from.servo]!.axis : train.levers[rod.from.lever]!.axis;
    return [
      { link: link.id, ball: 'from' as const, lean: leanOf(along, before), ...limitOf(link.lean) },
      { link: link.id, ball: 'to' as const, lean: leanOf(along, axis), ...limitOf(link.lean) },
    ];
  });
}

/** The same for the tail, between two angles of its servo. */
export function tailLeans(tail: Tail, from: number, to: number): readonly WorstLean[] {
  const worst = new Map<string, WorstLean>();
  const steps = 40;
  for (let index = 0; index <= steps; index += 1) {
    const angle = from + ((to - from) * index) / steps;
    const there = tailAt(tail, angle);
    if (there === undefined) continue;
    const sticks = { yaw: -1 + (2 * index) / steps };
    const balls = linkBalls(tail.hub, { height: there.slide, p: 0, q: 0 }, 0, there.pitch);
    const { link } = tail.bladeRod;
    const rod = balls && less(balls.grip, balls.upper);
    const leans = [
      ...leverLeans(tail, [angle]),
      ...(balls && rod ? [{ link: link.id, ball: 'from' as const, lean: leanOf(rod, balls.upperStud), ...limitOf(link.lean) }, { link: link.id, ball: 'to' as const, lean: leanOf(rod, balls.gripStud), ...limitOf(link.lean) }] : []),
    ];
    for (const lean of leans) keepWorst(worst, { ...lean, sticks });
  }
  return steepestFirst(worst);
}
