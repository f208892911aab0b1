import { bearingFrequencyRatios } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { countInput, degrees, frequencyOutput, lengthInput, numberOutput, speedInput } from '../specs.ts';

export const bearingFrequencies = defineCalculation({
  id: 'bearing-frequencies',
  title: 'Frequencies of a rolling bearing',
  section: 'Bearings',
  summary: 'How often flaws of the races, of an element and of the cage strike.',
  inputs: {
    rollingElements: countInput('Rolling elements', 'Z', 8),
    elementDiameter: lengthInput('Diameter of an element', 'D_w', 2),
    pitchDiameter: lengthInput('Pitch circle of the elements', 'D_{pw}', 9),
    contactAngle: { kind: 'number', title: 'Contact angle', symbol: '\\alpha', unit: 'rad', shown: '°', min: 0, max: degrees(80), default: 0, example: 0 },
    shaftSpeed: speedInput('Speed of the shaft', 'n', 9000),
  },
  outputs: {
    outerRace: frequencyOutput('Strikes of a flaw on the outer race', 'f_o'),
    innerRace: frequencyOutput('Strikes of a flaw on the inner race', 'f_i'),
    element: frequencyOutput('Turns of one element', 'f_b'),
    cage: frequencyOutput('Turns of the cage', 'f_c'),
    outerRaceRatio: numberOutput('Outer race, per turn of the shaft', 'r_o'),
    innerRaceRatio: numberOutput('Inner race, per turn of the shaft', 'r_i'),
    elementRatio: numberOutput('Element, per turn of the shaft', 'r_b'),
    cageRatio: numberOutput('Cage, per turn of the shaft', 'r_c'),
  },
  formulas: [
    { output: 'outerRaceRatio', tex: String.raw`r_o = \frac{Z}{2}\left(1 - \frac{D_w}{D_{pw}}\cos\alpha\right)` },
    { output: 'innerRaceRatio', tex: String.raw`r_i = \frac{Z}{2}\left(1 + \frac{D_w}{D_{pw}}\cos\alpha\right)` },
    { output: 'elementRatio', tex: String.raw`r_b = \frac{D_{pw}}{2 D_w}\left[1 - \left(\frac{D_w}{D_{pw}}\cos\alpha\right)^2\right]` },
    { output: 'cageRatio', tex: String.raw`r_c = \frac12\left(1 - \frac{D_w}{D_{pw}}\cos\alpha\right)` },
    { output: 'outerRace', tex: String.raw`f_o = r_o\,\frac{|\omega|}{2\pi}` },
    { output: 'innerRace', tex: String.raw`f_i = r_i\,\frac{|\omega|}{2\pi}` },
    { output: 'element', tex: String.raw`f_b = r_b\,\frac{|\omega|}{2\pi}` },
    { output: 'cage', tex: String.raw`f_c = r_c\,\frac{|\omega|}{2\pi}` },
  ],
  source: 'Rolling without slip, checked against published multipliers.',
  validity: ['The inner ring turns, the outer ring stands.', 'A flaw on an element strikes twice a turn of the element; some tables print that doubled figure.', 'Slip lowers the real frequencies by a percent or two.'],
  compute: ({ shaftSpeed, ...bearing }) => {
    if (bearing.elementDiameter >= bearing.pitchDiameter) throw new CalculationError('elementDiameter', `${bearing.elementDiameter} m`, `less than the pitch circle of ${bearing.pitchDiameter} m`);
    const ratios = bearingFrequencyRatios(bearing);
    const turns = Math.abs(shaftSpeed) / (2 * Math.PI);
    return {
      outputs: {
        outerRace: ratios.outerRace * turns,
        innerRace: ratios.innerRace * turns,
        element: ratios.element * turns,
        cage: ratios.cage * turns,
        outerRaceRatio: ratios.outerRace,
        innerRaceRatio: ratios.innerRace,
        elementRatio: ratios.element,
        cageRatio: ratios.cage,
      },
      warnings: [],
    };
  },
});
