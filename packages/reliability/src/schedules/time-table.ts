import type { Bounds } from './bounds.ts';
import type { TickProject } from './project.ts';

/** Rounding of needs and capacities that are no whole numbers. */
const SLACK = 1e-9;

/** Steps of a profile are bridged one activity's length at a time where that takes no more than so many strides. */
const STRIDES = 8;

/**
 * What must run at every moment: between its latest start and its earliest end an activity runs whatever is decided. Where that
 * leaves too little of the resource, others move away; where it already needs too much, there is a conflict.
 *
 * One table for each resource. It is told of every moved bound, and looks only at what that can have changed.
 *
 * @source time-table filtering with pointwise explanation, Schutt, Feydy, Stuckey, Wallace, Explaining the cumulative propagator (2011) (from memory)
 */
export class TimeTable {
  readonly #resource: number;
  readonly #kind: number;
  readonly #bounds: Bounds;
  readonly #durations: readonly number[];
  readonly #needs: readonly number[];
  readonly #capacity: number;
  /** Activities that take some of the resource for some time, the greediest first. */
  readonly #users: Int32Array;
  /** Activities to look at: those whose bounds moved; all when the profile changed. */
  readonly #moved: Uint8Array;
  #changed = true;
  // The profile, as steps; edges are kept sorted from one look to the next.
  #steps = 0;
  #highest = 0;
  readonly #from: Float64Array;
  readonly #to: Float64Array;
  readonly #height: Float64Array;
  readonly #edges: Float64Array;

