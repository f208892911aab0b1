import { sinc } from './prepare.ts';

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
const kernel = (): Float32Array =>
  Float32Array.from({ length: (phases + 1) * 2 * half }, (_, index) => {
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
      let sum = 0;
      if (from >= 0 && from + 2 * half <= count) for (let tap = 0; tap < 2 * half; tap += 1) sum += table[row + tap]! * samples[from + tap]!;
      else for (let tap = Math.max(0, -from); tap < 2 * half && from + tap < count; tap += 1) sum += table[row + tap]! * samples[from + tap]!;
      straight[index] = sum;
    }
    return straight;
  };
}
