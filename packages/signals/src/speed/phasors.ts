import { sinc } from './prepare.ts';

/** A line that is followed by its phase. */
export interface FollowedLine {
  readonly order: number;
  /** One-sided noise density around it, unit²/Hz. */
  readonly noise: number;
}

/** Complex amplitudes of one line, block after block. */
export interface Phasors {
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
}

/** Complex amplitude of one line in each block: all blocks are turned alike, then each by where it begins. */
export function demodulate(samples: Float64Array, cycles: number, size: number, blocks: number): Phasors {
  const real = new Float64Array(blocks);
  const imaginary = new Float64Array(blocks);
  const cosines = Float64Array.from({ length: size }, (_, index) => Math.cos(2 * Math.PI * ((cycles * index) % 1)));
  const sines = Float64Array.from({ length: size }, (_, index) => Math.sin(2 * Math.PI * ((cycles * index) % 1)));
  for (let block = 0; block < blocks; block += 1) {
    const from = block * size;
    let re = 0;
    let im = 0;
    for (let index = 0; index < size; index += 1) {
      const value = samples[from + index]!;
      re += value * cosines[index]!;
      im -= value * sines[index]!;
    }
    const start = 2 * Math.PI * ((cycles * from) % 1);
    const c = Math.cos(start);
    const s = Math.sin(start);
    real[block] = (2 * (re * c + im * s)) / size;
    imaginary[block] = (2 * (im * c - re * s)) / size;
  }
  return { real, imaginary };
}

/** What a line lets through of another that is near, in each block: the mean of the turning between the two. */
export interface Leak {
  readonly other: number;
  /** Turns of the other against this one in a block, and its mean over a block. */
  readonly cycles: number;
  readonly mean: number;
}

/** Lines further apart than this do not mind each other, blocks. */
const farthest = 24;

export function leaks(lines: readonly FollowedLine[], speed: number, span: number): readonly (readonly Leak[])[] {
  return lines.map(({ order }, own) =>
    lines.flatMap(({ order: otherOrder }, other) => {
      const cycles = (otherOrder - order) * speed * span;
      return other === own || Math.abs(cycles) > farthest ? [] : [{ other, cycles, mean: sinc(cycles) }];
    }),
  );
}

/** Steady part of a line, the angle taken out. */
export function meanPhasor({ real, imaginary }: Phasors, turn: number, angle: Float64Array): readonly [number, number] {
  let re = 0;
  let im = 0;
  for (let block = 0; block < angle.length; block += 1) {
    const c = Math.cos(turn * angle[block]!);
    const s = Math.sin(turn * angle[block]!);
    re += real[block]! * c + imaginary[block]! * s;
    im += imaginary[block]! * c - real[block]! * s;
  }
  return [re / angle.length, im / angle.length];
}

export function cleaned({ real, imaginary }: Phasors, leaking: readonly Leak[], means: readonly (readonly [number, number])[], lines: readonly FollowedLine[], angle: Float64Array): Phasors {
  const re = real.slice();
  const im = imaginary.slice();
  for (const { other, cycles, mean } of leaking) {
    const [a, b] = means[other]!;
    const turn = 2 * Math.PI * lines[other]!.order;
    for (let block = 0; block < re.length; block += 1) {
      const phase = 2 * Math.PI * cycles * (block + 0.5) + turn * angle[block]!;
      const c = mean * Math.cos(phase);
      const s = mean * Math.sin(phase);
      re[block]! -= a * c - b * s;
      im[block]! -= a * s + b * c;
    }
  }
  return { real: re, imaginary: im };
}
