import { gearGeometry, involute, sweepMeshes, transverse, type SweptMeshes } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { degrees, lengthInput, numberOutput } from '../specs.ts';
import { checkCentreDistance, gearStandard, toothInputs } from './gear-specs.ts';

const { shift1: _, shift2: __, ...teeth } = toothInputs;

/** Shifts of gear 1 that are tried. */
const tried = { from: -0.5, to: 1.2, steps: 170 };

/** A tip this thin breaks or burrs; in normal modules. Common practice, no source. */
const THIN_TIP = 0.2;

const places = Float64Array.from({ length: tried.steps + 1 }, (_value, step) => tried.from + ((tried.to - tried.from) * step) / tried.steps);

export const profileShifts = defineCalculation({
  id: 'profile-shifts',
  title: 'Profile shifts for a centre distance',
  section: 'Gears',
  summary: 'How to share the profile shift between two gears so that they fill a given centre distance and overlap most.',
  inputs: {
    ...teeth,
    helixAngle: { ...teeth.helixAngle, example: degrees(15) },
    faceWidth: lengthInput('Face width in mesh', 'b', 12),
    centreDistance: lengthInput('Centre distance', 'a', 52.5),
    normalBacklash: { kind: 'number', title: 'Normal backlash wanted at that distance', symbol: 'j_n', unit: 'm', shown: 'mm', min: 0, max: 0.1, default: 0, example: 5e-5 },
    leastContactRatio: { kind: 'number', title: 'Least transverse contact ratio', symbol: '\\varepsilon_{\\alpha,\\mathrm{min}}', unit: '-', shown: '-', min: 1, max: 3, default: 1.2, example: 1.2 },
  },
  outputs: {
    shiftSum: numberOutput('Shifts together, in normal modules', '\\Sigma x'),
    shift1: numberOutput('Shift of gear 1', 'x_1'),
    shift2: numberOutput('Shift of gear 2', 'x_2'),
    addendum: numberOutput('Tip height of the rack with the tips shortened', 'h_{aP}^*'),
    totalContactRatio: numberOutput('Total contact ratio', '\\varepsilon_\\gamma'),
    leastShift1: numberOutput('Least shift of gear 1 at which the pair runs clean', 'x_{1,\\mathrm{min}}'),
    greatestShift1: numberOutput('Greatest shift of gear 1 at which it does', 'x_{1,\\mathrm{max}}'),
  },
  formulas: [
    { output: 'shiftSum', tex: String.raw`\Sigma x = \frac{(\mathrm{inv}\,\alpha_{wt} - \mathrm{inv}\,\alpha_t)(z_1 + z_2) - j_n/m_n}{2\tan\alpha_n}` },
    { output: 'addendum', tex: String.raw`h_{aP}^* + \frac{a - a_d}{m_n} - \Sigma x` },
    { output: 'totalContactRatio', tex: String.raw`\max_{x_1}\varepsilon_\gamma(x_1, \Sigma x - x_1)` },
    { output: 'shift1', tex: String.raw`x_1` },
    { output: 'shift2', tex: String.raw`x_2 = \Sigma x - x_1` },
    { output: 'leastShift1', tex: String.raw`x_{1,\mathrm{min}}` },
    { output: 'greatestShift1', tex: String.raw`x_{1,\mathrm{max}}` },
  ],
  source: `${gearStandard}, sections 5 to 7 (from memory); the shifts are found by trying.`,
  validity: [
    `Gear 1 is tried from ${tried.from} to ${tried.to} in steps of ${(tried.to - tried.from) / tried.steps}; what runs clean has no undercut, no tip interference, tips of ${THIN_TIP} modules or more and the contact ratio wanted.`,
    'Tips are shortened so that the clearance at the root stays. The backlash is measured at the reference circles.',
  ],
  compute: (inputs) => {
    checkCentreDistance(inputs);
    const { normalModule, pressureAngle, teeth1, teeth2, centreDistance, normalBacklash, leastContactRatio } = inputs;
    const { module, pressureAngle: angle } = transverse(inputs);
    const reference = (module * (teeth1 + teeth2)) / 2;
    const working = Math.acos(Math.min(1, (reference * Math.cos(angle)) / centreDistance));
    const shiftSum = ((involute(working) - involute(angle)) * (teeth1 + teeth2) - normalBacklash / normalModule) / (2 * Math.tan(pressureAngle));
    const addendum = inputs.addendum + (centreDistance - reference) / normalModule - shiftSum;
    if (!(addendum > 0)) throw new CalculationError('centreDistance', `${centreDistance} m`, 'a centre distance nearer to the reference one: the tips would be shortened away');
    const count = places.length;
    const swept: SweptMeshes = { contactRatio: new Float64Array(count), backlash: new Float64Array(count), runs: new Uint8Array(count) };
    sweepMeshes(inputs, places, places.map((shift) => shiftSum - shift), new Float64Array(count).fill(centreDistance), leastContactRatio, swept);
    const sound = (shift: number, count1: number): boolean => {
      const gear = { ...inputs, addendum, teeth: count1, shift };
      // Shifts far from usual leave no tooth at all; the rack must also reach the axis from outside.
      if (!(count1 / 2 + Math.cos(inputs.helixAngle) * (shift - inputs.dedendum) > 0 && shift + addendum > 0)) return false;
      const { undercut, normalTipThickness } = gearGeometry(gear);
      return !undercut && normalTipThickness >= THIN_TIP * normalModule;
    };
    const clean = [...places.keys()].filter((place) => swept.runs[place] === 1 && sound(places[place]!, teeth1) && sound(shiftSum - places[place]!, teeth2));
    const best = clean.reduce<number | undefined>((found, place) => (found === undefined || swept.contactRatio[place]! > swept.contactRatio[found]! ? place : found), undefined);
    if (best === undefined) {
      return { outputs: { shiftSum, addendum }, warnings: ['shift1, shift2, totalContactRatio, leastShift1 and greatestShift1 are left out: no share of the shift that was tried runs clean.'] };
    }
    const shift1 = places[best]!;
    return {
      outputs: { shiftSum, shift1, shift2: shiftSum - shift1, addendum, totalContactRatio: swept.contactRatio[best]!, leastShift1: places[clean[0]!]!, greatestShift1: places[clean.at(-1)!]! },
      warnings: [],
    };
  },
});
