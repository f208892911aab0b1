import { CalculationError, defineCalculation } from '../define.ts';
import { numberOutput, speedInput, torqueOutput } from '../specs.ts';
import { density, powerOutput } from './rotor-specs.ts';

const efficiency = { kind: 'number', title: 'Efficiency of the stage: power out over power in', symbol: '\\eta', unit: '-', shown: '%', above: 0, max: 1 } as const;

/** kg/m³, ISO 2533:1975. */
const SEA_LEVEL_DENSITY = 1.225;

export const powerNeeded = defineCalculation({
  id: 'power-needed',
  title: 'Power at the engine or motor',
  section: 'Rotor',
  summary: 'What engine or motor must give: the power of each rotor, the losses of every stage on the way to it, and the cooling fan.',
  inputs: {
    loads: {
      kind: 'list',
      title: 'What is driven, and the stages on the way to it',
      atLeast: 1,
      of: {
        kind: 'record',
        title: 'Load',
        fields: {
          power: { kind: 'number', title: 'Power there', symbol: 'P_i', unit: 'W', shown: 'W', min: 0 },
          stages: { kind: 'list', title: 'Stages', optional: true, of: { kind: 'record', title: 'Stage', fields: { efficiency } } },
        },
      },
      example: [{ power: 620, stages: [{ efficiency: 0.98 }] }, { power: 70, stages: [{ efficiency: 0.98 }, { efficiency: 0.97 }] }],
    },
    fan: { kind: 'number', title: 'Power of the cooling fan on its shaft, in air of 1.225 kg/m³', symbol: 'P_f', unit: 'W', shown: 'W', min: 0, default: 0, example: 85 },
    fanSpeed: { ...speedInput('Speed at which the fan takes that; that of engine or motor when not given', 'n_f', 14_250), above: 0, optional: true },
    density,
    available: { kind: 'number', title: 'Power that engine or motor can give', symbol: 'P_a', unit: 'W', shown: 'W', min: 0, optional: true, example: 2100 },
    speed: { ...speedInput('Speed of engine or motor', 'n', 14_250), above: 0, optional: true },
  },
  outputs: {
    power: powerOutput('Power needed', 'P'),
    fanPower: powerOutput('Power of the fan in this air, at this speed', 'P_{f1}'),
    losses: powerOutput('Lost in the stages', 'P_v'),
    inHand: numberOutput('Power available over power needed', 'P_a/P'),
    firstAvailable: powerOutput('Power that the first load can have, all loads growing alike', 'P_{1a}'),
    torque: torqueOutput('Torque needed', 'T'),
  },
  formulas: [
    { output: 'power', tex: String.raw`P = P_{f1} + \sum_i \frac{P_i}{\prod_j \eta_{ij}}` },
    { output: 'fanPower', tex: String.raw`P_{f1} = P_f\,\frac{\rho}{1.225\,\mathrm{kg/m^3}}\left(\frac{n}{n_f}\right)^3` },
    { output: 'losses', tex: String.raw`P_v = P - P_{f1} - \sum_i P_i` },
    { output: 'inHand', tex: String.raw`\frac{P_a}{P}` },
    { output: 'firstAvailable', tex: String.raw`P_{1a} = P_1\,\frac{P_a - P_{f1}}{P - P_{f1}}` },
    { output: 'torque', tex: String.raw`T = \frac{P}{\omega}` },
  ],
  source: 'Balance of power; the power of a fan goes with density and the cube of its speed.',
  validity: ['Losses go with the power that passes; what a cold or dry gear box takes when it idles is left out.', 'Bearings and seals are taken as part of the stages.'],
  compute: ({ loads, fan, fanSpeed, density: rho, available, speed }) => {
    if (fanSpeed !== undefined && speed === undefined) throw new CalculationError('speed', 'nothing', 'the speed of engine or motor, for fanSpeed is given');
    const fanPower = ((fan * rho) / SEA_LEVEL_DENSITY) * (fanSpeed === undefined || speed === undefined ? 1 : (speed / fanSpeed) ** 3);
    const driven = loads.reduce((sum, { power }) => sum + power, 0);
    const taken = loads.reduce((sum, { power, stages }) => sum + (stages ?? []).reduce((through, stage) => through / stage.efficiency, power), 0);
    const power = taken + fanPower;
    if (!Number.isFinite(power)) throw new CalculationError('loads', 'efficiencies that lose all but nothing', 'efficiencies as stages have them, such as 98 %');
    return {
      outputs: { power, fanPower, losses: taken - driven, ...(available === undefined || !(taken > 0) ? {} : { inHand: available / power }), ...(available === undefined || !(taken > 0) ? {} : { firstAvailable: (loads[0]!.power * Math.max(0, available - fanPower)) / taken }), ...(speed === undefined ? {} : { torque: power / speed }) },
      warnings: [
        ...(speed === undefined ? ['torque is left out: it needs speed.'] : []),
        ...(available === undefined ? ['inHand and firstAvailable are left out: they need available.'] : taken > 0 ? [] : ['inHand and firstAvailable are left out: nothing is needed.']),
      ],
    };
  },
});
