import { follow } from './coherent.ts';
import type { Ear } from './explain.ts';
import type { SpeedTrack } from './hearing.ts';
import { poolFrames, speedsOf, trackStep, type Pooled } from './look.ts';
import type { FollowedLine } from './phasors.ts';
import { mendPath } from './refine.ts';
import { standing } from './standing.ts';
import { meanSpeed, type Turns } from './straighten.ts';

/** Frames by which a path is mended, one after the other, s. */
const mendingSpans: readonly number[] = [0.5, 1, 2];
/** Part of their height that lines must keep when their phases have been followed. */
const stillStanding = 0.85;

/** How the rotor turned, and the recording made even in its angle. */
export interface Course {
  readonly turns: Turns;
  readonly straight: Float64Array;
  readonly pooled: Pooled;
  /** Mean over all of the recording, and its standard deviation, Hz. */
  readonly speed: number;
  readonly deviation: number;
}

/** Mends a path frame by frame, then follows the phases of its lines; `step` is how finely the path was searched, logarithm. */
export function courseOf({ straighten, rate, samples }: Ear, path: Turns, lines: readonly FollowedLine[], step: number): Course {
  const orders = lines.map(({ order }) => order);
  const mended = mendingSpans.filter((span) => span <= samples.length / rate).reduce((turns, span) => mendPath(turns, straighten, rate, orders, span), path);
  const followed = follow(mended, straighten, rate, lines);
  const along = (turns: Turns, deviation?: number): Course => {
    const straight = straighten(turns);
    const speed = meanSpeed(turns, rate);
    return { turns, straight, pooled: poolFrames(straight, rate), speed, deviation: deviation ?? speed * step };
  };
  const rough = along(mended);
  if (followed === undefined) return rough;
  const smooth = along(followed.turns, followed.deviation);
  // Phases that were followed astray smear the lines that the path had straight.
  const [before, behind] = [rough, smooth].map(({ pooled, speed }) => standing(pooled, speed, orders));
  return behind! > stillStanding * before! ? smooth : rough;
}

export function trackOf({ turns }: Course, rate: number): SpeedTrack {
  const speeds = speedsOf(turns, rate).map((speed) => 2 * Math.PI * speed);
  return { times: speeds.map((_, index) => (index + 0.5) * trackStep), speeds };
}
