import { realTransform } from './fourier.ts';

/**
 * Hann window in its periodic form, as frames that overlap want it.
 *
 * @throws RangeError when the size is no whole number above 0
 */
export function hannWindow(size: number): Float64Array {
  if (!(Number.isInteger(size) && size > 0)) throw new RangeError(`hannWindow: the size must be a whole number above 0; got ${size}`);
  const window = new Float64Array(size);
  for (let index = 0; index < size; index += 1) window[index] = 0.5 - 0.5 * Math.cos((2 * Math.PI * index) / size);
  return window;
}

export interface Spectra {
  /** Hz between neighbouring bins, and s between neighbouring frames. */
  readonly binWidth: number;
  readonly frameStep: number;
  readonly frames: number;
  readonly bins: number;
  /** One-sided power density of the whole, unit² per Hz, one number a bin (Welch). */
  readonly density: Float64Array;
  /** Magnitude of the transform of each windowed frame, unit; frame after frame, `bins` numbers each. */
  readonly magnitudes: Float64Array;
}

/**
 * Power density and spectrogram of a recording in one go: Hann frames that overlap by half. What does not fill a last
 * frame is left out.
 *
 * @param samples  in any unit, evenly spaced
 * @param rate     sampling rate, Hz, above 0
 * @param size     samples in a frame, a power of two, 4 or more
 * @param room     where the magnitudes go, for one recording after the other; what they were is overwritten
 * @throws RangeError when the recording is shorter than a frame, the rate is not above 0, the size is no power of two, or the room is too small
 * @source Welch, The use of fast Fourier transform for the estimation of power spectra, IEEE Trans. Audio Electroacoust. 15 (1967); window power U = Σw² (from memory)
 * @example spectra(new Float64Array(16).fill(1), 16, 8).frames // 3
 */
export function spectra(samples: Float64Array, rate: number, size: number, room?: Float64Array): Spectra {
  if (!(rate > 0) || !Number.isFinite(rate)) throw new RangeError(`spectra: the sampling rate must be above 0 Hz; got ${rate}`);
  if (samples.length < size) throw new RangeError(`spectra: a frame has ${size} samples; the recording has ${samples.length}`);
  const window = hannWindow(size);
  const transform = realTransform(window);
  const { bins } = transform;
  const step = size / 2;
  const frames = Math.floor((samples.length - size) / step) + 1;
  const density = new Float64Array(bins);
  if (room !== undefined && room.length < frames * bins) throw new RangeError(`spectra: ${frames} frames of ${bins} bins want room for ${frames * bins} numbers; got ${room.length}`);
  const magnitudes = room?.subarray(0, frames * bins) ?? new Float64Array(frames * bins);
  for (let frame = 0; frame < frames; frame += 1) transform.gather(samples, frame * step, density, magnitudes, frame * bins);
  const windowPower = window.reduce((sum, value) => sum + value * value, 0);
  const scale = 2 / (rate * windowPower * frames);
  for (let bin = 0; bin < bins; bin += 1) density[bin]! *= bin === 0 || bin === bins - 1 ? scale / 2 : scale;
  return { binWidth: rate / size, frameStep: step / rate, frames, bins, density, magnitudes };
}
