import { bladePair, tapePlace } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { angleOutput, lengthInput, lengthOutput, numberOutput } from '../specs.ts';
import { massOutput } from './balance-specs.ts';

const bladeMass = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'kg', shown: 'g', above: 0, max: 1e4, example }) as const;
const chordwise = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm', min: -10, max: 10, default: 0, example }) as const;
const moment = (title: string, symbol: string) => ({ title, symbol, unit: 'kg·m', shown: 'g·mm' }) as const;
const force = (title: string, symbol: string) => ({ title, symbol, unit: 'N', shown: 'N' }) as const;

export const bladeMatch = defineCalculation({
  id: 'blade-match',
  title: 'Matching two blades',
  section: 'Balance and vibration',
  summary: 'How far two blades differ along and across, the tape that evens them, and the force on the head that it saves.',
  inputs: {
    mass1: bladeMass('Mass of blade 1', 'm_1', 0.252),
    centre1: lengthInput('Its centre of mass, from the rotor axis', 'r_1', 431),
    mass2: bladeMass('Mass of blade 2', 'm_2', 0.2495),
    centre2: lengthInput('Its centre of mass, from the rotor axis', 'r_2', 434),
    tapeRadius: lengthInput('Where the tape goes, from the rotor axis', 'r_t', 760),
    speed: { kind: 'number', title: 'Rotor speed', symbol: '\\Omega', unit: 'rad/s', shown: 'rpm', min: 0, max: 1e4, example: 157.08 },
    chordwise1: chordwise('Centre of blade 1 ahead of its feathering axis; behind is minus', 'c_1', -0.002),
    chordwise2: chordwise('Centre of blade 2 ahead of its feathering axis; behind is minus', 'c_2', -0.0023),
    tipLead: chordwise('How far the tip of blade 1 stands ahead of where blade 2 points', '\\ell', 0.001),
    boltRadius: { ...lengthInput('Blade bolt, from the rotor axis; wanted when a tip stands ahead', 'b', 83), optional: true },
    tipRadius: { ...lengthInput('Tip, from the rotor axis; wanted when a tip stands ahead', 'R', 773), optional: true },
  },
  outputs: {
    massDifference: massOutput('Mass of blade 1 less that of blade 2', '\\Delta m'),
    momentDifference: moment('Mass times distance along the blades, blade 1 less blade 2', '\\Delta S'),
    lighterBlade: numberOutput('The blade of the smaller moment, which wants the tape; 0 when neither', 'i'),
    tapeMass: massOutput('Tape on it', 'm_t'),
    forceDifference: force('Force along the blades that shakes the head until then, at the rotor’s speed', '\\Delta F'),
    onePlace: lengthOutput('Where one tape of the missing mass evens mass and moment at once, from the rotor axis', '\\rho'),
    chordDifference: moment('Mass times distance across the blades, blade 1 less blade 2', '\\Delta Q'),
    unbalance: moment('Both together', 'U'),
    angle: angleOutput('Where the heavy side stands, from blade 1 in the sense of rotation', '\\alpha'),
    force: force('Force that turns with the rotor and shakes the head once a turn', 'F'),
    tipMass: massOutput('The same as mass at the radius of the tape', 'm_U'),
  },
  formulas: [
    { output: 'massDifference', tex: String.raw`\Delta m = m_1 - m_2` },
    { output: 'momentDifference', tex: String.raw`\Delta S = m_1 r_1 - m_2 r_2` },
    { output: 'lighterBlade', tex: String.raw`i = 2 \text{ when } \Delta S > 0,\ 1 \text{ when } \Delta S < 0` },
    { output: 'tapeMass', tex: String.raw`m_t = \frac{|\Delta S|}{r_t}` },
    { output: 'forceDifference', tex: String.raw`\Delta F = |\Delta S|\,\Omega^2` },
    { output: 'onePlace', tex: String.raw`\rho = \frac{\Delta S}{\Delta m}` },
    { output: 'chordDifference', tex: String.raw`\Delta Q = m_1\left(c_1 + \ell\,\frac{r_1 - b}{R - b}\right) - m_2 c_2` },
    { output: 'unbalance', tex: String.raw`U = \sqrt{\Delta S^2 + \Delta Q^2}` },
    { output: 'angle', tex: String.raw`\tan\alpha = \frac{\Delta Q}{\Delta S}` },
    { output: 'force', tex: String.raw`F = U\,\Omega^2` },
    { output: 'tipMass', tex: String.raw`m_U = \frac{U}{r_t}` },
  ],
  source: 'Static moments: equal m·r, equal pull.',
  validity: [
    'Two opposed blades. Blades of equal moments still differ in flight where their mass is spread differently.',
    'In this order, as is common practice: edges in line, masses, centres along the blade, centres across it, then track and trial masses on the turning rotor.',
    'Tape near the tip moves the centre and the flapping too: match the masses first. Put tape only where the maker of the blades allows it.',
  ],
  compute: ({ mass1, centre1, mass2, centre2, tapeRadius, speed, chordwise1, chordwise2, tipLead, boltRadius, tipRadius }) => {
    const lead = tipLead === 0 ? undefined : { atTip: tipLead, boltRadius: needed('boltRadius', boltRadius), tipRadius: needed('tipRadius', tipRadius) };
    if (lead && !(lead.tipRadius > lead.boltRadius)) throw new CalculationError('tipRadius', `${lead.tipRadius} m, with the bolt at ${lead.boltRadius} m`, 'a tip beyond the bolt');
    const blades = [{ mass: mass1, centre: centre1, chordwise: chordwise1 }, { mass: mass2, centre: centre2, chordwise: chordwise2 }] as const;
    const { along, across, unbalance } = bladePair(...blades, lead);
    const size = Math.abs(along);
    const onePlace = tapePlace(...blades);
    return {
      outputs: {
        massDifference: mass1 - mass2, momentDifference: along, lighterBlade: along > 0 ? 2 : along < 0 ? 1 : 0, tapeMass: size / tapeRadius, forceDifference: size * speed ** 2,
        ...(onePlace === undefined ? {} : { onePlace }),
        chordDifference: across, unbalance: unbalance.size, angle: unbalance.angle, force: unbalance.size * speed ** 2, tipMass: unbalance.size / tapeRadius,
      },
      warnings: onePlace === undefined ? ['onePlace is left out: the blades weigh the same.'] : [],
    };
  },
});

function needed(name: string, value: number | undefined): number {
  if (value === undefined) throw new CalculationError(name, 'nothing', 'a length, since a tip stands ahead');
  return value;
}
