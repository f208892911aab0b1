import type { Recording } from '../recording/index.ts';
import { spectra } from '../spectrum/index.ts';
import { loudestChannel } from './prepare.ts';
import { broad, floorFinder } from './whiten.ts';

/** How loud each frequency was as time went on, over the noise of the whole recording. */
export interface Waterfall {
  /** Hz from one bin to the next; the first is 0 Hz. */
  readonly binWidth: number;
  readonly bins: number;
  /** s from one row to the next, and from the start to the middle of the first. */
  readonly step: number;
  readonly first: number;
  readonly rows: number;
  /** Power over noise: row after row, `bins` numbers each. */
  readonly power: Float32Array;
  /** Mean of all rows (Welch). */
  readonly mean: Float32Array;
}

/** Length of a frame, about, s: short enough for a rotor that speeds up, long enough to part the lines of two rotors. */
const frameSeconds = 1 / 3;
/** Samples in a frame at least, however slow the sensor. */
const leastSize = 4;
/** Frames that are transformed in one go, so that ten minutes take no more room than one. */
const atOnce = 350;

/**
 * Spectrogram of the channel that `hear` listens to, and its mean, for drawing: Hann frames that overlap by half.
 *
 * @param highest  frequency up to which it goes, Hz
 * @throws RangeError when the recording is shorter than a frame of a third of a second, or its rate is not above 0
 * @example waterfall({ rate: 8000, channels: [Float64Array.from({ length: 8000 }, (_, n) => Math.sin(n))], warnings: [] }, 500).binWidth // 3.90625
 */
export function waterfall(recording: Recording, highest: number): Waterfall {
  const { rate } = recording;
  const { samples } = loudestChannel(recording);
  const size = Math.max(leastSize, 2 ** Math.round(Math.log2(frameSeconds * rate)));
  const hop = size / 2;
  const rows = Math.max(1, Math.floor((samples.length - size) / hop) + 1);
  const binWidth = rate / size;
  const bins = Math.min(hop, Math.floor(highest / binWidth)) + 1;
  const power = new Float32Array(rows * bins);
  const total = new Float64Array(hop + 1);
  const room = new Float64Array(Math.min(rows, atOnce) * (hop + 1));
  for (let row = 0; row < rows; row += atOnce) {
    const piece = spectra(samples.subarray(row * hop, (row + atOnce + 1) * hop), rate, size, room);
    for (let bin = 0; bin <= hop; bin += 1) total[bin]! += piece.density[bin]! * piece.frames;
    for (let frame = 0; frame < piece.frames; frame += 1) {
      for (let bin = 0; bin < bins; bin += 1) power[(row + frame) * bins + bin] = piece.magnitudes[frame * piece.bins + bin]! ** 2;
    }
  }
  // The mean of many frames hardly strays, so that its median is its mean.
  const noise = floorFinder(hop + 1, Math.max(1, Math.round(broad / binWidth)), 2, 1)(total);
  const mean = new Float32Array(bins);
  // A frame of density 1 has half the rate times the power of its window, which is 3/8 a sample.
  const density = (rate / 2) * (3 / 8) * size;
  for (let bin = 0; bin < bins; bin += 1) {
    const over = noise[bin]! > 0 ? 1 / noise[bin]! : 0;
    mean[bin] = total[bin]! * over;
    for (let row = 0; row < rows; row += 1) power[row * bins + bin]! *= (rows * over) / density;
  }
  return { binWidth, bins, step: hop / rate, first: hop / rate, rows, power, mean };
}
