import { normalQuantile } from './normal-quantile.ts';

export interface WeibullFit {
  /** β: below 1 early failures, 1 chance, above 1 wear */
  readonly shape: number;
  /** η, in the unit of the times: 63.2 % have failed by then */
  readonly scale: number;
  readonly shapeLow: number;
  readonly shapeHigh: number;
  readonly scaleLow: number;
  readonly scaleHigh: number;
  /** By when a tenth has failed. */
  readonly tenPercentLife: number;
  readonly tenPercentLifeLow: number;
  readonly tenPercentLifeHigh: number;
  /** Of the times in their unit. */
  readonly logLikelihood: number;
}

/**
 * Two-parameter Weibull distribution fitted to failures and to what was still sound, by maximum likelihood.
 * Bounds by the normal approximation on ln β, ln η and ln of the ten-percent life, from the observed information.
 *
 * @param failures    times of failure, any one unit, above 0; at least two that differ
 * @param censored    times at which others were taken off or still ran, sound
 * @param confidence  two-sided, over 0 and under 1
 * @throws RangeError when a time is not above 0, or fewer than two failure times differ
 * @neglects bias: with few failures β comes out too high
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, 8.4.1.3; Nelson, Applied Life Data Analysis, chapter 8 (from memory)
 */
export function weibullFit(failures: readonly number[], censored: readonly number[], confidence: number): WeibullFit {
  for (const time of [...failures, ...censored]) {
    if (!(time > 0 && Number.isFinite(time))) throw new RangeError(`weibullFit: times must be above 0, got ${time}`);
  }
  if (new Set(failures).size < 2) throw new RangeError('weibullFit: at least two failure times that differ are needed');
  const z = normalQuantile(0.5 + confidence / 2);
  const r = failures.length;
  // Times relative to the longest, so that no power overflows.
  const unit = Math.max(...failures, ...censored);
  const logs = [...failures, ...censored].map((time) => Math.log(time / unit));
  const failedMean = failures.reduce((sum, time) => sum + Math.log(time / unit), 0) / r;

  const shape = shapeOf(logs, failedMean);
  const powers = logs.map((log) => Math.exp(shape * log));
  const relativeScale = (powers.reduce((sum, power) => sum + power, 0) / r) ** (1 / shape);
  const scale = relativeScale * unit;

  // Observed information in β and ln η at the maximum, where Σ(t/η)^β = r.
  const logScale = Math.log(relativeScale);
  let withLog = 0;
  let withSquare = 0;
  for (const log of logs) {
    const u = log - logScale;
    const weight = Math.exp(shape * u);
    withLog += weight * u;
    withSquare += weight * u * u;
  }
  const bb = r / shape ** 2 + withSquare;
  const ss = shape ** 2 * r;
  const bs = -shape * withLog;
  const determinant = bb * ss - bs * bs;
  const shapeVariance = ss / determinant;
  const logScaleVariance = bb / determinant;
  const covariance = -bs / determinant;

  const c = Math.log(-Math.log(0.9));
  const tenPercentLife = scale * Math.exp(c / shape);
  const slope = -c / shape ** 2;
  const around = (value: number, deviation: number): readonly [number, number] => [value * Math.exp(-z * deviation), value * Math.exp(z * deviation)];
  const [shapeLow, shapeHigh] = around(shape, Math.sqrt(shapeVariance) / shape);
  const [scaleLow, scaleHigh] = around(scale, Math.sqrt(logScaleVariance));
  const [tenPercentLifeLow, tenPercentLifeHigh] = around(tenPercentLife, Math.sqrt(logScaleVariance + slope * slope * shapeVariance + 2 * slope * covariance));
  const logLikelihood = failures.reduce((sum, time) => sum + Math.log(shape / scale) + (shape - 1) * Math.log(time / scale), 0) - r;
  return { shape, scale, shapeLow, shapeHigh, scaleLow, scaleHigh, tenPercentLife, tenPercentLifeLow, tenPercentLifeHigh, logLikelihood };
}

/** Root of Σt^β ln t / Σt^β − 1/β − mean of the failures' ln t, which rises with β. */
function shapeOf(logs: readonly number[], failedMean: number): number {
  const excess = (shape: number): number => {
    let weights = 0;
    let weighted = 0;
    for (const log of logs) {
      const weight = Math.exp(shape * log);
      weights += weight;
      weighted += weight * log;
    }
    return weighted / weights - 1 / shape - failedMean;
  };
  let low = 1e-3;
  let high = 1;
  while (excess(high) < 0) high *= 2;
  while (excess(low) > 0) low /= 2;
  for (let halvings = 0; halvings < 200 && high - low > 1e-15 * high; halvings++) {
    const middle = (low + high) / 2;
    if (excess(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
