import { describe, expect, it } from 'vitest';
import { hannWindow, realTransform, spectra } from '@rotorwright/signals';
import { straightener } from '../../packages/signals/src/speed/straighten.ts';

/** Identities of spectra and of order tracking: each is a law, worked by hand beside it. */

describe('the Hann window', () => {
  const size = 4096;
  const window = hannWindow(size);
  const sum = window.reduce((all, value) => all + value, 0);

  it('passes half of a line, and noise as if it were one and a half bins wide', () => {
    // Σw/N = 1/2; N·Σw²/(Σw)² = (3/8)/(1/4) = 1.5 (Harris, Proc. IEEE 66 (1978), table 1; from memory)
    expect(sum / size).toBeCloseTo(0.5, 12);
    expect((size * window.reduce((all, value) => all + value * value, 0)) / sum ** 2).toBeCloseTo(1.5, 12);
  });

  it('loses 1.42 dB of a line half way between two bins', () => {
    // W(1/2)/W(0) = 8/(3π) = 0.8488: −1.4236 dB (Harris 1978, table 1: 1.42 dB; from memory)
    let [re, im] = [0, 0];
    for (const [index, value] of window.entries()) {
      re += value * Math.cos((Math.PI * index) / size);
      im -= value * Math.sin((Math.PI * index) / size);
    }
    expect(20 * Math.log10(Math.hypot(re, im) / sum)).toBeCloseTo(-1.4236, 4);
  });
});

describe('two sines of 60 and 180 Hz, amplitudes 1 and 0.5', () => {
  const rate = 2048;
  const samples = Float64Array.from({ length: 8192 }, (_, index) => Math.sin((2 * Math.PI * 60 * index) / rate) + 0.5 * Math.cos((2 * Math.PI * 180 * index) / rate - Math.PI / 4));

  it('stand at half their amplitude and their own phase in the transform', () => {
    // A sine is a cosine of −90°, that is 270°; the second is one of −45°, that is 315°.
    const { bins, transform } = realTransform(new Float64Array(4096).fill(1));
    const [real, imaginary] = [new Float64Array(bins), new Float64Array(bins)];
    transform(samples, 0, real, imaginary);
    for (const [frequency, half, phase] of [[60, 0.5, 270], [180, 0.25, 315]] as const) {
      const bin = (frequency * 4096) / rate;
      expect(Math.hypot(real[bin]!, imaginary[bin]!) / 4096).toBeCloseTo(half, 12);
      expect(((Math.atan2(imaginary[bin]!, real[bin]!) * 180) / Math.PI + 360) % 360).toBeCloseTo(phase, 8);
    }
  });

  it('have the power a²/2 in Welch’s density', () => {
    const { density, binWidth } = spectra(samples, rate, 1024);
    const power = (frequency: number): number => [-3, -2, -1, 0, 1, 2, 3].reduce((sum, away) => sum + density[frequency / binWidth + away]! * binWidth, 0);
    expect(binWidth).toBe(2);
    expect(power(60)).toBeCloseTo(0.5, 10);
    expect(power(180)).toBeCloseTo(0.125, 10);
    expect(density.reduce((sum, value) => sum + value * binWidth, 0)).toBeCloseTo(0.625, 10);
  });
});

describe('order tracking', () => {
  const rate = 5000;
  const count = 4 * rate;
  // Turns: 20·t + 1.25·t², 100 in four seconds, speeding up from 20 to 30 a second.
  const turns = Float64Array.from({ length: count + 1 }, (_, index) => 20 * (index / rate) + 1.25 * (index / rate) ** 2);
  const phase = (order: number, index: number): number => 2 * Math.PI * order * turns[index]!;
  const run = (index: number): number => Math.cos(phase(1, index)) + 0.4 * Math.cos(phase(2, index) + 0.3) + 0.2 * Math.cos(phase(4.5, index));
  const straighten = straightener();

  /** Amplitude of an order in the middle 98 turns, Hann window. */
  function amplitude(samples: Float64Array, order: number): number {
    const straight = straighten(samples, turns);
    const perTurn = (straight.length - 1) / 100;
    const [from, length] = [Math.round(perTurn), Math.round(98 * perTurn)];
    const window = hannWindow(length);
    let [re, im, sum] = [0, 0, 0];
    for (let index = 0; index < length; index += 1) {
      re += window[index]! * straight[from + index]! * Math.cos((2 * Math.PI * order * index) / perTurn);
      im -= window[index]! * straight[from + index]! * Math.sin((2 * Math.PI * order * index) / perTurn);
      sum += window[index]!;
    }
    return (2 * Math.hypot(re, im)) / sum;
  }

  it('gives lines their amplitudes while the speed rises by half', () => {
    const samples = Float64Array.from({ length: count + 1 }, (_, index) => run(index));
    // Sixteen samples are enough for a ten thousandth.
    for (const [order, truth] of [[1, 1], [2, 0.4], [4.5, 0.2]] as const) expect(Math.abs(amplitude(samples, order) - truth)).toBeLessThan(1e-4);
  });

  it('smears a tone of 50 Hz over orders 1.67 to 2.5, so that order 2 is no longer right', () => {
    // An independent route, with cubic splines and 64 samples a turn: order 2 comes to 0.43654, orders 1 and 4.5 stay.
    const samples = Float64Array.from({ length: count + 1 }, (_, index) => run(index) + 0.3 * Math.cos((2 * Math.PI * 50 * index) / rate));
    expect(amplitude(samples, 1)).toBeCloseTo(1, 3);
    expect(amplitude(samples, 4.5)).toBeCloseTo(0.2, 3);
    expect(Math.abs(amplitude(samples, 2) - 0.4)).toBeGreaterThan(0.01);
  });
});
