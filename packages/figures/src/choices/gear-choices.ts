import type { Machine } from '@rotorwright/machine';
import { axesOf } from './axes.ts';
import { countOf } from './columns.ts';
import { evaluate } from './evaluate.ts';
import type { ChoiceConditions, GearChoices } from './option.ts';

/** More than these are refused: they would take memory, and nobody reads them. */
export const mostCombinations = 500_000;

/**
 * Every combination of the gears that the file offers: speeds, what must be bought, how centre distances move, and
 * what rules it out. Ranked: not ruled out, fewest to buy, nearest the middle of the wanted bands (without bands:
 * nearest to what is fitted).
 */
export function gearChoices(machine: Machine, conditions: ChoiceConditions = {}): GearChoices {
  const axes = axesOf(machine);
  const all = countOf(axes);
  if (all > mostCombinations) return { options: [], map: { toBuy: new Uint8Array(), ruledOut: new Uint8Array() }, count: 0, excluded: 0, notAssessed: [], tooMany: all };
  const { count, order, mainSpeed, tailSpeed, toBuy, broken, notAssessed, option } = evaluate(machine, axes, conditions);
  const map = { ...(mainSpeed ? { mainSpeed: new Float64Array(count) } : {}), ...(tailSpeed ? { tailSpeed: new Float64Array(count) } : {}), toBuy: new Uint8Array(count), ruledOut: new Uint8Array(count) };
  let excluded = 0;
  for (let rank = 0; rank < count; rank += 1) {
    const index = order[rank]!;
    if (mainSpeed) map.mainSpeed![rank] = mainSpeed[index]!;
    if (tailSpeed) map.tailSpeed![rank] = tailSpeed[index]!;
    map.toBuy[rank] = toBuy[index]!;
    if (broken[index]! > 0) {
      map.ruledOut[rank] = 1;
      excluded += 1;
    }
  }
  return { options: Array.from(order.subarray(0, conditions.show ?? 200), (index, position) => option(index, position + 1)), map, count, excluded, notAssessed };
}
