/**
 * Solves a small system in place by elimination with pivots from the column.
 *
 * @param system    n rows of n coefficients and the right side; overwritten
 * @param solution  n places, written
 * @returns         false when the system has no one solution
 */
export function solveLinear(system: Float64Array, solution: Float64Array): boolean {
  const n = solution.length;
  const width = n + 1;
  for (let p = 0; p < n; p++) {
    let best = p;
    for (let i = p + 1; i < n; i++) if (Math.abs(system[i * width + p]!) > Math.abs(system[best * width + p]!)) best = i;
    const pivot = system[best * width + p]!;
    if (!(Math.abs(pivot) > 0) || !Number.isFinite(pivot)) return false;
    if (best !== p) {
      for (let k = p; k < width; k++) {
        const kept = system[p * width + k]!;
        system[p * width + k] = system[best * width + k]!;
        system[best * width + k] = kept;
      }
    }
    for (let i = p + 1; i < n; i++) {
      const factor = system[i * width + p]! / pivot;
      for (let k = p; k < width; k++) system[i * width + k]! -= factor * system[p * width + k]!;
    }
  }
  for (let p = n - 1; p >= 0; p--) {
    let rest = system[p * width + n]!;
    for (let k = p + 1; k < n; k++) rest -= system[p * width + k]! * solution[k]!;
    solution[p] = rest / system[p * width + p]!;
  }
  return true;
}
