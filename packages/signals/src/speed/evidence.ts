/** How much stronger than the noise a line may be: the strengths that are weighed, alike in each octave. */
const strengths: readonly number[] = Array.from({ length: 14 }, (_, index) => 0.4 * 2 ** index);
/** Of each, what it is of itself and noise together, and the logarithm of that over noise. */
const shares: readonly number[] = strengths.map((strength) => strength / (1 + strength));
const falls: readonly number[] = strengths.map(Math.log1p);
const tableStep = 0.05;
const tableEnd = 60;

/** Evidence for a line by the power that was found at its place: logarithm of the odds against noise alone. */
export type LineEvidence = (power: number) => number;

/**
 * Odds of a line of unknown strength against noise, both of exponential power, pooled over some frames.
 *
 * @param frames  how many independent frames the power is the mean of, 1 or more
 * @param likely  how likely the line is to be there at all, 0 to 1
 * @param most    no line counts for more than this, nepers
 * @source likelihood ratio of exponential laws, averaged over strengths alike in each octave
 */
export function lineEvidence(frames: number, likely: number, most: number): LineEvidence {
  const logs = new Float64Array(strengths.length);
  const table = Float32Array.from({ length: tableEnd / tableStep + 2 }, (_, index) => {
    const power = index * tableStep;
    let largest = -Infinity;
    for (let at = 0; at < strengths.length; at += 1) {
      logs[at] = frames * (power * shares[at]! - falls[at]!);
      if (logs[at]! > largest) largest = logs[at]!;
    }
    let sum = 0;
    for (let at = 0; at < logs.length; at += 1) sum += Math.exp(logs[at]! - largest);
    const mean = largest + Math.log(sum / logs.length);
    const top = Math.max(mean, 0);
    return Math.min(most, top + Math.log((1 - likely) * Math.exp(-top) + likely * Math.exp(mean - top)));
  });
  return (power) => {
    const place = power / tableStep;
    if (!(place < table.length - 2)) return table[table.length - 1]!;
    const index = Math.floor(place);
    return table[index]! + (place - index) * (table[index + 1]! - table[index]!);
  };
}
