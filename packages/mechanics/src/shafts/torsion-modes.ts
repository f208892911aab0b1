import { orthogonalRows } from '../numeric/orthogonal-rows.ts';

export interface TorsionModes {
  /** Ascending, rad/s; the turning of the whole chain at 0 is not listed. */
  readonly angularFrequencies: readonly number[];
  /** One row a mode: the angle of each inertia on its own shaft, the largest 1. */
  readonly shapes: readonly (readonly number[])[];
}

/**
 * Natural frequencies of a free chain of inertias with shafts between them, some of which may turn faster than others.
 *
 * What turns r times as fast as the first shaft counts r² times there. The frequencies are the singular values of the matrix whose
 * row i is √k_i·(−e_i/√J_i + e_(i+1)/√J_(i+1)): the rigid turning stays out by itself, and slow modes beside fast ones keep their digits.
 *
 * @param inertias     kg·m², positive, each on its own shaft
 * @param stiffnesses  N·m/rad, positive, one fewer: from each inertia to the next
 * @param speedRatios  of each inertia's shaft over the first inertia's, any sign but not 0; the shaft from an inertia to the next turns
 *                     with the former, so a mesh lies right before the latter
 * @throws RangeError when the numbers of entries do not fit, or one is not as above
 * @neglects damping, backlash, mass of the shafts, gyroscopic effects
 * @source Thomson, Theory of Vibration, sections 5.2 and 12.4 (from memory): energies referred to one shaft
 * @example torsionModes([1, 1], [2], [1, 1]).angularFrequencies[0] // 2
 */
export function torsionModes(inertias: readonly number[], stiffnesses: readonly number[], speedRatios: readonly number[]): TorsionModes {
  const count = inertias.length;
  if (stiffnesses.length !== count - 1 || speedRatios.length !== count || count < 2) {
    throw new RangeError(`torsionModes: n ≥ 2 inertias, n − 1 stiffnesses and n ratios are needed, got ${count}, ${stiffnesses.length} and ${speedRatios.length}`);
  }
  if (![...inertias, ...stiffnesses].every((value) => value > 0 && value < Infinity)) throw new RangeError('torsionModes: inertias and stiffnesses must be positive and finite');
  if (!speedRatios.every((ratio) => Number.isFinite(ratio) && ratio !== 0)) throw new RangeError('torsionModes: speed ratios must be finite and not 0');

  const referredInertias = inertias.map((inertia, i) => inertia * speedRatios[i]! ** 2);
  const referredStiffnesses = stiffnesses.map((stiffness, i) => stiffness * speedRatios[i]! ** 2);
  const roots = referredInertias.map(Math.sqrt);
  const rows = referredStiffnesses.map((k, shaft) => {
    const row = new Float64Array(count);
    row[shaft] = -Math.sqrt(k) / roots[shaft]!;
    row[shaft + 1] = Math.sqrt(k) / roots[shaft + 1]!;
    return row;
  });
  const modes = orthogonalRows(rows).toSorted((a, b) => a.length - b.length);
  return {
    angularFrequencies: modes.map(({ length }) => length),
    shapes: modes.map(({ direction }) => {
      const angles = Array.from(direction, (part, i) => (speedRatios[i]! * part) / roots[i]!);
      const largest = angles.reduce((most, angle) => (Math.abs(angle) > Math.abs(most) ? angle : most), 0);
      return angles.map((angle) => angle / largest);
    }),
  };
}
