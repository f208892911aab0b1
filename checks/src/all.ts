import { balancing } from './balancing.ts';
import { bearingChecks } from './bearing-checks.ts';
import { bearingSizeChecks } from './bearing-size-checks.ts';
import { byHand } from './by-hand.ts';
import type { Check } from './check.ts';
import { controlCases } from './control-cases.ts';
import { elementChecks } from './element-checks.ts';
import { fitChecks } from './fit-checks.ts';
import { gearStrength } from './gear-strength.ts';
import { hoverChecks } from './hover-checks.ts';
import { involuteTable } from './involute-table.ts';
import { iso2533 } from './iso-2533.ts';
import { loadChecks } from './load-checks.ts';
import { lockChecks } from './lock-checks.ts';
import { measuredThrusts } from './measured-rotors.ts';
import { mesh } from './mesh.ts';
import { planningCases } from './planning-cases.ts';
import { reliabilityCases } from './reliability-cases.ts';
import { forwardTrimChecks } from './forward-trim-checks.ts';
import { rotorCases } from './rotor-cases.ts';
import { rotorClosedForms } from './rotor-closed-forms.ts';
import { screwChecks } from './screw-checks.ts';
import { shaftChecks } from './shaft-checks.ts';
import { shiftedGears } from './shifted-gears.ts';
import { standardGears } from './standard-gears.ts';
import { threadChecks } from './thread-checks.ts';
import { toleranceStacks } from './tolerance-stacks.ts';
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
  ...measuredThrusts,
  ...rotorCases,
  ...forwardTrimChecks,
  ...hoverChecks,
  ...rotorClosedForms,
  ...elementChecks,
  ...shaftChecks,
  ...loadChecks,
  ...bearingChecks,
  ...bearingSizeChecks,
  ...threadChecks,
  ...screwChecks,
  ...lockChecks,
  ...fitChecks,
  ...controlCases,
  ...planningCases,
  ...reliabilityCases,
  ...tradePractice,
  ...toleranceStacks,
  ...byHand,
];
