import { lineEvidence } from './evidence.ts';
import { meanSpeed, type Turns } from './straighten.ts';
import { whiteFrames } from './whiten.ts';

/** What the change must be worth, nepers, and the least that must have been heard before and missed behind, s. */
const least = 14;
const shortest = 0.7;

/**
 * When lines that were heard fall silent for good: the change that explains the frames best.
 *
 * @param orders  of the lines
 * @returns       s from the start; undefined when they do not
 */
export function silentFrom(turns: Turns, straight: Float64Array, rate: number, orders: readonly number[]): number | undefined {
  if (orders.length < 2) return undefined;
  const speed = meanSpeed(turns, rate);
  const { count, bins, binWidth, power, step, first } = whiteFrames(straight, rate, 0.5, 0.25);
  const weigh = lineEvidence(1, 0.8, 4);
  // Frames overlap by three quarters: each counts for a third.
  const odds = Float64Array.from({ length: count }, (_, frame) => orders.reduce((sum, order) => {
    const bin = Math.round((order * speed) / binWidth);
    return bin < bins ? sum + weigh(power[frame * bins + bin]!) / 3 : sum;
  }, 0));
  let best = 0;
  let from: number | undefined;
  for (let frame = count - 1, behind = 0; frame > 0; frame -= 1) {
    behind += odds[frame]!;
    const time = first + (frame - 0.5) * step;
    if (-behind > best && time > shortest && turns.length / rate - time > shortest) {
      best = -behind;
      from = time;
    }
  }
  if (from === undefined || best < least) return undefined;
  const before = odds.subarray(0, Math.max(1, Math.round((from - first) / step))).reduce((sum, each) => sum + each, 0);
  if (before < least / 2) return undefined;
  const at = from * rate;
  // From the time of the straightened recording to that of the recording itself.
  const wanted = turns[0]! + (at * speed) / rate;
  const index = turns.findIndex((turn) => turn >= wanted);
  return index === -1 ? undefined : index / rate;
}
