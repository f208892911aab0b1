export type ListKind = 'none' | 'unticked' | 'ticked';
export type SecondLook = 'none' | 'unlisted' | 'listed';

export interface Omission {
  /** Chance that one item is missed and nobody sees it. */
  readonly perStep: number;
  /** The true chance of missing an item lies, mostly, within this factor up or down. */
  readonly errorFactor: number;
  readonly expectedOmissions: number;
  /** That at least one item is missed and not seen. */
  readonly probability: number;
  readonly probabilityLow: number;
  readonly probabilityHigh: number;
}

/** Items up to which a list counts as short. */
const shortList = 10;

/**
 * Chance that something on a list is left out: nuclear plant figures, an ordering of habits and no forecast.
 *
 * @param steps   items of the list, at least 1
 * @param kind    no list used, a list not ticked, a list ticked
 * @param second  second look: none, without the list, with the list
 * @throws RangeError when steps is not a whole number above 0
 * @neglects that items depend on one another: they are taken as independent
 * @source Swain and Guttmann, NUREG/CR-1278 (1983), tables 20-7 and 20-22 (from memory)
 */
export function omission(steps: number, kind: ListKind, second: SecondLook): Omission {
  if (!(Number.isInteger(steps) && steps >= 1)) throw new RangeError(`omission: steps must be a whole number of at least 1, got ${steps}`);
  const short = steps <= shortList;
  const missed = { none: 0.05, unticked: short ? 0.003 : 0.01, ticked: short ? 0.001 : 0.003 }[kind];
  const errorFactor = kind === 'none' ? 5 : 3;
  const unseen = { none: 1, unlisted: 0.2, listed: 0.1 }[second];
  const atLeastOne = (chance: number): number => -Math.expm1(steps * Math.log1p(-Math.min(1, chance) * unseen));
  return {
    perStep: missed * unseen,
    errorFactor,
    expectedOmissions: steps * missed * unseen,
    probability: atLeastOne(missed),
    probabilityLow: atLeastOne(missed / errorFactor),
    probabilityHigh: atLeastOne(missed * errorFactor),
  };
}
