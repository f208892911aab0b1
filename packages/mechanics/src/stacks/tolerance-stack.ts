import { selectRank } from '../numeric/order-statistics.ts';
import type { RandomState } from '../numeric/random.ts';
import { drawer, type Draw, type StackMember } from './draw-gaps.ts';

/**
 * The smallest and the largest gap that the members can leave: every length at its unkindest end at once.
 *
 * @param members  lengths [m]
 * @returns        gap [m]; below 0 the members press on one another
 * @throws RangeError when a length is not finite, or its least is above its most
 * @source definition: arithmetical addition of limits
 * @example worstCase([{ sense: 1, least: 20, most: 21, spread: 'uniform' }, { sense: -1, least: 4, most: 5, spread: 'uniform' }]).least // 15
 */
export function worstCase(members: readonly StackMember[]): { readonly least: number; readonly most: number } {
  checkMembers('worstCase', members);
  const sum = (pick: (member: StackMember) => number): number => members.reduce((total, member) => total + member.sense * pick(member), 0);
  return { least: sum(({ sense, least, most }) => (sense === 1 ? least : most)), most: sum(({ sense, least, most }) => (sense === 1 ? most : least)) };
}

export interface SimulatedStack {
  /** Gap below which each of the wanted shares lies [m]: exact order statistics of the sample. */
  readonly quantiles: readonly number[];
  /** Share of the sample inside the window; without a window all of it. */
  readonly inside: number;
}

interface Wanted {
  readonly samples: number;
  /** Four words of the generator; changed. */
  readonly random: RandomState;
  /** Shares from 0 to 1. */
  readonly shares: readonly number[];
  readonly window?: { readonly least?: number; readonly most?: number };
}

/** One huge loop would stay in slow code: gaps are drawn, and sorted out, by the block. */
const BLOCK = 4096;
/** So many gaps of the sample, its first, tell where the rest will lie. */
const PILOT = 5 * BLOCK;
/** Equal classes over the reach of the pilot; the outermost two also hold what lies beyond. */
const CLASSES = 4096;

/**
 * Gaps of many stacks whose members are drawn at random, one independent of another. The same random state gives the same answer.
 *
 * @param members  lengths [m]; at least one
 * @returns        gaps below which the wanted shares lie: for share p of n samples the one with round(p·n) below it
 * @throws RangeError when a length is not finite, its least is above its most, there is no sample, or a share is not from 0 to 1
 * @neglects that members of one batch resemble one another, and that normal lengths outside ±3 standard deviations are sorted out
 * @source Monte Carlo; ziggurat and sfc32 as named in `numeric/random.ts`
 */
export function simulateStack(members: readonly StackMember[], { samples, random, shares, window }: Wanted): SimulatedStack {
  checkMembers('simulateStack', members);
  if (members.length === 0) throw new RangeError('simulateStack: at least one member is needed, got none');
  if (!(Number.isInteger(samples) && samples > 0)) throw new RangeError(`simulateStack: samples must be a whole number above 0, got ${samples}`);
  const wrong = shares.find((share) => !(share >= 0 && share <= 1));
  if (wrong !== undefined) throw new RangeError(`simulateStack: a share must be from 0 to 1, got ${wrong}`);

  const draw = drawer(members);
  const ranks = shares.map((share) => Math.min(samples - 1, Math.round(share * samples)));
  const start = random.slice();
  // When a gap falls outside the classes that were kept for it, more are kept, and the same sample is drawn again.
  for (let width = 5; ; width *= 4) {
    random.set(start);
    const found = sortOut(draw, samples, random, ranks, width, window);
    if (found) return { quantiles: found.values, inside: found.inside / samples };
  }
}

