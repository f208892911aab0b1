/** A step more than this many times the last one is no continuation of it. */
const FARTHEST_REACH = 2;
/** A place nearer to the last one than this share of the step before is the last one over again. */
const SAME_PLACE = 0.1;

/**
 * The last solutions along a sweep, and where they point: on the parabola through three of them, on the line through two.
 * A solution that is pointed at needs one correction where one begun from its neighbour needs three.
 */
export class Trail {
  /** Of the last solution, the one before, and the one before that; NaN where there is none. */
  readonly #places = new Float64Array(3).fill(Number.NaN);
  #values: readonly [last: Float64Array, before: Float64Array, earliest: Float64Array];

  constructor(size: number) {
    this.#values = [new Float64Array(size), new Float64Array(size), new Float64Array(size)];
  }

  clear(): void {
    this.#places.fill(Number.NaN);
  }

  record(place: number, values: Float64Array): void {
    const [last, before] = this.#places;
    const [first, second, third] = this.#values;
    if (Math.abs(place - last!) <= SAME_PLACE * Math.abs(last! - before!)) first.set(values);
    else {
      third.set(values);
      this.#values = [third, first, second];
      this.#places.copyWithin(1, 0, 2);
    }
    this.#places[0] = place;
  }

  /** The last solution itself; false when there is none. */
  last(values: Float64Array): boolean {
    if (Number.isNaN(this.#places[0]!)) return false;
    values.set(this.#values[0]);
    return true;
  }

  /**
   * @param values  filled with what the solutions point at; the last one where they point nowhere
   * @returns       false when there is none
   */
  point(place: number, values: Float64Array): boolean {
    const [last, before, earliest] = this.#places;
    if (Number.isNaN(last!)) return false;
    const [first, second, third] = this.#values;
    let weight = 0;
    let weightThird = 0;
    const reach = (place - last!) / (last! - before!);
    if (Math.abs(reach) <= FARTHEST_REACH) {
      weight = -reach;
      // The part of the parabola that the line leaves out, by divided differences.
      const bend = (reach * (place - before!)) / (last! - earliest!);
      const even = (last! - before!) / (before! - earliest!);
      if (Math.abs(bend) <= FARTHEST_REACH ** 2 && Math.abs(even) <= FARTHEST_REACH ** 2) {
        weight -= bend * (1 + even);
        weightThird = bend * even;
      }
    }
    const weightFirst = 1 - weight - weightThird;
    for (let i = 0; i < values.length; i++) values[i] = weightFirst * first[i]! + weight * second[i]! + weightThird * third[i]!;
    return true;
  }
}
