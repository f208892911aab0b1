import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hannWindow, realTransform, spectra } from '../../src/index.ts';

const ones = (size: number): Float64Array => new Float64Array(size).fill(1);

describe('the transform of a real frame', () => {
  // independent route: the sum that defines it
  it('is the sum that defines it, for every size', () => {
    for (const size of [4, 8, 16, 32, 64, 128, 256, 512, 1024]) {
      const samples = Float64Array.from({ length: size }, (_, n) => Math.sin(n * n * 0.37) + 0.2 * n);
      const { bins, transform } = realTransform(ones(size));
      const [real, imaginary] = [new Float64Array(bins), new Float64Array(bins)];
      transform(samples, 0, real, imaginary);
      const scale = samples.reduce((sum, value) => sum + Math.abs(value), 0);
      for (let k = 0; k < bins; k += 1) {
        let [re, im] = [0, 0];
        samples.forEach((value, n) => {
          re += value * Math.cos((2 * Math.PI * k * n) / size);
          im -= value * Math.sin((2 * Math.PI * k * n) / size);
        });
        expect(Math.abs(real[k]! - re) + Math.abs(imaginary[k]! - im)).toBeLessThan(1e-13 * scale);
      }
    }
  });

  // law: Parseval
  it('keeps the energy', () => {
    fc.assert(fc.property(fc.constantFrom(4, 8, 16, 64, 1024, 2048, 4096, 8192), fc.integer({ min: 1, max: 1e6 }), (size, seed) => {
      let state = seed;
      const samples = Float64Array.from({ length: size }, () => {
        state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
        return state / 2 ** 31 - 1;
      });
      const { bins, gather } = realTransform(ones(size));
      const spectrum = new Float64Array(bins);
      gather(samples, 0, spectrum, new Float64Array(bins), 0);
      const whole = spectrum.reduce((sum, value, bin) => sum + (bin === 0 || bin === bins - 1 ? value : 2 * value), 0) / size;
      expect(whole / samples.reduce((sum, value) => sum + value * value, 0)).toBeCloseTo(1, 12);
    }), { numRuns: 30 });
  });

  it('begins where it is told, and gives the same for the same', () => {
    const samples = Float64Array.from({ length: 100 }, (_, n) => Math.cos(n));
    const { bins, gather } = realTransform(hannWindow(32));
    const magnitudes = [new Float64Array(bins), new Float64Array(bins), new Float64Array(bins)] as const;
    gather(samples, 40, new Float64Array(bins), magnitudes[0], 0);
    gather(samples.slice(40), 0, new Float64Array(bins), magnitudes[1], 0);
    gather(samples, 40, new Float64Array(bins), magnitudes[2], 0);
    expect(magnitudes[1]).toEqual(magnitudes[0]);
    expect(magnitudes[2]).toEqual(magnitudes[0]);
  });

  // independent route: the transform of the same frame, its samples multiplied by the window before
  it('adds up the squares and keeps the magnitudes, for every size', () => {
    for (const size of [4, 8, 16, 32, 64, 128, 256, 512, 1024]) {
      const samples = Float64Array.from({ length: size }, (_, n) => Math.cos(n * n * 0.61) + 0.3);
      const window = hannWindow(size);
      const { bins, gather } = realTransform(window);
      const [real, imaginary] = [new Float64Array(bins), new Float64Array(bins)];
      realTransform(ones(size)).transform(samples.map((value, n) => value * window[n]!), 0, real, imaginary);
      const sum = new Float64Array(bins).fill(2);
      const magnitudes = new Float64Array(bins + 3).fill(-1);
      gather(samples, 0, sum, magnitudes, 2);
      real.forEach((re, bin) => {
        expect(sum[bin]).toBeCloseTo(2 + re ** 2 + imaginary[bin]! ** 2, 9);
        expect(magnitudes[bin + 2]).toBeCloseTo(Math.sqrt(re ** 2 + imaginary[bin]! ** 2), 11);
      });
      expect([magnitudes[0], magnitudes[1], magnitudes[bins + 2]]).toEqual([-1, -1, -1]);
    }
  });

  it('refuses a size that is no power of two', () => {
    for (const size of [0, 2, 12, 1000, 2 ** 23]) expect(() => realTransform(ones(size))).toThrow(/power of two/);
    expect(() => spectra(ones(100), 48_000, 12)).toThrow(/power of two.*got 12/);
    for (const size of [0, -8, 8.5, Number.NaN]) expect(() => hannWindow(size)).toThrow(/whole number above 0/);
  });
});

describe('power density and spectrogram', () => {
  // published constants of the Hann window: coherent gain 0.5, noise bandwidth 1.5 bins (Harris 1978, from memory)
  it('uses a Hann window', () => {
    const window = hannWindow(1024);
    const sum = window.reduce((all, value) => all + value, 0);
    const squares = window.reduce((all, value) => all + value * value, 0);
    expect(sum / 1024).toBeCloseTo(0.5, 12);
    expect((1024 * squares) / sum ** 2).toBeCloseTo(1.5, 12);
  });

  // by hand: sines of amplitude 1 and 0.5 carry 0.5 and 0.125
  it('gives a sine its power, wherever it lies', () => {
    const rate = 2048;
    const samples = Float64Array.from({ length: 4096 * 4 }, (_, n) => Math.sin((2 * Math.PI * 60 * n) / rate) + 0.5 * Math.sin((2 * Math.PI * 180 * n) / rate + 1));
    const { density, binWidth, frames } = spectra(samples, rate, 1024);
    const around = (hertz: number): number => density.slice(Math.round(hertz / binWidth) - 6, Math.round(hertz / binWidth) + 7).reduce((all, value) => all + value * binWidth, 0);
    expect(around(60)).toBeCloseTo(0.5, 4);
    expect(around(180)).toBeCloseTo(0.125, 4);
    expect(density.reduce((all, value) => all + value * binWidth, 0)).toBeCloseTo(0.625, 6);
    expect(frames).toBe(31);
  });

  it('keeps each frame apart', () => {
    const samples = new Float64Array(4096);
    samples.fill(1, 2048);
    const { magnitudes, bins, frames } = spectra(samples, 100, 1024);
    const level = Array.from({ length: frames }, (_, frame) => magnitudes[frame * bins]!);
    // A whole frame of ones under the window sums to half its length.
    expect(level.at(-1)).toBeCloseTo(512, 9);
    expect(level[0]).toBe(0);
  });

  it('writes into the room that it is given, and refuses one that is too small', () => {
    const samples = Float64Array.from({ length: 4096 }, (_, n) => Math.sin(n));
    const fresh = spectra(samples, 100, 1024);
    const room = new Float64Array(5000).fill(7);
    const { magnitudes } = spectra(samples, 100, 1024, room);
    expect(magnitudes).toEqual(fresh.magnitudes);
    expect(magnitudes.buffer).toBe(room.buffer);
    expect(room[magnitudes.length]).toBe(7);
    expect(() => spectra(samples, 100, 1024, new Float64Array(100))).toThrow(/room for 3591 numbers; got 100/);
  });

  it('refuses a recording shorter than a frame, and a rate of nothing', () => {
    expect(() => spectra(new Float64Array(100), 48_000, 128)).toThrow(/128 samples; the recording has 100/);
    expect(() => spectra(new Float64Array(200), 0, 128)).toThrow(/above 0 Hz/);
  });
});
