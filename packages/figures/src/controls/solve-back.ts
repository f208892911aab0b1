/** Share of a radian that derivatives are taken over, and what ends the search. */
const step = 1e-6;
const mostSteps = 30;
const found = 1e-13;

/**
 * Angles at which some differences are zero, by Newton's method with least squares: as many angles as there are, at
 * least as many as differences that they can settle.
 *
 * @param differences  of size 1 or smaller; undefined where something does not reach
 * @param start        angles near the answer, rad
 * @returns            undefined where the search does not end, or leads out of reach
 * @source Newton's method, of all steps the smallest (normal equations of full row rank)
 */
export function solveBack(differences: (angles: readonly number[]) => readonly number[] | undefined, start: readonly number[]): readonly number[] | undefined {
  let angles = start;
  for (let steps = 0; steps < mostSteps; steps += 1) {
    const here = differences(angles);
    if (here === undefined) return undefined;
    if (here.every((each) => Math.abs(each) <= found)) return angles;
    const columns = angles.map((_, turned) => {
      const [ahead, behind] = [step, -step].map((turn) => differences(angles.map((angle, index) => (index === turned ? angle + turn : angle))));
      return ahead && behind && ahead.map((each, row) => (each - behind[row]!) / (2 * step));
    });
    if (columns.includes(undefined)) return undefined;
    const known = columns as readonly (readonly number[])[];
    const product = here.map((_, row) => here.map((_other, column) => known.reduce((sum, each) => sum + each[row]! * each[column]!, 0)));
    const weights = solveSquare(product, here);
    if (weights === undefined) return undefined;
    const move = known.map((column) => column.reduce((sum, each, row) => sum + each * weights[row]!, 0));
    angles = angles.map((angle, index) => angle - move[index]!);
    if (move.every((each) => Math.abs(each) <= found)) return angles;
  }
  return undefined;
}

/** Gauss with the largest pivot; undefined where the rows do not settle the unknowns. */
function solveSquare(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] | undefined {
  const rows = matrix.map((row, index) => [...row, right[index]!]);
  const size = Math.max(...matrix.flat().map(Math.abs));
  for (let pivot = 0; pivot < rows.length; pivot += 1) {
    const best = rows.slice(pivot).reduce((most, row, index) => (Math.abs(row[pivot]!) > Math.abs(rows[most]![pivot]!) ? index + pivot : most), pivot);
    [rows[pivot], rows[best]] = [rows[best]!, rows[pivot]!];
    if (!(Math.abs(rows[pivot]![pivot]!) > 1e-14 * size)) return undefined;
    for (let row = 0; row < rows.length; row += 1) {
      if (row === pivot) continue;
      const share = rows[row]![pivot]! / rows[pivot]![pivot]!;
      rows[row] = rows[row]!.map((value, column) => value - share * rows[pivot]![column]!);
    }
  }
  return rows.map((row, index) => row[rows.length]! / row[index]!);
}
