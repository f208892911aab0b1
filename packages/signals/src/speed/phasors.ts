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
  const cosines = new Float64Array(size);
  const sines = new Float64Array(size);
  for (let index = 0; index < size; index += 1) {
    const angle = 2 * Math.PI * ((cycles * index) % 1);
    cosines[index] = Math.cos(angle);
    sines[index] = Math.sin(angle);
  }
  for (let block = 0; block < blocks; block += 1) {
    const from = block * size;
    // Two sums side by side, so that none waits for the one before.
    let re = 0;
    let im = 0;
    let reNext = 0;
    let imNext = 0;
    const even = size - (size % 2);
    for (let index = 0; index < even; index += 2) {
      const value = samples[from + index]!;
      const next = samples[from + index + 1]!;
      re += value * cosines[index]!;
      im -= value * sines[index]!;
      reNext += next * cosines[index + 1]!;
      imNext -= next * sines[index + 1]!;
    }
    re += reNext;
    im += imNext;
    if (even < size) {
      re += samples[from + even]! * cosines[even]!;
      im -= samples[from + even]! * sines[even]!;
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

/** What the steady part of a line does in each block, the angle put back in. */
export function steadyPart([re, im]: readonly [number, number], turn: number, angle: Float64Array): Phasors {
  const real = new Float64Array(angle.length);
  const imaginary = new Float64Array(angle.length);
  for (let block = 0; block < angle.length; block += 1) {
    const c = Math.cos(turn * angle[block]!);
    const s = Math.sin(turn * angle[block]!);
    real[block] = re * c - im * s;
    imaginary[block] = re * s + im * c;
  }
  return { real, imaginary };
}

/** A line without what it lets through of the others, whose steady parts are known. */
export function cleaned({ real, imaginary }: Phasors, leaking: readonly Leak[], steady: readonly Phasors[]): Phasors {
  const re = real.slice();
  const im = imaginary.slice();
  for (const { other, cycles, mean } of leaking) {
    const { real: a, imaginary: b } = steady[other]!;
    const stepRe = Math.cos(2 * Math.PI * cycles);
    const stepIm = Math.sin(2 * Math.PI * cycles);
    let c = mean * Math.cos(Math.PI * cycles);
    let s = mean * Math.sin(Math.PI * cycles);
    for (let block = 0; block < re.length; block += 1) {
      re[block]! -= a[block]! * c - b[block]! * s;
      im[block]! -= a[block]! * s + b[block]! * c;
      const next = c * stepRe - s * stepIm;
      s = s * stepRe + c * stepIm;
      c = next;
    }
  }
  return { real: re, imaginary: im };
}
