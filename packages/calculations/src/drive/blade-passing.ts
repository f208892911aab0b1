import { passingFrequency } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { countInput, frequencyOutput, speedInput } from '../specs.ts';

export const bladePassing = defineCalculation({
  id: 'blade-passing',
  title: 'Blade-passing frequency',
  section: 'Drive',
  summary: 'How often a blade passes over the boom, and how often the rotor turns.',
  inputs: { blades: countInput('Blades', 'b', 2), speed: speedInput('Speed of the rotor', 'n', 1760) },
  outputs: { frequency: frequencyOutput('Blade-passing frequency', 'f_b'), rotationFrequency: frequencyOutput('Turns of the rotor', 'f_1') },
  formulas: [
    { output: 'rotationFrequency', tex: String.raw`f_1 = \frac{|\omega|}{2\pi}` },
    { output: 'frequency', tex: String.raw`f_b = b\,f_1` },
  ],
  source: 'Definition.',
  validity: ['Equal blades, equally spaced.'],
  compute: ({ blades, speed }) => ({ outputs: { frequency: passingFrequency(blades, speed), rotationFrequency: passingFrequency(1, speed) }, warnings: [] }),
});
