import { balancing } from './balancing.ts';
import { byHand } from './by-hand.ts';
import type { Check } from './check.ts';
import { controlCases } from './control-cases.ts';
import { elementChecks } from './element-checks.ts';
import { gearStrength } from './gear-strength.ts';
import { involuteTable } from './involute-table.ts';
import { iso2533 } from './iso-2533.ts';
import { mesh } from './mesh.ts';
import { planningCases } from './planning-cases.ts';
import { reliabilityCases } from './reliability-cases.ts';
import { rotorCases } from './rotor-cases.ts';
import { shiftedGears } from './shifted-gears.ts';
import { standardGears } from './standard-gears.ts';
import { tradePractice } from './trade-practice.ts';

/** Every check against the outside world. */
export const checks: readonly Check[] = [
  ...iso2533,
  ...involuteTable,
  ...shiftedGears,
  ...standardGears,
  ...gearStrength,
  ...mesh,
  ...balancing,
  ...rotorCases,
  ...elementChecks,
  ...controlCases,
  ...planningCases,
  ...reliabilityCases,
  ...tradePractice,
  ...byHand,
];
