import type { HeadSeat, Thread } from './thread.ts';

export interface Friction {
  /** μ_G */
  readonly thread: number;
  /** μ_K, under the head */
  readonly head: number;
}

/** Where the torque on a screw goes, per newton of preload; m. */
export interface TighteningArms {
  /** Lifts the load. */
  readonly pitch: number;
  readonly thread: number;
  readonly head: number;
}

function refuseFriction({ thread, head }: Friction): void {
  if (!(thread >= 0 && head >= 0)) throw new RangeError(`tighteningArms: friction must not be negative, got ${thread} and ${head}`);
}

// 1/(2·cos 30°) and 1/cos 30°, rounded as the guideline has them; exact ones give 0.02 % more torque.
const overTwoCosine = 0.577;
const overCosine = 1.155;

/**
 * M_A/F_M = P/2π + 0.577·d_2·μ_G + μ_K·(d_w + d_h)/4
 *
 * @throws RangeError when a friction is negative, or the head is no wider than its hole
 * @source VDI 2230-1:2003, equation R13/1 (from memory)
 */
export function tighteningArms(thread: Thread, seat: HeadSeat, friction: Friction): TighteningArms {
  refuseFriction(friction);
  if (!(seat.holeDiameter > 0 && seat.headDiameter > seat.holeDiameter && Number.isFinite(seat.headDiameter))) throw new RangeError(`tighteningArms: 0 < hole < head is needed, got ${seat.holeDiameter} and ${seat.headDiameter} m`);
  return { pitch: thread.pitch / (2 * Math.PI), thread: overTwoCosine * thread.pitchDiameter * friction.thread, head: (friction.head * (seat.headDiameter + seat.holeDiameter)) / 4 };
}

/**
 * Stress in a screw while it is tightened, over that of its preload alone: pull and twist together, the twist as of a fully
 * plastic section.
 *
 * √(1 + 3·(3/2 · d_2/d_0 · (P/(π·d_2) + 1.155·μ_G))²) with d_0 = (d_2 + d_3)/2
 *
 * @throws RangeError when the friction is negative or no number
 * @source VDI 2230-1:2003, equation R7/2 (from memory)
 */
export function combinedStressRatio({ pitch, pitchDiameter, minorDiameter }: Thread, threadFriction: number): number {
  if (!(threadFriction >= 0)) throw new RangeError(`combinedStressRatio: friction must not be negative, got ${threadFriction}`);
  const smallest = (pitchDiameter + minorDiameter) / 2;
  const twist = 1.5 * (pitchDiameter / smallest) * (pitch / (Math.PI * pitchDiameter) + overCosine * threadFriction);
  return Math.hypot(1, Math.sqrt(3) * twist);
}

/**
 * Preload at which pull and twist together use a share of a screw's yield strength.
 *
 * @param yieldStrength   Pa
 * @param threadFriction  μ_G, not negative
 * @param utilisation     ν, over 0 to 1; 0.9 is usual
 * @returns               F_M [N]
 * @throws RangeError outside these
 * @source VDI 2230-1:2003, equation R7/2 (from memory)
 */
export function assemblyPreload(thread: Thread, yieldStrength: number, threadFriction: number, utilisation: number): number {
  if (!(yieldStrength > 0 && threadFriction >= 0 && Number.isFinite(yieldStrength + threadFriction))) throw new RangeError(`assemblyPreload: yieldStrength must be positive and friction not negative, got ${yieldStrength} Pa and ${threadFriction}`);
  if (!(utilisation > 0 && utilisation <= 1)) throw new RangeError(`assemblyPreload: utilisation must be over 0 up to 1, got ${utilisation}`);
  return (thread.stressArea * utilisation * yieldStrength) / combinedStressRatio(thread, threadFriction);
}
