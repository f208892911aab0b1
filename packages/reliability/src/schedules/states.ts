import type { TickProject } from './project.ts';
import { nextStart } from './serial-schedule.ts';

/** Activities are marks in one word. */
const MOST_ACTIVITIES = 32;
/** States are given up beyond this number: some 100 MB. */
const MOST_STATES = 2_000_000;

export interface StateAnswer {
  /** Shortest schedule found, if one is shorter than was known. */
  readonly starts?: Float64Array;
  /** No schedule is shorter than that one, or than the one that was known. */
  readonly certain: boolean;
}

/**
 * Shortest schedule by going through what can have been started, in order of starts: of two states that have started the same
 * activities, one that is nowhere later makes the other superfluous; one that cannot end in time is dropped. Strong where resources
 * are so scarce that little runs at once, which is where learning from conflicts is slow.
 *
 * A state: the activities started, when the last of them started, and the starts of those that still matter (they run, or somebody
 * waits for them). Layer k holds the states with k activities started.
 *
 * @param weights    by row, weights of activities such that those that can run together weigh at most 1
 * @param end        a schedule that ends then is known: only shorter ones are looked for
 * @param width      states kept in a layer, those first that may end soonest; while none is dropped the answer is certain
 * @source Demeulemeester, Herroelen, New benchmark results for the resource-constrained project scheduling problem (1997), the cutset
 *         rule; Sprecher, Drexl (1998), starts in order of time (both from memory)
 */
export function searchStates(ticks: TickProject, weights: readonly ArrayLike<number>[], end: number, width: number, outOfTime: () => boolean): StateAnswer {
  if (ticks.durations.length > MOST_ACTIVITIES) return { certain: false };
  return new States(ticks, weights, end, width).run(outOfTime);
}

class States {
  readonly #ticks: TickProject;
  readonly #count: number;
  /** Rows of weights times 1, activities ticks. */
  readonly #weights: readonly ArrayLike<number>[];
  readonly #end: number;
  readonly #width: number;
  /** Work time up to the end, less one tick. */
  readonly #endWork: number;
  readonly #before: Int32Array;
  /** From the start of each activity to the end of all, at least. */
  readonly #tail: Float64Array;
  /** How long after its start an activity still matters. */
  readonly #reach: Float64Array;
  /** Needs of those that take no time do not count. */
  readonly #needs: readonly Float64Array[];

  // Every state made: the last activity started, when, and the state it came from.
  #made = 0;
  #activity = new Int8Array(1 << 12);
  #time = new Float64Array(1 << 12);
  #parent = new Int32Array(1 << 12);
  // States of the layer in the making: next with the same activities started , marks of those that matter, where their starts stand.
  #next = new Int32Array(1 << 12);
  #matter = new Int32Array(1 << 12);
  #place = new Int32Array(1 << 12);
  /** Work time at which all can have ended at the soonest. */
  #estimate = new Float64Array(1 << 12);
  #pool = new Float64Array(1 << 14);
  #poolLength = 0;

  // Scratch: starts of those that matter in the state at hand, and in the one being made.
  readonly #starts = new Float64Array(MOST_ACTIVITIES);
  readonly #making = new Float64Array(MOST_ACTIVITIES);

  constructor(ticks: TickProject, weights: readonly ArrayLike<number>[], end: number, width: number) {
    const n = ticks.durations.length;
    this.#ticks = ticks;
    this.#count = n;
    this.#weights = weights;
    this.#end = end;
    this.#width = width;
    this.#endWork = this.#work(end - 1);
    this.#before = new Int32Array(n);
    this.#tail = Float64Array.from(ticks.durations);
    this.#reach = Float64Array.from(ticks.durations);
    for (let i = n - 1; i >= 0; i--) {
      for (const { from, gap } of ticks.before[i]!) {
        this.#before[i]! |= 1 << from;
        this.#tail[from] = Math.max(this.#tail[from]!, gap + this.#tail[i]!);
        this.#reach[from] = Math.max(this.#reach[from]!, gap);
      }
    }
    this.#needs = ticks.needs.map((needs) => Float64Array.from(needs, (need, i) => (ticks.durations[i] === 0 ? 0 : need)));
  }

