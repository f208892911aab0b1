import type { Machine, Part } from '@rotorwright/machine';

/** So many shims of one thickness [m] lie in the bag, or are taken from it. */
export interface Shims {
  readonly thickness: number;
  readonly count: number;
}

/** One choice from the bag. */
export interface ShimPick {
  /** Thickest first; empty: no shim at all. */
  readonly shims: readonly Shims[];
  /** m */
  readonly total: number;
  /** The play that is left with it [m]; below 0 the stack is pressed. */
  readonly leaves: number;
}

export interface ShimChoice {
  /** What fits, nearest to the middle of the window first; of each total the one with the fewest shims. */
  readonly fits: readonly ShimPick[];
  /** The nearest misses: what leaves too much play, and what too little. */
  readonly loose?: ShimPick;
  readonly tight?: ShimPick;
}

/** Thicknesses are compared in tenths of a micrometre: finer nobody measures, and whole numbers add up without error. */
const UNIT = 1e-7;
const units = (length: number): number => Math.round(length / UNIT);
/** m; a larger play is no matter for shims. */
export const LARGEST_GAP = 0.02;

interface Sum {
  readonly pieces: number;
  readonly counts: readonly number[];
}

/**
 * The shims of a bag that bring a gap into a window. Every total that the bag can form is looked at.
 *
 * @param bag     thicknesses with their counts
 * @param gap     play without any shim [m]
 * @param window  play that is wanted [m]
 * @throws RangeError when a thickness or the gap is not above 0 or too large, a count is no whole number, or the window is empty
 */
export function chooseShims(bag: readonly Shims[], gap: number, window: { readonly min: number; readonly max: number }): ShimChoice {
  checkTask('chooseShims', bag, gap, window);

  const kinds = bag.toSorted((a, b) => b.thickness - a.thickness);
  const picks = [...sumsOf(kinds, units(gap) - units(window.min))].map(([total, { counts }]): ShimPick & { readonly left: number; readonly pieces: number } => ({
    shims: taken(kinds, counts),
    total: total * UNIT, leaves: (units(gap) - total) * UNIT, left: units(gap) - total, pieces: counts.reduce((sum, count) => sum + count, 0),
  }));
  const [least, most] = [units(window.min), units(window.max)];
  const middle = (least + most) / 2;
  const plain = ({ shims, total, leaves }: ShimPick): ShimPick => ({ shims, total, leaves });
  const inside = picks.filter(({ left }) => left >= least && left <= most).toSorted((a, b) => Math.abs(a.left - middle) - Math.abs(b.left - middle) || a.pieces - b.pieces);
  const loose = picks.filter(({ left }) => left > most).toSorted((a, b) => a.left - b.left)[0];
  const tight = picks.filter(({ left }) => left < least).toSorted((a, b) => b.left - a.left)[0];
  return { fits: inside.map(plain), ...(loose ? { loose: plain(loose) } : {}), ...(tight ? { tight: plain(tight) } : {}) };
}

/** Every total that the shims can form up to the room, and the least one beyond it, each with the fewest shims. */
function sumsOf(kinds: readonly Shims[], room: number): ReadonlyMap<number, Sum> {
  const all = new Map<number, Sum>([[0, { pieces: 0, counts: [] }]]);
  // What overshoots the room by more than the thickest shim overshoots it without that shim too.
  const farthest = Math.max(room, 0) + units(kinds[0]?.thickness ?? 0);
  kinds.forEach(({ thickness, count }, index) => {
    // Only sums without this thickness: what is added on the way already has its share of it.
    const before = new Map(all);
    for (const [total, { pieces, counts }] of before) {
      for (let more = 1; more <= count && total + more * units(thickness) <= farthest; more += 1) {
        const next = total + more * units(thickness);
        const known = all.get(next);
        if (known === undefined || known.pieces > pieces + more) all.set(next, { pieces: pieces + more, counts: [...Array.from({ length: index }, (_, at) => counts[at] ?? 0), more] });
      }
    }
  });
  return all;
}

