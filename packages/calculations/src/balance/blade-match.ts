import { defineCalculation } from '../define.ts';
import { lengthInput, numberOutput } from '../specs.ts';
import { massOutput } from './balance-specs.ts';

const bladeMass = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'kg', shown: 'g', above: 0, max: 1e4, example }) as const;

export const bladeMatch = defineCalculation({
  id: 'blade-match',
  title: 'Matching two blades',
  section: 'Balance and vibration',
  summary: 'How far two blades differ in mass times distance, the tape that evens it, and the force on the head that it saves.',
  inputs: {
    mass1: bladeMass('Mass of blade 1', 'm_1', 0.252),
    centre1: lengthInput('Its centre of mass, from the rotor axis', 'r_1', 431),
    mass2: bladeMass('Mass of blade 2', 'm_2', 0.2495),
    centre2: lengthInput('Its centre of mass, from the rotor axis', 'r_2', 434),
    tapeRadius: lengthInput('Where the tape goes, from the rotor axis', 'r_t', 760),
    speed: { kind: 'number', title: 'Rotor speed', symbol: '\\Omega', unit: 'rad/s', shown: 'rpm', min: 0, max: 1e4, example: 157.08 },
  },
  outputs: {
    momentDifference: { title: 'Blade 1 less blade 2', symbol: '\\Delta S', unit: 'kg·m', shown: 'g·mm' },
    lighterBlade: numberOutput('The blade that wants the tape; 0 when neither', 'i'),
    tapeMass: massOutput('Tape on it', 'm_t'),
    forceDifference: { title: 'Force that shakes the head until then, at the rotor’s speed', symbol: '\\Delta F', unit: 'N', shown: 'N' },
  },
  formulas: [
    { output: 'momentDifference', tex: String.raw`\Delta S = m_1 r_1 - m_2 r_2` },
    { output: 'lighterBlade', tex: String.raw`i = 2 \text{ when } \Delta S > 0,\ 1 \text{ when } \Delta S < 0` },
    { output: 'tapeMass', tex: String.raw`m_t = \frac{|\Delta S|}{r_t}` },
    { output: 'forceDifference', tex: String.raw`\Delta F = |\Delta S|\,\Omega^2` },
  ],
  source: 'Static moments: equal m·r, equal pull.',
  validity: ['Spanwise only. Blades of equal moment still differ in flight where their centres lie differently along the chord, or their mass is spread differently.', 'Tape near the tip moves the centre and the flapping too: match the masses first.'],
  compute: ({ mass1, centre1, mass2, centre2, tapeRadius, speed }) => {
    const momentDifference = mass1 * centre1 - mass2 * centre2;
    const size = Math.abs(momentDifference);
    return {
      outputs: { momentDifference, lighterBlade: momentDifference > 0 ? 2 : momentDifference < 0 ? 1 : 0, tapeMass: size / tapeRadius, forceDifference: size * speed ** 2 },
      warnings: [],
    };
  },
});