/** @returns nothing when a gap that was wanted was not kept */
function sortOut(draw: Draw, samples: number, random: RandomState, ranks: readonly number[], width: number, window: Wanted['window']): { readonly values: readonly number[]; readonly inside: number } | undefined {
  const block = new Float64Array(BLOCK);
  const pilot = new Float64Array(Math.min(PILOT, samples));
  for (let at = 0; at < pilot.length; at += BLOCK) {
    const count = Math.min(BLOCK, pilot.length - at);
    draw(block, count, random);
    pilot.set(block.subarray(0, count), at);
  }
  const sorter = sorterFor(pilot.slice().sort(), ranks.map((rank) => rank / samples), width);
  let inside = 0;
  const take = (count: number): void => {
    sort(block, count, sorter);
    if (window) inside += countInside(block, count, window.least ?? -Infinity, window.most ?? Infinity);
  };
  for (let at = 0; at < pilot.length; at += BLOCK) {
    const part = pilot.subarray(at, at + BLOCK);
    block.set(part);
    take(part.length);
  }
  for (let drawn = pilot.length; drawn < samples; drawn += BLOCK) {
    const count = Math.min(BLOCK, samples - drawn);
    draw(block, count, random);
    take(count);
  }
  const values = ranks.map((rank) => valueAt(sorter, rank));
  return values.every((value) => value !== undefined) ? { values, inside: window ? inside : samples } : undefined;
}

/** Counts gaps by classes, and keeps those of the classes in which a wanted gap is expected. */
interface Sorter {
  readonly from: number;
  readonly perLength: number;
  readonly counts: Int32Array;
  readonly wanted: Uint8Array;
  kept: Float64Array;
  keeps: number;
}

/** A wanted gap is expected within `width` standard deviations of a binomial count about its place in the sorted pilot. */
function sorterFor(pilot: Float64Array, shares: readonly number[], width: number): Sorter {
  const from = pilot[0]!;
  // A reach so small, or so large, that no number tells its classes apart makes one class of all.
  const perLength = CLASSES / (pilot.at(-1)! - from);
  const sorter: Sorter = { from, perLength: Number.isFinite(perLength) ? perLength : 0, counts: new Int32Array(CLASSES), wanted: new Uint8Array(CLASSES), kept: new Float64Array(16 * BLOCK), keeps: 0 };
  for (const share of shares) {
    const place = share * pilot.length;
    const spread = width * Math.sqrt(place * (1 - share)) + 4;
    const first = Math.floor(place - spread);
    const last = Math.ceil(place + spread);
    sorter.wanted.fill(1, first < 0 ? 0 : classOf(sorter, pilot[first]!), (last < pilot.length ? classOf(sorter, pilot[last]!) : CLASSES - 1) + 1);
  }
  return sorter;
}

/** Grows with the gap, so that no gap of a lower class is larger than one of a higher class. */
function classOf({ from, perLength }: Sorter, gap: number): number {
  const exact = (gap - from) * perLength;
  return exact < CLASSES ? (exact > 0 ? exact | 0 : 0) : CLASSES - 1;
}

function sort(block: Float64Array, count: number, sorter: Sorter): void {
  const { from, perLength, counts, wanted } = sorter;
  if (sorter.keeps + count > sorter.kept.length) {
    const larger = new Float64Array(2 * sorter.kept.length);
    larger.set(sorter.kept);
    sorter.kept = larger;
  }
  const { kept } = sorter;
  let { keeps } = sorter;
  for (let at = 0; at < count; at += 1) {
    const gap = block[at]!;
    // As `classOf`, without its calls.
    const exact = (gap - from) * perLength;
    const place = exact < CLASSES ? (exact > 0 ? exact | 0 : 0) : CLASSES - 1;
    counts[place] = counts[place]! + 1;
    if (wanted[place] === 1) {
      kept[keeps] = gap;
      keeps += 1;
    }
  }
  sorter.keeps = keeps;
}

function valueAt(sorter: Sorter, rank: number): number | undefined {
  let below = 0;
  let place = 0;
  while (below + sorter.counts[place]! <= rank) {
    below += sorter.counts[place]!;
    place += 1;
  }
  if (sorter.wanted[place] !== 1) return undefined;
  const own = sorter.kept.subarray(0, sorter.keeps).filter((gap) => classOf(sorter, gap) === place);
  return selectRank(own, rank - below);
}

function countInside(block: Float64Array, count: number, least: number, most: number): number {
  let inside = 0;
  for (let at = 0; at < count; at += 1) if (block[at]! >= least && block[at]! <= most) inside += 1;
  return inside;
}

function checkMembers(name: string, members: readonly StackMember[]): void {
  for (const [index, { least, most }] of members.entries()) {
    if (!(Number.isFinite(least) && Number.isFinite(most) && least <= most)) throw new RangeError(`${name}: members[${index}] must have finite lengths, least not above most, got ${least} and ${most} m`);
  }
}
