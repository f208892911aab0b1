import { CalculationError, defineCalculation } from '../define.ts';
import { lengthOutput } from '../specs.ts';
import { massOutput } from './balance-specs.ts';

const place = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm', min: -1e4, max: 1e4, example }) as const;
const mass = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'kg', shown: 'kg', above: 0, max: 1e6, example }) as const;

export const centreShift = defineCalculation({
  id: 'centre-shift',
  title: 'Moving the centre of mass',
  section: 'Balance and vibration',
  summary: 'How far to move a part, or what weight to fix at a place, to bring the centre of mass where it is wanted.',
  inputs: {
    mass: mass('Mass of the machine', 'm', 6.3),
    centre: place('Its centre of mass now, along one axis', 'x', -0.004),
    wanted: place('Where the centre is wanted', 'x_w', 0),
    movedMass: { ...mass('Mass of a part that can be moved', 'm_p', 0.196), optional: true },
    place: { ...place('Where a weight can be fixed', 'x_b', 0.27), optional: true },
  },
  outputs: {
    shift: lengthOutput('How far to move the part', '\\Delta x_p'),
    ballast: massOutput('Weight to fix at the place', 'm_b'),
  },
  formulas: [
    { output: 'shift', tex: String.raw`\Delta x_p = \frac{m\,(x_w - x)}{m_p}` },
    { output: 'ballast', tex: String.raw`m_b = \frac{m\,(x_w - x)}{x_b - x_w}` },
  ],
  source: 'Static moments about the wanted centre.',
  validity: ['One axis. The part moves and nothing else does; the weight comes on top of the mass of the machine.'],
  compute: ({ mass: whole, centre, wanted, movedMass, place: at }) => {
    if (movedMass !== undefined && movedMass > whole) throw new CalculationError('movedMass', `${movedMass} kg`, `no more than the whole machine, ${whole} kg`);
    const moment = whole * (wanted - centre);
    const ballast = at === undefined ? undefined : moment === 0 ? 0 : moment / (at - wanted);
    const warnings = [
      ...(movedMass === undefined ? ['shift is left out: no movedMass is given.'] : []),
      ...(at === undefined ? ['ballast is left out: no place is given.'] : ballast! < 0 || !Number.isFinite(ballast!) ? ['ballast is left out: a weight at this place draws the centre away from where it is wanted.'] : []),
    ];
    return { outputs: { ...(movedMass === undefined ? {} : { shift: moment / movedMass }), ...(ballast !== undefined && ballast >= 0 && Number.isFinite(ballast) ? { ballast } : {}) }, warnings };
  },
});
