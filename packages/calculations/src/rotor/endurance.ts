import { fuelFlow, meanPower, packEndurance, type PowerShare } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { countInput } from '../specs.ts';
import { positive, powerOutput } from './rotor-specs.ts';

const consumption = { ...positive('Specific consumption', 'b_e', 'kg/J', 'g/(kW·h)', 2.4e-7), optional: true } as const;
const share = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: '-', shown: '%', min: 0, max: 1 }) as const;
const ampereOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'A', shown: 'A' }) as const;

export const endurance = defineCalculation({
  id: 'endurance',
  title: 'Endurance',
  section: 'Rotor',
  summary: 'How long a pack or a tank lasts over the powers of a flight.',
  inputs: {
    profile: {
      kind: 'list',
      title: 'Powers of the flight and how often each is met',
      atLeast: 1,
      of: {
        kind: 'record',
        title: 'Power',
        fields: {
          power: { kind: 'number', title: 'Power drawn', symbol: 'P', unit: 'W', shown: 'W', min: 0 },
          share: { ...positive('Share of the time, on any scale', 'w', '-', '-', 1), default: 1 },
          specificConsumption: { ...consumption, title: 'Specific consumption at this power' },
        },
      },
      example: [{ power: 700, share: 3 }, { power: 1500 }],
    },
    battery: {
      kind: 'record',
      title: 'Pack',
      optional: true,
      fields: {
        cells: countInput('Cells in series', 'N', 12),
        capacity: positive('Capacity', 'C', 'A·s', 'Ah', 18_000),
        resistance: { kind: 'number', title: 'Resistance of the whole pack', symbol: 'R', unit: 'Ω', shown: 'mΩ', min: 0, default: 0, example: 0.03 },
        cellVoltage: { ...positive('Open-circuit voltage of a cell', 'U_c', 'V', 'V', 3.7), default: 3.7 },
        openCircuit: {
          kind: 'list',
          title: 'Open-circuit voltage of a cell over its charge, in ascending charge; takes the place of the one voltage',
          optional: true,
          atLeast: 1,
          of: { kind: 'record', title: 'Point', fields: { charge: share('Charge', 's'), voltage: { kind: 'number', title: 'Voltage of a cell', symbol: 'U_c', unit: 'V', shown: 'V', above: 0 } } },
        },
        startCharge: { ...share('Charge at take-off', 's_0'), default: 1, example: 1 },
        usableFraction: { ...share('Share of the capacity that is used', 'u'), above: 0, default: 0.8, example: 0.8 },
      },
    },
    fuel: {
      kind: 'record',
      title: 'Fuel',
      optional: true,
      fields: {
        mass: { kind: 'number', title: 'Mass of the fuel; or its volume and density', symbol: 'm', unit: 'kg', shown: 'g', above: 0, optional: true },
        volume: { kind: 'number', title: 'Volume of the fuel', symbol: 'V', unit: 'm³', shown: 'ml', above: 0, optional: true },
        density: { kind: 'number', title: 'Density of the fuel', symbol: '\\rho', unit: 'kg/m³', shown: 'kg/l', above: 0, optional: true },
        specificConsumption: { kind: 'number', title: 'Specific consumption', symbol: 'b_e', unit: 'kg/J', shown: 'g/(kW·h)', above: 0, optional: true },
        usableFraction: { ...share('Share of the fuel that is used', 'u'), above: 0, default: 1 },
      },
    },
  },
  outputs: {
    meanPower: powerOutput('Mean power', '\\bar P'),
    time: { title: 'Time in the air', symbol: 't', unit: 's', shown: 'min' },
    meanCurrent: ampereOutput('Mean current', '\\bar I'),
    peakCurrent: ampereOutput('Highest current, at the end charge', 'I_\\mathrm{max}'),
    lowestVoltage: { title: 'Lowest voltage at the terminals, at the end charge', symbol: 'U_\\mathrm{min}', unit: 'V', shown: 'V' },
    massFlow: { title: 'Fuel flow', symbol: '\\dot m', unit: 'kg/s', shown: 'g/min' },
  },
  formulas: [
    { output: 'meanPower', tex: String.raw`\bar P = \frac{\sum w\,P}{\sum w}` },
    { output: 'time', tex: String.raw`t = \int_{s_0 - u}^{s_0} \frac{C}{\bar I(s)}\,\mathrm{d}s\quad\text{or}\quad t = \frac{u\,m}{\dot m},\ m = V\rho` },
    { output: 'meanCurrent', tex: String.raw`\bar I = \frac{u\,C}{t}` },
    { output: 'peakCurrent', tex: String.raw`I = \frac{U - \sqrt{U^2 - 4 R P}}{2 R},\quad U = N\,U_c(s)` },
    { output: 'lowestVoltage', tex: String.raw`U_\mathrm{min} = U - R\,I_\mathrm{max}` },
    { output: 'massFlow', tex: String.raw`\dot m = \frac{\sum w\,P\,b_e}{\sum w}` },
  ],
  source: 'Balance of charge and of mass; pack as a voltage behind a resistance.',
  validity: [
    'The powers alternate so fast that each is met at every state of charge.',
    'A cold or old pack holds less and sags more; warming and what is left to land with are not in the figure.',
    'Powers are those drawn from the pack, or given by the engine.',
  ],
  compute: (inputs) => {
    const { profile, battery, fuel } = inputs;
    if (battery !== undefined && fuel !== undefined) throw new CalculationError('fuel', 'as well as battery', 'one of the two');
    const mean = meanPower(profile);
    if (!(mean > 0)) throw new CalculationError('profile', 'powers of 0 W only', 'at least one power above 0 W');
    if (battery !== undefined) return { outputs: { meanPower: mean, ...onPack(profile, battery) }, warnings: ['massFlow is left out: it needs fuel.', ...unused(profile)] };
    if (fuel === undefined) throw new CalculationError('battery', 'nothing', 'battery with cells and capacity, or fuel with mass and specificConsumption');
    const massFlow = fuelFlow(profile.map((one, index) => ({ ...one, specificConsumption: consumptionOf(one, index, fuel.specificConsumption) })));
    return { outputs: { meanPower: mean, massFlow, time: (fuelMass(fuel) * fuel.usableFraction) / massFlow }, warnings: ['meanCurrent, peakCurrent and lowestVoltage are left out: they need battery.'] };
  },
});

