import type { Link } from '@rotorwright/machine';
import { linkBalls, leanOf, servoRodLeans, tiltOf, toDeadCentre, trainAt, type Mover, type PlatePose, type SwashplateGeometry, type Vector3 } from '@rotorwright/mechanics';
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

/** The least turn that an arm, lever or grip has left to where its rod lies in line with it, the dead centre. */
export interface LeastTurn {
  readonly link: string;
  /** rad */
  readonly angle: number;
}

/** What a plate goes through over all positions of the sticks. */
export interface Envelope {
  /** Positions that something does not reach. */
  readonly unreached: readonly Sticks[];
  /** Steepest first. */
  readonly leans: readonly WorstLean[];
  /** Largest turn of each servo from mid travel, rad. */
  readonly servoTurns: readonly number[];
  readonly toDeadCentre: LeastTurn | undefined;
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
  const tightest = tightestOf();
  const unreached: Sticks[] = [];
  const servoTurns = plate.servos.map(() => 0);
  let [tilt, low, high] = [0, 0, 0];
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
    servoRodLeans(cranks.geometry, cranks.angles, pose)?.forEach(({ from, to, toDeadCentre: left }, end) => {
      const { link } = plate.ends[end]!;
      tightest.keep([{ link, ball: 'from', lean: from, left }, { link, ball: 'to', lean: to }], { sticks });
    });
    tightest.keep(leverStands(plate, angles), { sticks });
    // 2. The link above it, all round.
    pitches.forEach((pitch, index) => {
      const azimuth = (2 * Math.PI * index) / azimuths;
      tightest.keep(linkStands(plate.pitchRod.link, plate.geometry, pose, azimuth, pitch), { sticks, azimuth });
    });
  });
  return { unreached, servoTurns, tilt, rise: [low, high], ...tightest.found() };
}

/** How a rod stands on one of its balls. */
interface Stand {
  readonly link: Link;
  readonly ball: 'from' | 'to';
  /** rad */
  readonly lean: number;
  /** Turn that is left to the dead centre of the arm that carries the ball, rad; absent where no arm does. */
  readonly left?: number;
}

/** Keeps of each ball the steepest, and of all arms the one nearest its dead centre. */
function tightestOf() {
  const worst = new Map<string, WorstLean>();
  let dead: LeastTurn | undefined;
  const keep = (stands: readonly Stand[], where: Pick<WorstLean, 'sticks' | 'azimuth'>): void => {
    for (const { link: { id: link, lean: limit }, ball, lean, left: turn } of stands) {
      const key = `${link} ${ball}`;
      if ((worst.get(key)?.lean ?? -1) < lean) worst.set(key, { link, ball, lean, ...(limit === undefined ? {} : { limit }), ...where });
      if (turn !== undefined && (dead === undefined || turn < dead.angle)) dead = { link, angle: turn };
    }
  };
  // The ball that has least left of its limit first; where the file has no limit, by the lean.
  return { keep, found: () => ({ leans: [...worst.values()].toSorted((a, b) => left(a) - left(b) || b.lean - a.lean), toDeadCentre: dead }) };
}

const azimuths = 72;
const left = ({ lean, limit }: WorstLean): number => (limit ?? Math.PI / 2) - lean;

/** The rods between servos and levers, and one from there straight to a slider. */
function leverStands({ train, rods }: Pick<Lead, 'train' | 'rods'>, angles: readonly number[], slid?: { readonly mover: Mover; readonly ball: Vector3; readonly end: Vector3; readonly link: Link }): readonly Stand[] {
  const position = trainAt(train, angles);
  if ('unreached' in position) return [];
  /** Where a ball on a servo or lever has gone, how it stands off the axis, and how that lies now. */
  const armOf = (mover: Mover, rest: Vector3) => {
    const { pivot, axis } = 'servo' in mover ? train.servos[mover.servo]! : train.levers[mover.lever]!;
    const [start, tip, ball] = [position.at(mover, pivot), position.at(mover, [pivot[0] + axis[0], pivot[1] + axis[1], pivot[2] + axis[2]]), position.at(mover, rest)];
    return { ball, axis: less(tip, start), arm: less(ball, start) };
  };
  const standOf = (link: Link, ball: Stand['ball'], rod: Vector3, { axis, arm }: ReturnType<typeof armOf>): Stand => ({ link, ball, lean: leanOf(rod, axis), left: toDeadCentre(rod, arm, axis) });
  const levers = train.levers.flatMap(({ rod, ball }, index) => {
    const [from, to] = [armOf(rod.from, rod.ball), armOf({ lever: index }, ball)];
    const along = less(to.ball, from.ball);
    return [standOf(rods[index]!.link, 'from', along, from), standOf(rods[index]!.link, 'to', along, to)];
  });
  if (slid === undefined) return levers;
  const from = armOf(slid.mover, slid.ball);
  return [...levers, standOf(slid.link, 'from', less(slid.end, from.ball), from)];
}

/** The link to a grip, with the blade at an azimuth and a pitch, rad. */
function linkStands(link: Link, hub: SwashplateGeometry, pose: PlatePose, azimuth: number, pitch: number): readonly Stand[] {
  const balls = linkBalls(hub, pose, azimuth, pitch);
  if (balls === undefined) return [];
  const rod = less(balls.grip, balls.upper);
  const arm: Vector3 = [0, balls.grip[1], balls.grip[2] - hub.grip.height];
  return [{ link, ball: 'from', lean: leanOf(rod, balls.upperStud) }, { link, ball: 'to', lean: leanOf(rod, balls.gripStud), left: toDeadCentre(rod, arm, balls.gripStud) }];
}

/** The same for the tail, between two angles of its servo. */
export function tailEnvelope(tail: Tail, from: number, to: number): Pick<Envelope, 'leans' | 'toDeadCentre'> {
  const tightest = tightestOf();
  const steps = 40;
  const { push, line } = tail;
  for (let index = 0; index <= steps; index += 1) {
    const angle = from + ((to - from) * index) / steps;
    const there = tailAt(tail, angle);
    if (there === undefined) continue;
    const sticks = { yaw: -1 + (2 * index) / steps };
    const slid = 'rod' in push ? { mover: push.mover, ball: push.ball, link: push.rod.link, end: [push.end[0] + there.slide * line[0], push.end[1] + there.slide * line[1], push.end[2] + there.slide * line[2]] as const } : undefined;
    tightest.keep(leverStands(tail, [angle], slid), { sticks });
    tightest.keep(linkStands(tail.bladeRod.link, tail.hub, { height: there.slide, p: 0, q: 0 }, 0, there.pitch), { sticks });
  }
  return tightest.found();
}
