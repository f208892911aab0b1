import { grownCentreDistance, meshGeometry, type MeshGeometry, type MeshInputs } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { degrees, lengthInput, lengthOutput, numberOutput } from '../specs.ts';
import { checkCentreDistance, gearStandard, gearTeeth, leastCentreDistance, shiftInput, toothInputs } from './gear-specs.ts';

const { teeth1, shift1, ...rest } = toothInputs;

const asAtAssembly = { gear1: 1, gear2: 1, frame: 1 };

export const pinionChange = defineCalculation({
  id: 'pinion-change',
  title: 'Changing a pinion',
  section: 'Gears',
  summary: 'New centre distance after a change of the pinion, whether the slot allows it, and what backlash results.',
  inputs: {
    ...rest,
    helixAngle: { ...rest.helixAngle, example: degrees(15) },
    teeth1: { ...teeth1, title: 'Teeth of the pinion that comes out' },
    shift1: { ...shift1, title: 'Profile shift of the pinion that comes out, in normal modules' },
    newTeeth1: gearTeeth('Teeth of the pinion that goes in', 'z_{1n}', 18),
    newShift1: shiftInput('Profile shift of the pinion that goes in, in normal modules', 'x_{1n}'),
    centreDistance: { ...lengthInput('Centre distance now; without backlash when not given', 'a', 52.4), optional: true },
    slotFrom: { ...lengthInput('Least centre distance that the slot allows', 'a_\\mathrm{min}', 51), optional: true },
    slotTo: { ...lengthInput('Greatest centre distance that the slot allows', 'a_\\mathrm{max}', 53), optional: true },
  },
  outputs: {
    backlash: lengthOutput('Backlash now', 'j'),
    newCentreDistance: lengthOutput('Centre distance with the same backlash, or none where it binds now', 'a_n'),
    move: lengthOutput('How far to move; apart is plus', '\\Delta a'),
    slotAllows: numberOutput('The slot allows it: 1, or not: 0', 's'),
    setCentreDistance: lengthOutput('Nearest centre distance that the slot allows', 'a_s'),
    newBacklash: lengthOutput('Backlash there', 'j_s'),
    backlashUnmoved: lengthOutput('Backlash where nothing is moved; negative: the pinion does not go in', 'j_u'),
    newContactRatio: numberOutput('Transverse contact ratio there', '\\varepsilon_\\alpha'),
    speedRatio: numberOutput('Speed of gear 2, new over old', 'i'),
  },
  formulas: [
    { output: 'backlash', tex: String.raw`j = 2a\,(\mathrm{inv}\,\alpha_w - \mathrm{inv}\,\alpha_0)` },
    { output: 'newCentreDistance', tex: String.raw`j_n(a_n) = j` },
    { output: 'move', tex: String.raw`\Delta a = a_n - a` },
    { output: 'slotAllows', tex: String.raw`s = 1 \text{ when } a_\mathrm{min} \le a_n \le a_\mathrm{max}` },
    { output: 'setCentreDistance', tex: String.raw`a_s = \min(\max(a_n, a_\mathrm{min}), a_\mathrm{max})` },
    { output: 'newBacklash', tex: String.raw`j_s = j_n(a_s)` },
    { output: 'backlashUnmoved', tex: String.raw`j_u = j_n(a)` },
    { output: 'newContactRatio', tex: String.raw`\varepsilon_\alpha(a_s)` },
    { output: 'speedRatio', tex: String.raw`i = \frac{z_{1n}}{z_1}` },
  ],
  source: `${gearStandard} (from memory), checked against published worked examples.`,
  validity: ['External gears on parallel axes. Heat and damp are left out: mesh-window says what they ask for.'],
  compute: (inputs) => {
    const { slotFrom = 0, slotTo = Infinity, newTeeth1, newShift1 } = inputs;
    if (slotFrom > slotTo) throw new CalculationError('slotFrom', `${slotFrom} m`, `at most slotTo, ${slotTo} m`);
    checkCentreDistance(inputs);
    const old: MeshInputs = { ...inputs, faceWidth: inputs.normalModule };
    const now = meshGeometry(old);
    const fitted: MeshInputs = { ...old, teeth1: newTeeth1, shift1: newShift1 };
    const newCentreDistance = grownCentreDistance(fitted, asAtAssembly, Math.max(0, now.backlash));
    const at = (distance: number): MeshGeometry | undefined => (distance < leastCentreDistance(fitted) ? undefined : meshGeometry({ ...fitted, centreDistance: distance }));
    const setCentreDistance = Math.min(Math.max(newCentreDistance, slotFrom), slotTo);
    const slotAllows = setCentreDistance === newCentreDistance ? 1 : 0;
    const unmoved = at(now.centreDistance);
    const there = at(setCentreDistance);
    const noSlot = inputs.slotFrom === undefined && inputs.slotTo === undefined;
    return {
      outputs: {
        backlash: now.backlash,
        newCentreDistance,
        move: newCentreDistance - now.centreDistance,
        ...(noSlot ? {} : { slotAllows }),
        setCentreDistance,
        ...(there ? { newBacklash: there.backlash, newContactRatio: there.transverseContactRatio } : {}),
        ...(unmoved ? { backlashUnmoved: unmoved.backlash } : {}),
        speedRatio: newTeeth1 / inputs.teeth1,
      },
      warnings: [
        ...(noSlot ? ['slotAllows is left out: no slot is given.'] : slotAllows === 1 ? [] : [`The slot does not reach that far. At ${setCentreDistance === slotTo ? 'its outer' : 'its inner'} end ${there && there.backlash >= 0 ? 'more backlash is left than now' : 'the teeth bind'}.`]),
        ...(there ? [] : ['newBacklash and newContactRatio are left out: at the end of the slot the base circles overlap.']),
        ...(unmoved ? [] : ['backlashUnmoved is left out: unmoved, the base circles overlap.']),
        ...(there && there.transverseContactRatio < 1 ? ['At that distance the transverse contact ratio is below 1.'] : []),
      ],
    };
  },
});