  /** @param kind  of the reasons that it gives: resource, first and last moment at which there is too little left */
  constructor(ticks: TickProject, resource: number, bounds: Bounds, kind: number) {
    this.#resource = resource;
    this.#kind = kind;
    this.#bounds = bounds;
    this.#durations = ticks.durations;
    this.#needs = ticks.needs[resource]!;
    this.#capacity = ticks.capacities[resource]!;
    const users = ticks.durations.flatMap((duration, i) => (duration > 0 && this.#needs[i]! > 0 ? [i] : []));
    this.#users = Int32Array.from(users.sort((a, b) => this.#needs[b]! - this.#needs[a]!));
    this.#moved = new Uint8Array(ticks.durations.length).fill(1);
    this.#edges = new Float64Array(2 * users.length);
    this.#from = new Float64Array(2 * users.length);
    this.#to = new Float64Array(2 * users.length);
    this.#height = new Float64Array(2 * users.length);
  }

  /** A bound of one of its users moved. */
  touch(activity: number): void {
    const { bound } = this.#bounds;
    this.#moved[activity] = 1;
    if (bound[2 * activity + 1]! < bound[2 * activity]! + this.#durations[activity]!) this.#changed = true;
  }

  /** Bounds went back: the profile is not that of the present bounds. */
  invalidate(): void {
    this.#changed = true;
  }

  /** @returns false on a conflict, which then stands in the bounds */
  run(): boolean {
    const all = this.#changed;
    if (all) {
      this.#changed = false;
      if (!this.#build()) return false;
    }
    for (const i of this.#users) {
      // The greediest come first: the rest fit beside the highest step.
      if (this.#highest + this.#needs[i]! <= this.#capacity + SLACK) break;
      if ((all || this.#moved[i] === 1) && !this.#clear(i)) return false;
    }
    this.#moved.fill(0);
    return true;
  }

  #build(): boolean {
    const { bound } = this.#bounds;
    const durations = this.#durations;
    const edges = this.#edges;
    let count = 0;
    for (const i of this.#users) {
      if (bound[2 * i + 1]! >= bound[2 * i]! + durations[i]!) continue;
      edges[count++] = bound[2 * i + 1]!;
      edges[count++] = bound[2 * i]! + durations[i]!;
    }
    for (let e = 1; e < count; e++) {
      const edge = edges[e]!;
      let at = e;
      for (; at > 0 && edges[at - 1]! > edge; at--) edges[at] = edges[at - 1]!;
      edges[at] = edge;
    }
    this.#steps = 0;
    this.#highest = 0;
    for (let e = 0; e + 1 < count; e++) {
      const from = edges[e]!;
      const to = edges[e + 1]!;
      if (from === to) continue;
      let height = 0;
      for (const i of this.#users) if (bound[2 * i + 1]! <= from && bound[2 * i]! + durations[i]! >= to) height += this.#needs[i]!;
      if (height === 0) continue;
      if (height > this.#highest) this.#highest = height;
      if (height > this.#capacity + SLACK) {
        const conflict: number[] = [];
        const moment = Math.floor((from + to - 1) / 2);
        this.#running(conflict, Infinity, moment, moment, this.#capacity, -1);
        this.#bounds.conflict = conflict;
        return false;
      }
      const step = this.#steps++;
      this.#from[step] = from;
      this.#to[step] = to;
      this.#height[step] = height;
    }
    return true;
  }

  /** An activity that does not fit beside a step moves behind it or before it. */
  #clear(i: number): boolean {
    const bounds = this.#bounds;
    const { bound } = bounds;
    const duration = this.#durations[i]!;
    const room = this.#capacity - this.#needs[i]! + SLACK;
    if (bound[2 * i]! === bound[2 * i + 1]!) return true;
    for (let step = 0; step < this.#steps; step++) {
      const from = this.#from[step]!;
      const to = this.#to[step]!;
      if (from >= bound[2 * i]! + duration) break;
      if (to <= bound[2 * i]! || this.#height[step]! <= room) continue;
      // Its own part of the step does not stand in its way.
      if (bound[2 * i + 1]! <= from && bound[2 * i]! + duration >= to) continue;
      const stride = to - from > STRIDES * duration ? to - from : duration;
      while (bound[2 * i]! < to && bound[2 * i]! + duration > from) {
        const last = Math.min(to, bound[2 * i]! + stride) - 1;
        const first = Math.min(last, bound[2 * i]! + duration - 1);
        if (!bounds.enforce(2 * i, last + 1, this.#kind, this.#resource, first, last)) return false;
      }
    }
    for (let step = this.#steps - 1; step >= 0; step--) {
      const from = this.#from[step]!;
      const to = this.#to[step]!;
      if (to <= bound[2 * i + 1]!) break;
      if (from >= bound[2 * i + 1]! + duration || this.#height[step]! <= room) continue;
      if (bound[2 * i + 1]! <= from && bound[2 * i]! + duration >= to) continue;
      const stride = to - from > STRIDES * duration ? to - from : duration;
      while (bound[2 * i + 1]! < to && bound[2 * i + 1]! + duration > from) {
        const first = Math.max(from, bound[2 * i + 1]! + duration - stride);
        const last = Math.max(first, bound[2 * i + 1]!);
        if (!bounds.enforce(2 * i + 1, first - duration, this.#kind, this.#resource, first, last)) return false;
      }
    }
    return true;
  }

  /** Adds the literals behind a moved bound: too little is left from moment `first` to moment `last`, and the activity would run then. */
  explain(into: number[], entry: number, code: number, first: number, last: number): void {
    const i = code >> 1;
    if ((code & 1) === 0) into.push(code, first + 1 - this.#durations[i]!);
    else into.push(code, last);
    this.#running(into, entry, first, last, this.#capacity - this.#needs[i]!, i);
  }

  /** Adds literals that say why more than `room` is taken from moment `first` to `last`: as few activities as will do, those first that run whatever is decided. */
  #running(into: number[], entry: number, first: number, last: number, room: number, except: number): void {
    const bounds = this.#bounds;
    let missing = room + SLACK;
    const chosen: number[] = [];
    for (const j of this.#users) {
      if (j === except) continue;
      const start = last + 1 - this.#durations[j]!;
      if (!bounds.heldBefore(2 * j, start, entry) || !bounds.heldBefore(2 * j + 1, first, entry)) continue;
      if (bounds.holdsAlways(2 * j, start) && bounds.holdsAlways(2 * j + 1, first)) missing -= this.#needs[j]!;
      else chosen.push(j);
    }
    for (const j of chosen) {
      if (missing < 0) break;
      into.push(2 * j, last + 1 - this.#durations[j]!, 2 * j + 1, first);
      missing -= this.#needs[j]!;
    }
  }
}
