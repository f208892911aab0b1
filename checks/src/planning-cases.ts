import data from '../data/planning-cases.json' with { type: 'json' };
import { checksOf, type Case } from './cases.ts';

/** Fault trees by enumeration of states, schedules by enumeration of orders, lives with their information matrix; printed values beside. */
export const planningCases = checksOf(data.cases as unknown as readonly Case[]);
