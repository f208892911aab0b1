/** Activities are marks in one word. */
export const MOST_ACTIVITIES = 32;

/**
 * A state in its layer: the next with the same activities started (−1 for none), when the last of them started, the work time at
 * which all can have ended at the soonest, marks of those that matter, its number among all; then the starts of those that matter.
 */
export const NEXT = 0;
export const TIME = 1;
export const ESTIMATE = 2;
export const MATTER = 3;
export const NUMBER = 4;
export const STARTS = 5;

/**
 * States of the layer at hand, which are gone through, and of the one in the making. Of two states that have started the same
 * activities, one that is nowhere later makes the other superfluous.
 */
export class StateLayers {
  /** How long after its start an activity still matters. */
  readonly #reach: Float64Array;

  // Every state kept: the last activity started, when, and the state it came from.
  #kept = 0;
  #activity = new Int8Array(1 << 12);
  #time = new Int32Array(1 << 12);
  #parent = new Int32Array(1 << 12);
  // A record for each state of the layer at hand and of the one in the making; where the next goes, and the first of each set started.
  #layer = new Int32Array(1 << 14);
  #making = new Int32Array(1 << 14);
  #length = 0;
  #heads = new Map<number, number>();

  constructor(reach: Float64Array) {
    this.#reach = reach;
  }

  /** How many states have been kept in all. */
  get kept(): number {
    return this.#kept;
  }

  /** Records of the layer at hand. */
  get layer(): Int32Array {
    return this.#layer;
  }

  /** The activity that was started last, −1 for none. */
  lastStarted(number: number): number {
    return this.#activity[number]!;
  }

  /** Start of each activity on the way to a state. */
  trace(number: number, starts: Float64Array): Float64Array {
    for (let state = number; this.#activity[state]! >= 0; state = this.#parent[state]!) starts[this.#activity[state]!] = this.#time[state]!;
    return starts;
  }

  /**
   * Takes the layer in the making to hand, those states that may end soonest, and begins the next.
   *
   * @param width  states that are kept
   * @returns      by set started, its first state; whether any state was dropped
   */
  turn(width: number): { readonly heads: ReadonlyMap<number, number>; readonly narrowed: boolean } {
    const heads = this.#heads;
    const narrowed = width < Infinity && this.#narrow(width);
    [this.#layer, this.#making] = [this.#making, this.#layer];
    this.#length = 0;
    this.#heads = new Map();
    return { heads, narrowed };
  }

  #narrow(width: number): boolean {
    const states = this.#making;
    const estimates: number[] = [];
    for (const head of this.#heads.values()) for (let state = head; state >= 0; state = states[state + NEXT]!) estimates.push(states[state + ESTIMATE]!);
    if (estimates.length <= width) return false;
    const limit = estimates.sort((a, b) => a - b)[width - 1]!;
    let ties = width - estimates.indexOf(limit);
    for (const [started, head] of this.#heads) {
      let first = -1;
      for (let state = head, next = -1; state >= 0; state = next) {
        next = states[state + NEXT]!;
        if (states[state + ESTIMATE]! > limit || (states[state + ESTIMATE] === limit && ties-- <= 0)) continue;
        states[state + NEXT] = first;
        first = state;
      }
      if (first < 0) this.#heads.delete(started);
      else this.#heads.set(started, first);
    }
    return true;
  }

  /**
   * Adds a state, unless one with the same activities started is nowhere later; drops those that it makes superfluous.
   *
   * @param parent     number of the state that it comes from
   * @param activity   the one that is started
   * @param estimate   work time at which all can have ended at the soonest
   * @param candidates marks of those that may matter
   * @param starts     their starts, by activity
   * @param started    marks of all that are started
   */
  add(parent: number, activity: number, time: number, estimate: number, candidates: number, starts: Int32Array, started: number): void {
    let matter = 0;
    for (let rest = candidates; rest !== 0; rest &= rest - 1) {
      const i = 31 - Math.clz32(rest & -rest);
      if (starts[i]! + this.#reach[i]! > time) matter |= 1 << i;
    }
    const end = this.#write(time, estimate, matter, starts);
    const state = this.#length;
    const states = this.#making;
    let head = this.#heads.get(started) ?? -1;
    let previous = -1;
    for (let other = head; other >= 0; other = states[other + NEXT]!) {
      // Whoever is nowhere later can end as soon: most pairs need no closer look.
      const [otherTime, soonest] = [states[other + TIME]!, states[other + ESTIMATE]!];
      if (otherTime <= time && soonest <= estimate && this.#nowhereLater(other, state, time)) return;
      if (otherTime >= time && soonest >= estimate && this.#nowhereLater(state, other, otherTime)) {
        if (previous < 0) head = states[other + NEXT]!;
        else states[previous + NEXT] = states[other + NEXT]!;
      } else previous = other;
    }
    states[state + NEXT] = head;
    states[state + NUMBER] = this.#number(activity, time, parent);
    this.#heads.set(started, state);
    this.#length = end;
  }

  /** Whether from `time` on, where the other state is, nothing of this one lasts longer than in the other. */
  #nowhereLater(state: number, other: number, time: number): boolean {
    const states = this.#making;
    const otherMatter = states[other + MATTER]!;
    let place = state + STARTS;
    for (let rest = states[state + MATTER]!; rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      const start = states[place++]!;
      if (start + this.#reach[31 - Math.clz32(bit)]! <= time) continue;
      if ((otherMatter & bit) === 0) return false;
      let otherPlace = other + STARTS;
      for (let lower = otherMatter & (bit - 1); lower !== 0; lower &= lower - 1) otherPlace++;
      if (states[otherPlace]! < start) return false;
    }
    return true;
  }

  /** Writes a state where the next record goes, to be kept or written over. @returns where the one after it would go */
  #write(time: number, estimate: number, matter: number, starts: Int32Array): number {
    const state = this.#length;
    if (state + STARTS + MOST_ACTIVITIES > this.#making.length) this.#making = widened(this.#making);
    const states = this.#making;
    states[state + TIME] = time;
    states[state + ESTIMATE] = estimate;
    states[state + MATTER] = matter;
    let place = state + STARTS;
    for (let rest = matter; rest !== 0; rest &= rest - 1) states[place++] = starts[31 - Math.clz32(rest & -rest)]!;
    return place;
  }

  #number(activity: number, time: number, parent: number): number {
    const number = this.#kept++;
    if (number >= this.#activity.length) {
      this.#activity = widened(this.#activity);
      this.#time = widened(this.#time);
      this.#parent = widened(this.#parent);
    }
    this.#activity[number] = activity;
    this.#time[number] = time;
    this.#parent[number] = parent;
    return number;
  }
}

function widened<A extends Int32Array | Int8Array>(array: A): A {
  const wider = new (array.constructor as new (length: number) => A)(2 * array.length);
  wider.set(array);
  return wider;
}
