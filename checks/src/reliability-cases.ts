import data from '../data/reliability-cases.json' with { type: 'json' };
import { checksOf, type Case } from './cases.ts';

/** Lives by a simplex search with a numerical information matrix and by a handbook; omissions by products and binomial sums. */
export const reliabilityCases = checksOf(data.cases as unknown as readonly Case[]);
