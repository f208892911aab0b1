import { lastEnd, type TickProject } from './project.ts';
import { nextStart } from './serial-schedule.ts';
import { MATTER, MOST_ACTIVITIES, NEXT, NUMBER, STARTS, StateLayers, TIME } from './state-layers.ts';
import type { WorkLeft } from './work-left.ts';

/** States are given up beyond this number: some 100 MB. */
const MOST_STATES = 6_000_000;
/** States of a layer that are looked at to choose by what their work left is weighed. */
const SAMPLES = 8;
/** Moments and places are whole numbers in one word. */
const LATEST = 2 ** 31 - 1;

export interface StateAnswer {
  /** Shortest schedule found, if one is shorter than was known. */
  readonly starts?: Float64Array;
  /** No schedule is shorter than that one, or than the one that was known. */
  readonly certain: boolean;
  /** How many states were kept. */
  readonly kept: number;
}

/**
 * Shortest schedule by going through what can have been started, in order of starts: of two states that have started the same
 * activities, one that is nowhere later makes the other superfluous; one that cannot end in time is dropped. Strong where resources
 * are so scarce that little runs at once, which is where learning from conflicts is slow.
 *
 * A state: the activities started, when the last of them started, and the starts of those that still matter (they run, or somebody
 * waits for them). Layer k holds the states with k activities started.
 *
 * @param workLeft   learns from the states of each layer by what to weigh the work that is left
 * @param end        a schedule that ends then is known: only shorter ones are looked for
 * @param width      states kept in a layer, those first that may end soonest; while none is dropped the answer is certain
 * @source Demeulemeester, Herroelen, New benchmark results for the resource-constrained project scheduling problem (1997), the cutset
 *         rule; Sprecher, Drexl (1998), starts in order of time (both from memory)
 */
export function searchStates(ticks: TickProject, workLeft: WorkLeft, end: number, width: number, outOfTime: () => boolean): StateAnswer {
  if (ticks.durations.length > MOST_ACTIVITIES || end > LATEST) return { certain: false, kept: 0 };
  return new States(ticks, workLeft, end, width).run(outOfTime);
}

class States {
  readonly #ticks: TickProject;
  readonly #count: number;
  readonly #workLeft: WorkLeft;
  readonly #end: number;
  readonly #width: number;
  /** Work time up to the end, less one tick. */
  readonly #endWork: number;
  readonly #before: Int32Array;
  /** From the start of each activity to the end of all, at least. */
  readonly #tail: Float64Array;
  /** Needs of those that take no time do not count. */
  readonly #needs: readonly Float64Array[];

  readonly #layers: StateLayers;
  // Scratch: starts of those that matter in the state at hand.
  readonly #starts = new Int32Array(MOST_ACTIVITIES);
  // Scratch: what runs in the state at hand, by its end; by resource, the room once none, one, two … of them have ended.
  #runs = 0;
  readonly #running = new Int8Array(MOST_ACTIVITIES);
  readonly #ends = new Float64Array(MOST_ACTIVITIES);
  readonly #room: readonly Float64Array[];

