import { meshForces, meshGeometry, transverse } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { angleOutput, degrees, lengthInput } from '../specs.ts';
import { checkCentreDistance, gearStandard, pairInputs } from './gear-specs.ts';

const force = (title: string, symbol: string) => ({ title, symbol, unit: 'N', shown: 'N' }) as const;

const { helixAngle, pressureAngle, normalModule, teeth1, teeth2, shift1, shift2, centreDistance } = pairInputs;

export const gearForces = defineCalculation({
  id: 'gear-forces',
  title: 'Forces of a gear mesh',
  section: 'Gears',
  summary: 'What the teeth put on the shaft of gear 1: along the tooth’s motion, towards the axis, and along the axis.',
  inputs: {
    torque: { kind: 'number', title: 'Torque that the shaft puts into gear 1, along its rotation; negative where gear 1 is driven', symbol: 'T_1', unit: 'N·m', shown: 'N·m', min: -1e9, max: 1e9, example: 1.6 },
    referenceDiameter: { ...lengthInput('Reference diameter of gear 1; from module and teeth when not given', 'd_1', 17), optional: true, example: undefined },
    helixAngle: { ...helixAngle, example: degrees(15) },
    hand1: { kind: 'choice', title: 'Hand of the helix of gear 1', choices: ['left', 'right'], default: 'right', example: 'right' },
    turns: { kind: 'choice', title: 'Gear 1 turns right-handed about its axis, or left-handed', choices: ['right-handed', 'left-handed'], default: 'right-handed', example: 'right-handed' },
    pressureAngle,
    normalModule: { ...normalModule, optional: true },
    teeth1: { ...teeth1, optional: true },
    teeth2: { ...teeth2, title: 'Teeth of gear 2, for the pressure angle at the centre distance', optional: true },
    shift1,
    shift2,
    centreDistance,
  },
  outputs: {
    tangential: force('Tangential, at the reference circle; signed as the torque', 'F_t'),
    radial: force('Towards the axis', 'F_r'),
    axial: force('Along the axis of gear 1; gear 2 is pushed the other way', 'F_a'),
    normal: force('Square to the flank', 'F_{bn}'),
    workingPressureAngle: angleOutput('Pressure angle that the radial force is taken at', '\\alpha_{wt}'),
  },
  formulas: [
    { output: 'tangential', tex: String.raw`F_t = \frac{2T_1}{d_1}` },
    { output: 'radial', tex: String.raw`F_r = \frac{|F_t|\sin\alpha_{wt}}{\cos\alpha_t}` },
    { output: 'axial', tex: String.raw`F_a = \pm F_t\tan\beta` },
    { output: 'normal', tex: String.raw`F_{bn} = \sqrt{\left(\frac{F_t}{\cos\alpha_t}\right)^2 + F_a^2}` },
    { output: 'workingPressureAngle', tex: String.raw`\cos\alpha_{wt} = \frac{d_{b1} + d_{b2}}{2a}` },
  ],
  source: `Equilibrium of the couple; angles ${gearStandard} (from memory). The axial force is plus for a right-hand gear that drives and turns right-handed; each of the three turned round turns it round.`,
  validity: ['Steady torque, without friction.', 'The radial force is that of the working pressure angle where both tooth counts are given, else that of the reference circle.'],
  compute: (inputs) => {
    const { torque, hand1, turns } = inputs;
    const { module, pressureAngle: transverseAngle } = transverse({ ...inputs, normalModule: inputs.normalModule ?? 1 });
    const diameter = inputs.referenceDiameter ?? (inputs.normalModule === undefined || inputs.teeth1 === undefined ? undefined : module * inputs.teeth1);
    if (diameter === undefined) throw new CalculationError('referenceDiameter', 'nothing', 'the reference diameter, or normalModule and teeth1');
    const workingPressureAngle = inputs.referenceDiameter === undefined ? workingAngle(inputs, transverseAngle) : transverseAngle;
    const forces = meshForces(torque, diameter, transverseAngle, workingPressureAngle, inputs.helixAngle, hand1, turns === 'right-handed' ? 1 : -1);
    return { outputs: { ...forces, workingPressureAngle }, warnings: [] };
  },
});

interface Teeth {
  readonly helixAngle: number;
  readonly pressureAngle: number;
  readonly normalModule?: number;
  readonly teeth1?: number;
  readonly teeth2?: number;
  readonly shift1: number;
  readonly shift2: number;
  readonly centreDistance?: number;
}

function workingAngle(teeth: Teeth, transverseAngle: number): number {
  const { normalModule: module, teeth1: z1, teeth2: z2 } = teeth;
  if (module === undefined || z1 === undefined || z2 === undefined) return transverseAngle;
  const pair = { ...teeth, normalModule: module, teeth1: z1, teeth2: z2, addendum: 1, dedendum: 1.25, faceWidth: module };
  checkCentreDistance(pair);
  return meshGeometry(pair).workingPressureAngle;
}
