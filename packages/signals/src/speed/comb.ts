/**
 * Who speaks: each turns as one, so that its lines keep their ratios whatever slips.
 *
 * main    blades of the main rotor, and what turns with the mast
 * tail    blades of the tail rotor
 * engine  firing of an engine, or what a motor makes at its own turns
 * mesh    teeth of gears and belts: they turn with the mast while its clutches hold, and tell teeth from slip
 */
export type LineGroup = 'main' | 'tail' | 'engine' | 'mesh';

/** Lines of one source at whole multiples of one frequency. */
export interface LineFamily {
  readonly id: string;
  readonly group: LineGroup;
  /** Frequency of the first line over the turns of the main rotor in a second; above 0. */
  readonly order: number;
  /** Lines that may be heard, from the first on. */
  readonly harmonics: number;
  /** Orders of faint lines that may be heard besides: a rotor out of balance, every second firing. */
  readonly faint?: readonly number[];
}

/** Another ratio that a wrong tooth count in the file would hide: what the file says of `group` is to be multiplied by `factor`. */
export interface OtherRatio {
  readonly group: 'tail' | 'engine';
  readonly factor: number;
  /** What would have to be otherwise. */
  readonly id: string;
  /** Orders that families of teeth would then have, by their id: only those that change. */
  readonly meshes?: Readonly<Record<string, number>>;
}

export type FlawPlace = 'outer race' | 'inner race' | 'ball';

/** How often flaws of one bearing strike. */
export interface BearingOrders {
  readonly id: string;
  /** Turns of its rings against each other for one of the main rotor. */
  readonly turns: number;
  /** Strikes of a flaw for one turn of the main rotor; sizes and slip make them uncertain by some per cent. */
  readonly strikes: Readonly<Record<FlawPlace, number>>;
}

/** All that is known of a machine's sound. */
export interface LineComb {
  readonly families: readonly LineFamily[];
  /** Turns of the main rotor in a second that are looked through, Hz. */
  readonly slowest: number;
  readonly fastest: number;
  readonly otherRatios: readonly OtherRatio[];
  /** Whether a clutch may let the engine run ahead, or a belt the tail fall behind. */
  readonly slips: readonly ('tail' | 'engine')[];
  /** Shafts by their turns for one of the main rotor: what turns with them leaves lines to either side of louder ones. */
  readonly shafts?: readonly { readonly shaft: string; readonly order: number }[];
  readonly bearings?: readonly BearingOrders[];
}

/** One line of a family, ready to be looked up. */
export interface CombLine {
  readonly order: number;
  /** How likely it is to be heard while louder lines of its family are. */
  readonly likely: number;
}

/** Lines nearer than this, in turns of the main rotor, are one: no frame could part them. */
const nearest = 0.06;
const likelyLine = 0.55;
const likelyFaint = 0.2;

/** A family with its lines, those left out that another family before it has. */
export interface ReadyFamily {
  readonly family: LineFamily;
  readonly lines: readonly CombLine[];
  readonly faint: readonly CombLine[];
}

/**
 * Lines of each family in the order of the groups: a line that two families share belongs to the first alone.
 *
 * @throws RangeError when an order is not above 0, or the speeds make no range
 */
export function readyFamilies({ families, slowest, fastest }: LineComb): readonly ReadyFamily[] {
  if (!(slowest > 0 && fastest > slowest && Number.isFinite(fastest))) throw new RangeError(`readyFamilies: 0 < slowest < fastest is needed; got ${slowest} and ${fastest} Hz`);
  const taken: number[] = [];
  const free = (order: number): boolean => {
    if (taken.some((other) => Math.abs(other - order) < nearest)) return false;
    taken.push(order);
    return true;
  };
  const kept = families.map((family) => {
    const { id, order, harmonics } = family;
    if (!(order > 0 && Number.isFinite(order) && Number.isInteger(harmonics) && harmonics > 0)) throw new RangeError(`readyFamilies: the order of ${id} must be above 0 with one or more harmonics; got ${order} and ${harmonics}`);
    const lines = Array.from({ length: harmonics }, (_, index) => ({ order: order * (index + 1), likely: likelyLine })).filter(({ order }) => free(order));
    return { family, lines };
  });
  return kept.map(({ family, lines }) => ({ family, lines, faint: (family.faint ?? []).filter(free).map((order) => ({ order, likely: likelyFaint })) }));
}

/**
 * The families of a comb in which one group turns faster or slower than the file says: all its orders times `factor`.
 *
 * @param meshes  orders that families of teeth have then, by their id; by default none changes
 */
export function turnedBy(families: readonly LineFamily[], group: LineGroup, factor: number, meshes: Readonly<Record<string, number>> = {}): readonly LineFamily[] {
  return families.map((family) => (meshes[family.id] !== undefined ? { ...family, order: meshes[family.id]! } : family.group === group ? { ...family, order: family.order * factor, ...(family.faint ? { faint: family.faint.map((order) => order * factor) } : {}) } : family));
}
