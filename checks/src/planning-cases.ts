import data from '../data/planning-cases.json' with { type: 'json' };
import { checksOf, type Case } from './cases.ts';
import type { Check } from './check.ts';
import { sourced } from './rows.ts';

const bondThenFit = [{ id: 'bond', duration: 600 }, { id: 'fit', duration: 1200, after: [{ id: 'bond', lag: 3000 }] }, { id: 'close', duration: 60, after: ['fit'] }];
/** Chains: the shortest schedule has but one start for each. */
const chains = sourced({ document: 'Worked by hand in the title', kind: 'by hand' }, [
  ['0; 600 + 3,000 s of cure; 3,600 + 1,200', 'schedule', { activities: bondThenFit }, 'starts', { bond: 0, fit: 3600, close: 4800 }, 1e-6, 'absolute'],
  ['evenings of 2,000 s, one every 10,000: the cure ends outside, the next two wait for the second', 'schedule', { activities: bondThenFit, window: { period: 10_000, length: 2000 } }, 'starts', { bond: 0, fit: 10_000, close: 11_200 }, 1e-6, 'absolute'],
]);

/** Fault trees by enumeration of states, schedules by enumeration of orders, lives with their information matrix; printed values beside. */
export const planningCases: readonly Check[] = [...checksOf(data.cases as unknown as readonly Case[]), ...chains];
