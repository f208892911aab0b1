import data from '../data/rotor-cases.json' with { type: 'json' };
import { checksOf, type Case } from './cases.ts';

/** Blade loads from summed mass points, autorotation and electric drive from time integration, forward flight and tail by quadrature, endurance by stepping the charge. */
export const rotorCases = checksOf(data.cases as unknown as readonly Case[]);
