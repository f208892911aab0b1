/**
 * Yardstick K7: minimal cut sets up to order 4 of a fault tree of 300 basic events, found and listed.
 * One line of JSON: the median CPU seconds of a warm run, and how many sets there are of each order.
 * The tree is `$YARDSTICKS/k7-tree.json`; without it, one of the same size from a fixed seed.
 */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { minimalCutSets, type FaultTree, type Gate } from '@rotorwright/reliability';
import { medianCpuSeconds } from './timing/cpu.ts';

const EVENTS = 300;
const MOST = 4;

/** Ors of events below, ands of two gates above, all under one or. */
function drawnTree(): FaultTree {
  let state = 1;
  const below = (count: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * count);
  };
  const low = Array.from({ length: EVENTS / 5 }, (_, gate): [string, Gate] => [`low-${gate}`, { type: 'or', inputs: Array.from({ length: 5 }, (__, event) => `event-${5 * gate + event}`) }]);
  const pairs = Array.from({ length: EVENTS / 10 }, (_, gate): [string, Gate] => [`pair-${gate}`, { type: 'and', inputs: [`low-${below(low.length)}`, `low-${below(low.length)}`, `event-${below(EVENTS)}`] }]);
  return { top: 'top', gates: Object.fromEntries<Gate>([...low, ...pairs, ['top', { type: 'or', inputs: pairs.map(([name]) => name) }]]) };
}

const folder = process.env['YARDSTICKS'];
const tree = folder === undefined ? drawnTree() : (JSON.parse(readFileSync(path.join(folder, 'k7-tree.json'), 'utf8')) as FaultTree);
let check: readonly number[] = [];
const t = medianCpuSeconds(() => {
  const { countByOrder, sets } = minimalCutSets(tree, MOST);
  check = Array.from({ length: MOST }, (_, order) => countByOrder[order + 1] ?? 0);
  if (sets().length !== check.reduce((sum, count) => sum + count, 0)) throw new Error('the sets are not as many as were counted');
});
console.log(JSON.stringify({ k: 'K7', work: 1, t, check }));
