import type { Check, Source } from './check.ts';

const sums: Source = { document: 'Sum of independent normal lengths: variances add', place: 'standard normal table, Φ(3) = 0.99865 (from memory)', kind: 'law' };
const even: Source = { document: 'Irwin–Hall distribution of a sum of even lengths', place: 'two: triangle, F(x) = x²/2 up to the middle', kind: 'law' };
const hand: Source = { document: 'Worked by hand in the title', kind: 'by hand' };

const length = (nominal: string, reach: string, sense: 'adds' | 'takes', spread: 'normal' | 'uniform') => ({ length: nominal, lower: `-${reach}`, upper: reach, sense, spread });
const normal = { members: [length('10 mm', '30 µm', 'adds', 'normal'), length('4 mm', '60 µm', 'takes', 'normal'), length('5 mm', '60 µm', 'takes', 'normal')], samples: 400_000 };
const triangle = { members: [length('10 mm', '0.1 mm', 'adds', 'uniform'), length('9 mm', '0.1 mm', 'takes', 'uniform')], samples: 400_000 };
const three = { members: [length('10 mm', '30 µm', 'adds', 'normal'), length('4 mm', '0.02 mm', 'takes', 'uniform'), length('5 mm', '0.05 mm', 'takes', 'uniform')], samples: 1000 };

const lopsided = { members: [{ length: '10 mm', lower: 0, upper: '0.2 mm', sense: 'adds', spread: 'uniform' }, { length: '4 mm', lower: 0, upper: '0.1 mm', sense: 'takes', spread: 'normal' }], samples: 1000 };

/** Chains of toleranced lengths against closed forms. Drawn values may miss by five standard errors of the quantile. */
export const toleranceStacks: readonly Check[] = [
  { calculation: 'tolerance-stack', title: '10 − 4 − 5 mm', source: hand, inputs: three, output: 'nominal', expected: 0.001, tolerance: 1e-12, mode: 'relative' },
  { calculation: 'tolerance-stack', title: '9.97 − 4.02 − 5.05 mm = 0.9 mm', source: hand, inputs: three, output: 'worstLeast', expected: 0.0009, tolerance: 1e-11, mode: 'relative' },
  { calculation: 'tolerance-stack', title: '10.03 − 3.98 − 4.95 mm = 1.1 mm', source: hand, inputs: three, output: 'worstMost', expected: 0.0011, tolerance: 1e-11, mode: 'relative' },
  { calculation: 'tolerance-stack', title: 'lengths that may only be larger, by up to 0.2 and 0.1 mm: 10.1 − 4.05 mm', source: hand, inputs: lopsided, output: 'mean', expected: 0.00605, tolerance: 1e-11, mode: 'relative' },
  { calculation: 'tolerance-stack', title: 'standard deviations of 10, 20 and 20 µm: √(100 + 400 + 400) = 30 µm', source: sums, inputs: normal, output: 'standardDeviation', expected: 30e-6, tolerance: 1e-11, mode: 'relative' },
  { calculation: 'tolerance-stack', title: 'two even lengths of ±0.1 mm: variance 2 · (0.2 mm)²/12', source: even, inputs: triangle, output: 'standardDeviation', expected: 0.0002 / Math.sqrt(6), tolerance: 1e-11, mode: 'relative' },
  // Standard error: √(0.00135 · 0.99865/4e5)/φ(3) = 0.0131 standard deviations of 30 µm.
  { calculation: 'tolerance-stack', title: 'three standard deviations of 30 µm below 1 mm', source: sums, inputs: normal, output: 'low', expected: 0.00091, tolerance: 2e-6, mode: 'absolute' },
  { calculation: 'tolerance-stack', title: 'three standard deviations of 30 µm above 1 mm', source: sums, inputs: normal, output: 'high', expected: 0.00109, tolerance: 2e-6, mode: 'absolute' },
  // Standard error: √(0.025 · 0.975/4e5)/φ(1.96) = 0.0042 standard deviations of 30 µm.
  { calculation: 'tolerance-stack', title: '1.96 standard deviations of 30 µm below 1 mm', source: { ...sums, place: 'standard normal table, Φ(1.95996) = 0.975 (from memory)' }, inputs: normal, output: 'low95', expected: 0.001 - 1.95996 * 30e-6, tolerance: 0.64e-6, mode: 'absolute' },
  { calculation: 'tolerance-stack', title: '1.96 standard deviations of 30 µm above 1 mm', source: { ...sums, place: 'standard normal table, Φ(1.95996) = 0.975 (from memory)' }, inputs: normal, output: 'high95', expected: 0.001 + 1.95996 * 30e-6, tolerance: 0.64e-6, mode: 'absolute' },
  // x²/2 = 0.00135 for lengths of width 1: x = √0.0027; the density there is x.
  { calculation: 'tolerance-stack', title: '0.2 mm · √0.0027 above the smallest gap of 0.8 mm', source: even, inputs: triangle, output: 'low', expected: 0.0008 + 0.0002 * Math.sqrt(0.0027), tolerance: 1.15e-6, mode: 'absolute' },
  { calculation: 'tolerance-stack', title: 'half below the middle', source: even, inputs: triangle, output: 'median', expected: 0.001, tolerance: 0.8e-6, mode: 'absolute' },
  // Between 0.95 and 1.05 mm: 1 − (0.15/0.2)² = 7/16; standard error √(7/16 · 9/16/4e5) = 0.00079.
  { calculation: 'tolerance-stack', title: 'inside ±0.05 mm of the middle of a triangle of ±0.2 mm: 1 − (3/4)² = 7/16', source: even, inputs: { ...triangle, least: '0.95 mm', most: '1.05 mm' }, output: 'shareInside', expected: 7 / 16, tolerance: 0.004, mode: 'absolute' },
];
