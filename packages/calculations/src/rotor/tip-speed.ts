import { tipSpeed as speedOfTip } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';
import { lengthInput, speedInput } from '../specs.ts';

export const tipSpeed = defineCalculation({
  id: 'tip-speed',
  title: 'Tip speed',
  section: 'Rotor',
  summary: 'Speed of the blade tips.',
  inputs: { speed: speedInput('Speed of the rotor', 'n', 1760), radius: lengthInput('Radius of the rotor', 'R', 775) },
  outputs: { tipSpeed: { title: 'Tip speed', symbol: 'v_\\mathrm{tip}', unit: 'm/s', shown: 'm/s' } },
  formulas: [{ output: 'tipSpeed', tex: String.raw`v_\mathrm{tip} = |\Omega|\,R` }],
  source: 'Definition.',
  validity: ['In hover: in flight the advancing tip is faster by the airspeed.'],
  compute: ({ speed, radius }) => ({ outputs: { tipSpeed: speedOfTip(speed, radius) }, warnings: [] }),
});
