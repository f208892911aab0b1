import { sinc, weighedAtEnd } from './prepare.ts';

/** Turns of the main rotor since the start, at each sample of a recording; grows from sample to sample. */
export type Turns = Float64Array<ArrayBuffer>;

/** Turns at each sample for speeds that are known at some times, straight lines between, even before and behind. */
export function turnsOf(times: Float64Array, speeds: Float64Array, samples: number, rate: number): Turns {
  const turns = new Float64Array(samples);
  let sum = 0;
  for (let index = 0, next = 0; index < samples; index += 1) {
    const at = index / rate;
    turns[index] = sum;
    while (next < times.length && times[next]! <= at) next += 1;
    const speed = next === 0 ? speeds[0]! : next === times.length ? speeds[next - 1]! : speeds[next - 1]! + ((speeds[next]! - speeds[next - 1]!) * (at - times[next - 1]!)) / (times[next]! - times[next - 1]!);
    sum += speed / rate;
  }
  return turns;
}

/** Mean speed over all of a recording, Hz: turns over time. */
export const meanSpeed = (turns: Turns, rate: number): number => ((turns[turns.length - 1]! - turns[0]!) * rate) / (turns.length - 1);

const half = 8;
const phases = 512;

/** Sinc under a Blackman window, for each place between two samples. */
const kernel = (): Float64Array =>
  Float64Array.from({ length: (phases + 1) * 2 * half }, (_, index) => {
    const at = (index % (2 * half)) - half + 1 - Math.floor(index / (2 * half)) / phases;
    const place = Math.PI * (1 + at / half);
    return sinc(at) * (0.42 - 0.5 * Math.cos(place) + 0.08 * Math.cos(2 * place));
  });

/** Straightens recordings: as many samples, even in the angle of the rotor, so that every line stands still. */
export function straightener(): (samples: Float64Array, turns: Turns) => Float64Array {
  const table = kernel();
  return (samples, turns) => {
    const count = samples.length;
    const straight = new Float64Array(count);
    const step = (turns[count - 1]! - turns[0]!) / (count - 1);
    for (let index = 0, at = 0; index < count; index += 1) {
      const wanted = turns[0]! + index * step;
      while (at < count - 2 && turns[at + 1]! <= wanted) at += 1;
      const place = (wanted - turns[at]!) / (turns[at + 1]! - turns[at]!);
      const row = Math.round(Math.min(1, Math.max(0, place)) * phases) * 2 * half;
      const from = at - half + 1;
      straight[index] = from >= 0 && from + 2 * half <= count ? weighed(table, row, samples, from) : weighedAtEnd(table, row, 2 * half, samples, from);
    }
    return straight;
  };
}

/** Sum of samples, each by its tap; four sums side by side, so that none waits for the one before. */
function weighed(table: Float64Array, row: number, samples: Float64Array, from: number): number {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let tap = 0; tap < 2 * half; tap += 4) {
    a += table[row + tap]! * samples[from + tap]!;
    b += table[row + tap + 1]! * samples[from + tap + 1]!;
    c += table[row + tap + 2]! * samples[from + tap + 2]!;
    d += table[row + tap + 3]! * samples[from + tap + 3]!;
  }
  return a + b + (c + d);
}
