import { nextBits, normalLayers, normalOutside, type RandomState } from '../numeric/random.ts';

/** One length in a chain. */
export interface StackMember {
  /** 1: makes the gap larger; −1: takes from it. */
  readonly sense: 1 | -1;
  /** Smallest and largest length [m]. */
  readonly least: number;
  readonly most: number;
  /** How its lengths are spread between the two: evenly, or normally with the two at ±3 standard deviations. */
  readonly spread: 'uniform' | 'normal';
}

/** Fills a block with gaps; the random state moves on. */
export type Draw = (gaps: Float64Array, count: number, random: RandomState) => void;

/** What draws gaps from members: lengths with a normal and with an even spread in turn, as long as there are both, then the rest. */
export function drawer(members: readonly StackMember[]): Draw {
  const of = (wanted: StackMember['spread']): readonly StackMember[] => members.filter(({ spread }) => spread === wanted);
  // Signed: one standard deviation, half the width.
  const deviations = of('normal').map(({ sense, least, most }) => (sense * (most - least)) / 6);
  const halfWidths = of('uniform').map(({ sense, least, most }) => (sense * (most - least)) / 2);
  const pairs = Math.min(deviations.length, halfWidths.length);
  const reach = Float64Array.from({ length: 2 * pairs }, (_, index) => (index % 2 === 0 ? deviations : halfWidths)[index >> 1]!);
  const centre = members.reduce((sum, { sense, least, most }) => sum + (sense * (least + most)) / 2, 0);
  const stopped = Int32Array.of(0, 0);
  return (gaps, count, random) => {
    gaps.fill(centre);
    addPairs(gaps, count, random, reach, stopped);
    for (const deviation of deviations.slice(pairs)) for (let at = 0; at < count; at += 1) gaps[at] = gaps[at]! + deviation * normalOf(nextBits(random), random);
    for (const halfWidth of halfWidths.slice(pairs)) for (let at = 0; at < count; at += 1) gaps[at] = gaps[at]! + halfWidth * uniformOf(nextBits(random));
  };
}

function addPairs(gaps: Float64Array, count: number, random: RandomState, reach: Float64Array, stopped: Int32Array): void {
  let at = 0;
  let member = 0;
  for (;;) {
    at = drawPairs(gaps, at, member, count, random, reach, stopped);
    if (at === count) return;
    member = stopped[0]!;
    gaps[at] = gaps[at]! + reach[member]! * normalOf(stopped[1]!, random) + reach[member + 1]! * uniformOf(nextBits(random));
    member += 2;
  }
}

function normalOf(bits: number, random: RandomState): number {
  const offset = bits >> 8;
  return Math.abs(offset) < normalLayers.certain[bits & 127]! ? offset * normalLayers.scale[bits & 127]! : normalOutside(bits, random);
}

/** From −1 to 1. */
const uniformOf = (bits: number): number => (bits >>> 0) * 2 ** -31 - 1;

/**
 * Draws gaps until one needs more than a look into the table. Without a call, without a branch between the two kinds and
 * with the words of the generator in registers (its step stands here twice: see nextBits) it takes half the time.
 *
 * @param first        index of the gap to go on with, and `firstMember` where in it: index into `reach`
 * @param reach        standard deviation and half width in turn
 * @param stopped      where it stopped within a gap: index into `reach`, and the draw
 * @returns            index of the gap in which it stopped; `count` when all are done
 */
function drawPairs(gaps: Float64Array, first: number, firstMember: number, count: number, random: RandomState, reach: Float64Array, stopped: Int32Array): number {
  const { certain, scale } = normalLayers;
  const last = reach.length - 1;
  let a = random[0]!;
  let b = random[1]!;
  let c = random[2]!;
  let d = random[3]!;
  let from = firstMember;
  for (let at = first; at < count; at += 1) {
    let gap = gaps[at]!;
    for (let member = from; member < last; member += 2) {
      let bits = (((a + b) | 0) + d) | 0;
      d = (d + 1) | 0;
      a = b ^ (b >>> 9);
      b = (c + (c << 3)) | 0;
      c = (((c << 21) | (c >>> 11)) + bits) | 0;
      const layer = bits & 127;
      const offset = bits >> 8;
      if (Math.abs(offset) >= certain[layer]!) {
        random[0] = a;
        random[1] = b;
        random[2] = c;
        random[3] = d;
        stopped[0] = member;
        stopped[1] = bits;
        gaps[at] = gap;
        return at;
      }
      gap += reach[member]! * (offset * scale[layer]!);
      bits = (((a + b) | 0) + d) | 0;
      d = (d + 1) | 0;
      a = b ^ (b >>> 9);
      b = (c + (c << 3)) | 0;
      c = (((c << 21) | (c >>> 11)) + bits) | 0;
      gap += reach[member + 1]! * ((bits >>> 0) * 2 ** -31 - 1);
    }
    gaps[at] = gap;
    from = 0;
  }
  random[0] = a;
  random[1] = b;
  random[2] = c;
  random[3] = d;
  return count;
}