function fuelMass({ mass, volume, density }: { readonly mass?: number; readonly volume?: number; readonly density?: number }): number {
  if (mass !== undefined && (volume !== undefined || density !== undefined)) throw new CalculationError('fuel.mass', 'as well as volume or density', 'either the mass, or both volume and density');
  const known = mass ?? (volume === undefined || density === undefined ? undefined : volume * density);
  if (known === undefined) throw new CalculationError('fuel.mass', 'nothing', 'the mass of the fuel in kg, or its volume in m³ and its density in kg/m³');
  return known;
}

interface Battery {
  readonly cells: number;
  readonly capacity: number;
  readonly resistance: number;
  readonly cellVoltage: number;
  readonly openCircuit?: readonly { readonly charge: number; readonly voltage: number }[];
  readonly startCharge: number;
  readonly usableFraction: number;
}

/** A power of the profile as it is given: with its own consumption where one is known. */
type GivenPower = PowerShare & { readonly specificConsumption?: number };

function onPack(profile: readonly GivenPower[], battery: Battery) {
  const { cells, capacity, resistance, cellVoltage, startCharge, usableFraction } = battery;
  const curve = battery.openCircuit ?? [{ charge: 1, voltage: cellVoltage }];
  const back = curve.findIndex((point, index) => index > 0 && point.charge <= curve[index - 1]!.charge);
  if (back > 0) throw new CalculationError(`battery.openCircuit[${back}].charge`, String(curve[back]!.charge), `more than that of the point before, ${curve[back - 1]!.charge}`);
  // A last digit lost in 1 − 0.8 is no reason to refuse.
  if (usableFraction > startCharge + 1e-9) throw new CalculationError('battery.usableFraction', String(usableFraction), `at most the charge at take-off, ${startCharge}`);
  const openVoltage = curve.map(({ charge, voltage }) => ({ charge, voltage: cells * voltage }));
  const result = packEndurance(profile, { capacity, resistance, openVoltage, startCharge, endCharge: startCharge - usableFraction });
  if (result === undefined) throw new CalculationError('profile', `a power of ${Math.max(...profile.map(({ power }) => power))} W`, 'no more than the pack can give at every charge on the way: (open-circuit voltage)²/(4·resistance)');
  return { ...result, meanCurrent: (capacity * usableFraction) / result.time };
}

function unused(profile: readonly GivenPower[]): readonly string[] {
  return profile.some(({ specificConsumption }) => specificConsumption !== undefined) ? ['specificConsumption is of no use with a battery.'] : [];
}

function consumptionOf({ specificConsumption }: GivenPower, index: number, common: number | undefined): number {
  const own = specificConsumption ?? common;
  if (own === undefined) throw new CalculationError(`profile[${index}].specificConsumption`, 'nothing', 'the consumption at this power in kg/J, or fuel.specificConsumption for all');
  return own;
}