  /** Time inside windows before a moment. */
  #work(time: number): number {
    const { window } = this.#ticks;
    if (!window) return time;
    const opened = Math.floor(time / window.period);
    return opened * window.length + Math.min(window.length, time - opened * window.period);
  }

  run(outOfTime: () => boolean): StateAnswer {
    let certain = true;
    let layer = new Map<number, number>([[0, this.#add(0, -1, -1, 0, 0, 0)]]);
    for (let k = 0; k < this.#count; k++) {
      const pool = this.#pool.slice(0, this.#poolLength);
      this.#poolLength = 0;
      const first = this.#made;
      const made = new Map<number, number>();
      for (const [started, head] of layer) {
        const left = this.#weights.map((row) => this.#ticks.durations.reduce((sum, duration, i) => ((started >>> i) & 1 ? sum : sum + duration * row[i]!), 0));
        for (let state = head; state >= 0; state = this.#next[state]!) {
          this.#expand(state, started, left, pool, made);
          if ((state & 255) === 0 && outOfTime()) return { certain: false };
        }
        if (this.#made > MOST_STATES) return { certain: false };
      }
      if (made.size === 0) return { certain };
      if (this.#made - first > this.#width) {
        certain = false;
        this.#narrow(made, first);
      }
      layer = made;
    }
    let best = -1;
    let bestEnd = Infinity;
    for (let state = layer.values().next().value ?? -1; state >= 0; state = this.#next[state]!) {
      const starts = this.#trace(state);
      const ends = this.#ticks.durations.reduce((latest, duration, i) => Math.max(latest, starts[i]! + duration), 0);
      if (ends < bestEnd) [best, bestEnd] = [state, ends];
    }
    return { starts: this.#trace(best), certain };
  }

  /** Keeps the states of the layer that may end soonest. */
  #narrow(made: Map<number, number>, first: number): void {
    const limit = this.#estimate.slice(first, this.#made).sort()[this.#width - 1]!;
    for (const [started, head] of made) {
      let kept = -1;
      for (let state = head, next = -1; state >= 0; state = next) {
        next = this.#next[state]!;
        if (this.#estimate[state]! > limit) continue;
        this.#next[state] = kept;
        kept = state;
      }
      if (kept < 0) made.delete(started);
      else made.set(started, kept);
    }
  }

  #trace(last: number): Float64Array {
    const starts = new Float64Array(this.#count);
    for (let state = last; this.#activity[state]! >= 0; state = this.#parent[state]!) starts[this.#activity[state]!] = this.#time[state]!;
    return starts;
  }

  /** Starts each activity that may come next. */
  #expand(state: number, started: number, left: readonly number[], pool: Float64Array, made: Map<number, number>): void {
    const { durations } = this.#ticks;
    const starts = this.#starts;
    const matter = this.#matter[state]!;
    const time = this.#time[state]!;
    let place = this.#place[state]!;
    for (let rest = matter; rest !== 0; rest &= rest - 1) starts[31 - Math.clz32(rest & -rest)] = pool[place++]!;

    // Phase 1: when each can start; one that could be over before another starts is not left for after it.
    const ready: number[] = [];
    const at: number[] = [];
    let soonest = Infinity;
    for (let j = 0; j < this.#count; j++) {
      if ((started >>> j) & 1 || (this.#before[j]! & ~started) !== 0) continue;
      const start = this.#earliest(j, time, matter);
      if (start + this.#tail[j]! >= this.#end) return;
      ready.push(j);
      at.push(start);
      soonest = Math.min(soonest, start + durations[j]!);
    }

    // Phase 2: a state for each, unless it cannot end in time.
    for (let e = 0; e < ready.length; e++) {
      const j = ready[e]!;
      const start = at[e]!;
      if (start >= soonest && durations[j]! > 0) continue;
      let late = false;
      for (let other = 0; other < ready.length && !late; other++) late = other !== e && Math.max(at[other]!, start) + this.#tail[ready[other]!]! >= this.#end;
      if (late) continue;
      const estimate = this.#work(start) + this.#workLeft(start, matter, left);
      if (estimate > this.#endWork + 1e-6) continue;
      this.#make(state, j, start, estimate, matter, started | (1 << j), made);
    }
  }

  /** Earliest start of an activity after the state's time: those it waits for, windows, resources. */
  #earliest(j: number, time: number, matter: number): number {
    const { durations, before, capacities } = this.#ticks;
    const starts = this.#starts;
    let start = time;
    for (const { from, gap } of before[j]!) if ((matter >>> from) & 1) start = Math.max(start, starts[from]! + gap);
    for (;;) {
      start = nextStart(this.#ticks, durations[j]!, start);
      let clash = false;
      for (let r = 0; r < capacities.length && !clash; r++) {
        const need = this.#needs[r]![j]!;
        if (need === 0) continue;
        let room = capacities[r]! + 1e-9 - need;
        for (let rest = matter; rest !== 0; rest &= rest - 1) {
          const i = 31 - Math.clz32(rest & -rest);
          if (starts[i]! + durations[i]! > start) room -= this.#needs[r]![i]!;
        }
        clash = room < 0;
      }
      if (!clash) return start;
      // What runs only ends from here on: the next end is the next chance.
      let end = Infinity;
      for (let rest = matter; rest !== 0; rest &= rest - 1) {
        const i = 31 - Math.clz32(rest & -rest);
        const other = starts[i]! + durations[i]!;
        if (other > start && other < end) end = other;
      }
      start = end;
    }
  }

  /** Time that the work left takes at least, by the heaviest row of weights. Whoever starts now has all its work left. */
  #workLeft(start: number, matter: number, left: readonly number[]): number {
    const { durations } = this.#ticks;
    const starts = this.#starts;
    let most = 0;
    for (let row = 0; row < left.length; row++) {
      const weights = this.#weights[row]!;
      let work = left[row]!;
      for (let rest = matter; rest !== 0; rest &= rest - 1) {
        const i = 31 - Math.clz32(rest & -rest);
        const remaining = starts[i]! + durations[i]! - start;
        if (remaining > 0) work += remaining * weights[i]!;
      }
      if (work > most) most = work;
    }
    return most;
  }

  /** Adds a state, unless one with the same activities started is nowhere later; drops those that it makes superfluous. */
  #make(parent: number, j: number, start: number, estimate: number, matterBefore: number, started: number, made: Map<number, number>): void {
    const starts = this.#starts;
    const own = this.#making;
    let matter = 0;
    let count = 0;
    starts[j] = start;
    for (let rest = matterBefore | (1 << j); rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      const i = 31 - Math.clz32(bit);
      if (starts[i]! + this.#reach[i]! > start) {
        matter |= bit;
        own[count++] = starts[i]!;
      }
    }
    const head = made.get(started) ?? -1;
    let previous = -1;
    let newHead = head;
    for (let other = head; other >= 0; other = this.#next[other]!) {
      const otherTime = this.#time[other]!;
      if (otherTime <= start && this.#nowhereLater(this.#matter[other]!, this.#pool, this.#place[other]!, matter, own, 0, start)) return;
      if (otherTime >= start && this.#nowhereLater(matter, own, 0, this.#matter[other]!, this.#pool, this.#place[other]!, otherTime)) {
        if (previous < 0) newHead = this.#next[other]!;
        else this.#next[previous] = this.#next[other]!;
      } else previous = other;
    }
    if (this.#poolLength + count > this.#pool.length) this.#pool = widened(this.#pool);
    const place = this.#poolLength;
    for (let k = 0; k < count; k++) this.#pool[this.#poolLength++] = own[k]!;
    const state = this.#add(start, j, parent, matter, place, estimate);
    this.#next[state] = newHead;
    made.set(started, state);
  }

  /** Whether from `time` on, where the other state is, nothing of this one lasts longer than in the other. */
  #nowhereLater(matter: number, starts: Float64Array, place: number, otherMatter: number, otherStarts: Float64Array, otherPlace: number, time: number): boolean {
    for (let rest = matter; rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      const i = 31 - Math.clz32(bit);
      const start = starts[place++]!;
      if (start + this.#reach[i]! <= time) continue;
      if ((otherMatter & bit) === 0) return false;
      let skipped = otherPlace;
      for (let lower = otherMatter & (bit - 1); lower !== 0; lower &= lower - 1) skipped++;
      if (otherStarts[skipped]! < start) return false;
    }
    return true;
  }

  #add(time: number, activity: number, parent: number, matter: number, place: number, estimate: number): number {
    const state = this.#made++;
    if (state >= this.#time.length) {
      this.#time = widened(this.#time);
      this.#activity = widened(this.#activity);
      this.#parent = widened(this.#parent);
      this.#next = widened(this.#next);
      this.#matter = widened(this.#matter);
      this.#place = widened(this.#place);
      this.#estimate = widened(this.#estimate);
    }
    this.#time[state] = time;
    this.#activity[state] = activity;
    this.#parent[state] = parent;
    this.#next[state] = -1;
    this.#matter[state] = matter;
    this.#place[state] = place;
    this.#estimate[state] = estimate;
    return state;
  }
}

function widened<A extends Float64Array | Int32Array | Int8Array>(array: A): A {
  const wider = new (array.constructor as new (length: number) => A)(2 * array.length);
  wider.set(array);
  return wider;
}