/** One total of the bag, and the plays before shims that it brings into the window [m]. */
export interface ShimReach {
  readonly shims: readonly Shims[];
  readonly total: number;
  readonly from: number;
  readonly to: number;
}

export interface ShimsAhead {
  /** What would do somewhere in the expected range, thinnest first. */
  readonly reaches: readonly ShimReach[];
  /** Plays of the expected range that nothing in the bag brings into the window, within its ends [m]. */
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
}

/**
 * Which shims of a bag to have ready before the play is measured, and what the bag cannot do.
 *
 * @param bag       thicknesses with their counts
 * @param expected  play before shims that is expected [m]; what lies below 0 wants no shim
 * @param window    play that is wanted [m]
 * @throws RangeError as `chooseShims`, for either end of what is expected
 */
export function shimsAhead(bag: readonly Shims[], expected: { readonly min: number; readonly max: number }, window: { readonly min: number; readonly max: number }): ShimsAhead {
  const [low, high] = [Math.max(expected.min, 0), Math.max(expected.max, 0)];
  checkTask('shimsAhead', bag, low, window);
  checkTask('shimsAhead', bag, high, window);
  const kinds = bag.toSorted((a, b) => b.thickness - a.thickness);
  const [least, most] = [units(window.min), units(window.max)];
  const reaches = [...sumsOf(kinds, units(high) - least)]
    .toSorted(([a], [b]) => a - b)
    .filter(([total]) => total + least <= units(high) && total + most >= units(low))
    .map(([total, { counts }]) => ({ shims: taken(kinds, counts), total: total * UNIT, from: (total + least) * UNIT, to: (total + most) * UNIT }));
  const gaps: { readonly from: number; readonly to: number }[] = [];
  let done = units(low);
  for (const { from, to } of reaches) {
    if (units(from) > done) gaps.push({ from: done * UNIT, to: from });
    done = Math.max(done, units(to));
  }
  if (done < units(high)) gaps.push({ from: done * UNIT, to: units(high) * UNIT });
  return { reaches, gaps };
}

function taken(kinds: readonly Shims[], counts: readonly number[]): readonly Shims[] {
  return kinds.flatMap(({ thickness }, index) => ((counts[index] ?? 0) > 0 ? [{ thickness, count: counts[index]! }] : []));
}

function checkTask(name: string, bag: readonly Shims[], gap: number, window: { readonly min: number; readonly max: number }): void {
  if (!(gap >= 0 && gap <= LARGEST_GAP)) throw new RangeError(`${name}: the gap must be from 0 to ${LARGEST_GAP} m, got ${gap} m`);
  if (!(window.min <= window.max)) throw new RangeError(`${name}: the window must not be empty, got ${window.min} to ${window.max} m`);
  const wrong = bag.find(({ thickness, count }) => !(units(thickness) > 0 && thickness <= LARGEST_GAP && Number.isInteger(count) && count >= 0));
  if (wrong) throw new RangeError(`${name}: a thickness above 0 and a whole count are needed, got ${wrong.count} of ${wrong.thickness} m`);
}

/** What a file says for choosing a shim by a measurement. */
export interface ShimTask {
  readonly part: Part;
  readonly bag: readonly Shims[];
  readonly window: { readonly min: number; readonly max: number };
}

/**
 * The shim whose size a measurement decides.
 *
 * @returns what is missing for it, in words, where the file does not say enough
 */
export function shimTask(machine: Machine, measurementId: string): ShimTask | { readonly missing: string } {
  const measurement = machine.measurements.get(measurementId);
  const part = [...machine.parts.values()].find(({ until }) => until === measurementId);
  if (measurement === undefined || part === undefined) return { missing: `no shim is chosen by ${measurementId}: write until at the shim` };
  if (part.shims === undefined || part.shims.length === 0) return { missing: `the thicknesses in the bag are missing: write sizes at ${part.id}` };
  const { window } = measurement;
  if (window?.max === undefined) return { missing: `the play that is wanted is missing: write window at ${measurementId}` };
  // Play has no less than none: below that the stack is pressed.
  return { part, bag: part.shims, window: { min: window.min ?? 0, max: window.max } };
}