  constructor(ticks: TickProject, workLeft: WorkLeft, end: number, width: number) {
    const n = ticks.durations.length;
    this.#ticks = ticks;
    this.#count = n;
    this.#workLeft = workLeft;
    this.#end = end;
    this.#width = width;
    this.#endWork = this.#work(end - 1);
    this.#before = new Int32Array(n);
    this.#tail = Float64Array.from(ticks.durations);
    const reach = Float64Array.from(ticks.durations);
    for (let i = n - 1; i >= 0; i--) {
      for (const { from, gap } of ticks.before[i]!) {
        this.#before[i]! |= 1 << from;
        this.#tail[from] = Math.max(this.#tail[from]!, gap + this.#tail[i]!);
        reach[from] = Math.max(reach[from]!, gap);
      }
    }
    this.#layers = new StateLayers(reach);
    this.#room = ticks.capacities.map(() => new Float64Array(MOST_ACTIVITIES + 1));
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
    const layers = this.#layers;
    let certain = true;
    let turn = 0;
    layers.add(-1, -1, 0, 0, 0, this.#starts, 0);
    for (let k = 0; ; k++) {
      const { heads, narrowed } = layers.turn(this.#width);
      if (narrowed) certain = false;
      if (heads.size === 0) return { certain, kept: layers.kept };
      if (k === this.#count) return { starts: this.#endsSoonest(heads), certain, kept: layers.kept };
      this.#learnFrom(heads);
      for (const [started, head] of heads) {
        const left = this.#workLeft.rows.map((row) => this.#ticks.durations.reduce((sum, duration, i) => ((started >>> i) & 1 ? sum : sum + duration * row[i]!), 0));
        for (let state = head; state >= 0; state = layers.layer[state + NEXT]!) {
          this.#expand(state, started, left);
          if ((++turn & 255) === 0 && outOfTime()) return { certain: false, kept: layers.kept };
        }
        if (layers.kept > MOST_STATES) return { certain: false, kept: layers.kept };
      }
    }
  }

  /** Has work weighed by what says most of some states of a layer. */
  #learnFrom(heads: ReadonlyMap<number, number>): void {
    const all = [...heads];
    const count = Math.min(SAMPLES, all.length);
    this.#workLeft.learnFrom(Array.from({ length: count }, (_, sample) => this.#leftOf(...all[Math.floor(((sample + 0.5) * all.length) / count)]!)));
  }

  /** Durations that are left in a state. */
  #leftOf(started: number, state: number): Float64Array {
    const { layer } = this.#layers;
    const left = Float64Array.from(this.#ticks.durations, (duration, i) => ((started >>> i) & 1 ? 0 : duration));
    let place = state + STARTS;
    for (let rest = layer[state + MATTER]!; rest !== 0; rest &= rest - 1) {
      const i = 31 - Math.clz32(rest & -rest);
      left[i] = Math.max(0, layer[place++]! + this.#ticks.durations[i]! - layer[state + TIME]!);
    }
    return left;
  }

  /** The schedule that ends soonest of those in which all have started. */
  #endsSoonest(heads: ReadonlyMap<number, number>): Float64Array {
    let best: Float64Array = new Float64Array(this.#count);
    let end = Infinity;
    for (const head of heads.values()) {
      for (let state = head; state >= 0; state = this.#layers.layer[state + NEXT]!) {
        const starts = this.#layers.trace(this.#layers.layer[state + NUMBER]!, new Float64Array(this.#count));
        const ends = lastEnd(this.#ticks, starts);
        if (ends < end) [best, end] = [starts, ends];
      }
    }
    return best;
  }

  /** Starts each activity that may come next. */
  #expand(state: number, started: number, left: readonly number[]): void {
    const { durations } = this.#ticks;
    const states = this.#layers.layer;
    const matter = states[state + MATTER]!;
    const time = states[state + TIME]!;
    const number = states[state + NUMBER]!;
    const last = this.#layers.lastStarted(number);
    let place = state + STARTS;
    for (let rest = matter; rest !== 0; rest &= rest - 1) this.#starts[31 - Math.clz32(rest & -rest)] = states[place++]!;
    this.#sortRunning(time, matter);

    // Phase 1: when each can start; one that could be over before another starts is not left for after it.
    const ready: number[] = [];
    const at: number[] = [];
    let soonest = Infinity;
    let longest = -1;
    let second = -Infinity;
    for (let j = 0; j < this.#count; j++) {
      if ((started >>> j) & 1 || (this.#before[j]! & ~started) !== 0) continue;
      const start = this.#earliest(j, time, matter);
      const tail = this.#tail[j]!;
      if (start + tail >= this.#end) return;
      ready.push(j);
      at.push(start);
      soonest = Math.min(soonest, start + durations[j]!);
      if (longest >= 0 && tail <= this.#tail[longest]!) second = Math.max(second, tail);
      else [longest, second] = [j, longest < 0 ? second : this.#tail[longest]!];
    }

    // Phase 2: a state for each, unless it cannot end in time.
    for (let e = 0; e < ready.length; e++) {
      const j = ready[e]!;
      const start = at[e]!;
      if (start >= soonest && durations[j]! > 0) continue;
      // Of two that start at once, the one with the lesser number goes first.
      if (start === time && j < last && durations[last]! > 0 && ((this.#before[j]! >>> last) & 1) === 0) continue;
      // The others start no sooner: the longest way from one of them to the end decides.
      if (start + (j === longest ? second : this.#tail[longest]!) >= this.#end) continue;
      const estimate = Math.ceil(this.#work(start) + this.#timeLeft(start, matter, left) - 1e-6);
      if (estimate > this.#endWork) continue;
      this.#starts[j] = start;
      this.#layers.add(number, j, start, estimate, matter | (1 << j), this.#starts, started | (1 << j));
    }
  }

  /** What runs in the state at hand, by its end, and the room that it leaves as it ends. */
  #sortRunning(time: number, matter: number): void {
    const { durations, capacities } = this.#ticks;
    const [running, ends] = [this.#running, this.#ends];
    let count = 0;
    for (let rest = matter; rest !== 0; rest &= rest - 1) {
      const i = 31 - Math.clz32(rest & -rest);
      const end = this.#starts[i]! + durations[i]!;
      if (end <= time) continue;
      let place = count++;
      for (; place > 0 && ends[place - 1]! > end; place--) {
        ends[place] = ends[place - 1]!;
        running[place] = running[place - 1]!;
      }
      ends[place] = end;
      running[place] = i;
    }
    this.#runs = count;
    for (let r = 0; r < capacities.length; r++) {
      const [room, needs] = [this.#room[r]!, this.#needs[r]!];
      room[count] = capacities[r]! + 1e-9;
      for (let k = count - 1; k >= 0; k--) room[k] = room[k + 1]! - needs[running[k]!]!;
    }
  }

  /** Earliest start of an activity after the state's time: those it waits for, windows, resources. */
  #earliest(j: number, time: number, matter: number): number {
    const { durations, before } = this.#ticks;
    let start = time;
    for (const { from, gap } of before[j]!) if ((matter >>> from) & 1) start = Math.max(start, this.#starts[from]! + gap);
    let ended = 0;
    for (;;) {
      start = nextStart(this.#ticks, durations[j]!, start);
      while (ended < this.#runs && this.#ends[ended]! <= start) ended++;
      // Nothing else starts: the next end is the next chance, and once all have ended there is room.
      if (this.#fits(j, ended)) return start;
      start = this.#ends[ended]!;
    }
  }

  #fits(j: number, ended: number): boolean {
    for (let r = 0; r < this.#needs.length; r++) if (this.#needs[r]![j]! > this.#room[r]![ended]!) return false;
    return true;
  }

  /** Time that the work left takes at least, by the heaviest row of weights. Whoever starts now has all its work left. */
  #timeLeft(start: number, matter: number, left: readonly number[]): number {
    const { durations } = this.#ticks;
    const { rows } = this.#workLeft;
    const starts = this.#starts;
    let most = 0;
    for (let row = 0; row < left.length; row++) {
      const weights = rows[row]!;
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
}
