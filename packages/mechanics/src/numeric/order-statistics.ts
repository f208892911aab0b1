/**
 * The value that would stand at a place if the values were sorted, by Hoare's selection with the median of three.
 *
 * @param values  finite; put into another order
 * @param rank    place from 0
 * @returns       the value; the time grows with their number alone
 */
export function selectRank(values: Float64Array, rank: number): number {
  let first = 0;
  let last = values.length - 1;
  while (first < last) {
    const pivot = middleOf(values[first]!, values[(first + last) >> 1]!, values[last]!);
    let low = first;
    let high = last;
    while (low <= high) {
      while (values[low]! < pivot) low += 1;
      while (values[high]! > pivot) high -= 1;
      if (low <= high) {
        const swapped = values[low]!;
        values[low] = values[high]!;
        values[high] = swapped;
        low += 1;
        high -= 1;
      }
    }
    if (rank <= high) last = high;
    else if (rank >= low) first = low;
    else break;
  }
  return values[rank]!;
}

const middleOf = (a: number, b: number, c: number): number => Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
