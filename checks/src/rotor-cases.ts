import data from '../data/rotor-cases.json' with { type: 'json' };
import { checksOf, type Case } from './cases.ts';

/** Blade loads from summed mass points and a numerical potential, autorotation from time integration and roots of the quartic. */
export const rotorCases = checksOf(data.cases as unknown as readonly Case[]);
