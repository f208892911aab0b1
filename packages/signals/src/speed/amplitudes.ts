import { hannWindow } from '../spectrum/index.ts';

/** Frames in which amplitudes are taken, s: a line that wanders by half a hertz keeps its height. */
const span = 1;
/** Frames that are taken at most, spread over the recording. */
const mostFrames = 12;

/**
 * Peak amplitude of lines in a recording that has been straightened: root of the mean square over frames, the noise taken off, times √2.
 *
 * @param lines  frequency of each, Hz, and the mean square of noise that a frame has there, unit²
 */
export function lineAmplitudes(straight: Float64Array, rate: number, lines: readonly { readonly frequency: number; readonly noise: number }[]): readonly number[] {
  const length = Math.min(straight.length, Math.round(span * rate));
  const window = hannWindow(length);
  const frames = Math.min(mostFrames, Math.max(1, Math.floor((2 * straight.length) / length) - 1));
  const stride = frames === 1 ? 0 : (straight.length - length) / (frames - 1);
  const sum = window.reduce((all, value) => all + value, 0);
  return lines.map(({ frequency, noise }) => {
    let square = 0;
    for (let frame = 0; frame < frames; frame += 1) square += (4 * powerAt(straight, Math.floor(frame * stride), window, frequency / rate)) / (sum * sum) / frames;
    return Math.sqrt(Math.max(0, square - noise));
  });
}

/** Squared magnitude of a windowed frame at one frequency, cycles a sample. A function of its own, so that its numbers are not boxed. */
function powerAt(samples: Float64Array, from: number, window: Float64Array, cycles: number): number {
  const turnRe = Math.cos(2 * Math.PI * cycles);
  const turnIm = Math.sin(2 * Math.PI * cycles);
  let c = 1;
  let s = 0;
  let re = 0;
  let im = 0;
  for (let index = 0; index < window.length; index += 1) {
    const value = window[index]! * samples[from + index]!;
    re += value * c;
    im -= value * s;
    const next = c * turnRe - s * turnIm;
    s = s * turnRe + c * turnIm;
    c = next;
  }
  return re * re + im * im;
}

/** Mean square of the peak that noise of a one-sided density makes in such a frame, unit². @source 4·Σw²/(Σw)² · density · rate / 2, with Σw = N/2 and Σw² = 3N/8 for a Hann window */
export const noiseSquare = (density: number, samples: number, rate: number): number => (4 * 1.5 * density) / (2 * Math.min(span, samples / rate));

/**
 * Effective velocity of a line of acceleration, as handbooks give limits for it: a / (2π·f·√2)
 *
 * @param peak       m/s²
 * @param frequency  Hz, above 0
 * @returns          m/s, root of the mean square
 * @source definition: integral of a sine
 * @example effectiveVelocity(2 * Math.PI * Math.SQRT2, 1) // 1
 */
export const effectiveVelocity = (peak: number, frequency: number): number => peak / (2 * Math.PI * frequency * Math.SQRT2);
