import type { MachineSound } from '@rotorwright/figures';
import type { Recording } from '@rotorwright/signals';

/** Hz, and s: as short as takes all the steps that a recording takes. */
const rate = 32_000;
const seconds = 4;
/** Lines of each family, and how loud they are over the noise. */
const multiples = 6;
const loudness = 0.3;

/** A made-up recording of a machine: hearing it readies the worker for the first one of a phone. */
export function practiceRecording({ families, slowest, fastest }: MachineSound): Recording {
  const samples = new Float64Array(seconds * rate);
  const speed = Math.sqrt(slowest * fastest);
  let state = 1;
  for (let index = 0; index < samples.length; index += 1) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    samples[index] = state / 2 ** 31 - 1;
  }
  for (const { order } of families) {
    for (let multiple = 1; multiple <= multiples && multiple * order * speed < rate / 2; multiple += 1) {
      const turn = (2 * Math.PI * multiple * order * speed) / rate;
      for (let index = 0; index < samples.length; index += 1) samples[index]! += loudness * Math.sin(turn * index);
    }
  }
  return { rate, channels: [samples], warnings: [] };
}
