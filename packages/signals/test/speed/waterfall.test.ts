import { describe, expect, it } from 'vitest';
import { spectra, waterfall, type Recording } from '../../src/index.ts';

const recordingOf = (rate: number, samples: Float64Array): Recording => ({ rate, channels: [samples], warnings: [] });

/** Noise of a fixed seed between −1 and 1. */
function noise(count: number): Float64Array {
  let state = 1;
  return Float64Array.from({ length: count }, () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 31 - 1;
  });
}

describe('waterfall', () => {
  const rate = 8000;

  // by hand: noise of this kind has a density of (1/3)/(rate/2); a sine of amplitude A gives a Hann frame's bin A²/2 over 1.5 bin widths
  it('gives noise a mean of 1, and a tone its power over it', () => {
    const tone = 64 * (rate / 2048);
    const samples = noise(60 * rate).map((value, n) => value + 0.5 * Math.sin((2 * Math.PI * tone * n) / rate));
    const { mean, binWidth, bins } = waterfall(recordingOf(rate, samples), 1000);
    expect(binWidth).toBeCloseTo(rate / 2048, 12);
    expect(bins).toBe(257);
    const around = mean.filter((_, bin) => bin > 4 && Math.abs(bin - 64) > 4);
    expect(around.reduce((sum, each) => sum + each, 0) / around.length).toBeGreaterThan(0.97);
    expect(around.reduce((sum, each) => sum + each, 0) / around.length).toBeLessThan(1.03);
    const expected = 0.125 / (1.5 * binWidth) / (1 / 3 / (rate / 2));
    expect(mean[64]! / expected).toBeGreaterThan(0.95);
    expect(mean[64]! / expected).toBeLessThan(1.05);
  });

  it('is the mean of its rows, over a minute that is taken in several pieces too', () => {
    // More frames than are transformed in one go.
    const samples = noise(100 * rate);
    const { rows, bins, power, mean, step, first } = waterfall(recordingOf(rate, samples), 500);
    expect(rows).toBe(Math.floor((samples.length - 2048) / 1024) + 1);
    expect([step, first]).toEqual([0.128, 0.128]);
    for (const bin of [1, 40, bins - 1]) {
      let sum = 0;
      for (let row = 0; row < rows; row += 1) sum += power[row * bins + bin]!;
      expect(sum / rows).toBeCloseTo(mean[bin]!, 5);
    }
    // Row by row it is the spectrogram, weighed by one noise for each bin.
    const whole = spectra(samples, rate, 2048);
    const ratio = (row: number): number => power[row * bins + 40]! / whole.magnitudes[row * whole.bins + 40]! ** 2;
    for (const row of [1, 349, 350, rows - 1]) expect(ratio(row) / ratio(0)).toBeCloseTo(1, 5);
  });

  it('shows when a tone begins', () => {
    const samples = noise(20 * rate).map((value, n) => value + (n > 10 * rate ? Math.sin((2 * Math.PI * 400 * n) / rate) : 0));
    const { power, bins, binWidth, step, first, rows } = waterfall(recordingOf(rate, samples), 500);
    const bin = Math.round(400 / binWidth);
    for (let row = 0; row < rows; row += 1) {
      const time = first + row * step;
      if (time < 9.8) expect(power[row * bins + bin]).toBeLessThan(12);
      if (time > 10.2) expect(power[row * bins + bin]).toBeGreaterThan(40);
    }
  });

  it('listens to the channel that is heard, and bears silence', () => {
    const loud = noise(8000);
    const both = waterfall({ rate, channels: [loud.map((value) => value / 100), loud], warnings: [] }, 500);
    expect(both.power).toEqual(waterfall(recordingOf(rate, loud), 500).power);
    expect([...waterfall(recordingOf(rate, new Float64Array(8000)), 500).power].every((value) => value === 0)).toBe(true);
  });

  it('ends at half the rate, and refuses what is shorter than a frame', () => {
    expect(waterfall(recordingOf(200, noise(400)), 4000).bins).toBe(33);
    // The slowest table that is read, sixteen rows: four samples a frame.
    for (const slow of [2, 4, 8]) expect(waterfall(recordingOf(slow, noise(16)), 4000)).toMatchObject({ bins: 3, rows: 7 });
    expect(() => waterfall(recordingOf(rate, new Float64Array(1000)), 500)).toThrow(/2048 samples; the recording has 1000/);
  });
});
