import { meanSpeed, turnsOf, type Turns } from './straighten.ts';
import { bestWay } from './track.ts';
import { whiteFrames } from './whiten.ts';

/** Speeds around the path that are tried, logarithm: how far to either side, and the step for frames of one second. */
const usualReach = 5e-3;
const step = 4e-5;
/** Charge for each step: noise alone does not bend the path. */
const charge = 0.4;
/** Power over noise beyond which a line pulls no harder. */
const enough = 40;

/**
 * Mends a path by the lines that are known to be heard: each frame of the straightened recording says where they really lie.
 *
 * @param orders  of the lines that were heard, turns of the main rotor
 * @param reach   how far off the path may be, logarithm
 * @param span    length of the frames, s: the longer, the sharper, and the less may the speed still bend
 */
export function mendPath(turns: Turns, straighten: (turns: Turns) => Float64Array, rate: number, orders: readonly number[], span: number, reach = usualReach): Turns {
  const speed = meanSpeed(turns, rate);
  const { count, bins, binWidth, power, first, step: hop } = whiteFrames(straighten(turns), rate, span, 0.5);
  const fineStep = step / span;
  const half = Math.round((reach * Math.min(1, 1 / span)) / fineStep);
  const width = 2 * half + 1;
  const scores = new Float32Array(count * width);
  const factors = Float64Array.from({ length: width }, (_, place) => Math.exp((place - half) * fineStep));
  for (let frame = 0; frame < count; frame += 1) {
    for (const order of orders) {
      for (let place = 0; place < width; place += 1) {
        const at = (order * speed * factors[place]!) / binWidth;
        const bin = Math.floor(at);
        if (bin + 1 >= bins) break;
        const found = power[frame * bins + bin]! + (at - bin) * (power[frame * bins + bin + 1]! - power[frame * bins + bin]!);
        scores[frame * width + place]! += Math.min(enough, found);
      }
    }
  }
  const way = bestWay(scores, width, charge);
  // The grid's steps go; what is left is a correction in the time of the straightened recording.
  const logs = Float64Array.from(way, (place, frame) => (fineStep * (way[Math.max(0, frame - 1)]! + 2 * place + way[Math.min(count - 1, frame + 1)]! - 4 * half)) / 4);
  const times = Float64Array.from(logs, (_, frame) => first + frame * hop);
  const own = turnsOf(times, logs.map((log) => speed * Math.exp(log)), turns.length, rate);
  const stretch = (turns[turns.length - 1]! - turns[0]!) / (turns.length - 1);
  return turns.map((turn) => {
    const place = Math.min(turns.length - 1.001, (turn - turns[0]!) / stretch);
    const index = Math.floor(place);
    return own[index]! + (place - index) * (own[index + 1]! - own[index]!);
  });
}
