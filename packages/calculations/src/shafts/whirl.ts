import { neighbouringFrequencies } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { numberOutput, speedInput, speedOutput } from '../specs.ts';
import { beamInputs, beamSource, frequenciesOf, massFields, modesInput, readBeam } from './beam-specs.ts';

/** Nearer to a critical speed than this a shaft is shaken up by small unbalance. Common practice, no source. */
const NEAR = 0.2;

/** Half waves along the shaft at its speed, beyond which the neighbouring criticals are not sought. */
const MOST_WAVES = 100;

export const whirl = defineCalculation({
  id: 'whirl',
  title: 'Whirling speeds of a shaft',
  section: 'Shafts and beams',
  summary: 'Speeds at which a shaft on its bearings would whirl, and how far from them it runs.',
  inputs: {
    ...beamInputs,
    masses: {
      kind: 'list',
      title: 'Masses on the shaft',
      optional: true,
      of: {
        kind: 'record',
        title: 'Mass',
        fields: { ...massFields, polarInertia: { kind: 'number', title: 'Moment of inertia about the shaft', symbol: 'J_p', unit: 'kg·m²', shown: 'g·mm²', min: 0, max: 1e6, default: 0 } },
      },
    },
    speed: { ...speedInput('Speed of the shaft', 'n', 8200), min: -1e6, max: 1e6 },
    modes: modesInput('How many critical speeds'),
  },
  outputs: {
    criticalSpeeds: { ...speedOutput('Critical speeds, ascending', 'n_c'), list: true },
    firstCriticalSpeed: speedOutput('First critical speed', 'n_{c1}'),
    separation: numberOutput('Distance to the nearest critical speed, listed or not, as a share of the speed', 's'),
    firstCriticalRatio: numberOutput('First critical speed over the speed', 'n_{c1}/n'),
  },
  formulas: [
    { output: 'criticalSpeeds', tex: String.raw`EI\,w'''' = m'\,\omega^2 w,\quad J_\mathrm{eff} = J - J_p` },
    { output: 'separation', tex: String.raw`s = \min_k \left|\frac{n_{c,k}}{n} - 1\right|` },
    { output: 'firstCriticalSpeed', tex: String.raw`n_{c1}` },
    { output: 'firstCriticalRatio', tex: String.raw`\frac{n_{c1}}{n}` },
  ],
  source: `${beamSource} Discs in forward whirl: Thomson, the same book (from memory).`,
  validity: [
    'Forward whirl in step with the shaft, on supports that are as stiff one way as the other. Each mass counts with its inertia less its polar inertia.',
    'Left out: the gyroscopic effect of the tube itself, shear, the torque it carries, damping, and whirl that internal friction drives above the first critical.',
  ],
  compute: ({ masses = [], modes, speed: given, ...beam }) => {
    const shaft = readBeam(
      beam,
      masses.map(({ at, mass, inertia, polarInertia }) => ({ at, mass, inertia: inertia - polarInertia })),
    );
    const speed = Math.abs(given);
    const criticalSpeeds = frequenciesOf(shaft, modes);
    const first = criticalSpeeds[0];
    const waves = (Math.sqrt(speed * Math.sqrt(shaft.massPerLength / shaft.bendingStiffness)) * shaft.length) / Math.PI;
    const neighbours = speed > 0 && waves <= MOST_WAVES ? neighbouringFrequencies(shaft, speed) : [];
    const separation = neighbours.length > 0 ? Math.min(...neighbours.map((critical) => Math.abs(critical / speed - 1))) : undefined;
    return {
      outputs: {
        criticalSpeeds,
        ...(first === undefined ? {} : { firstCriticalSpeed: first }),
        ...(separation === undefined ? {} : { separation }),
        ...(first === undefined || speed === 0 ? {} : { firstCriticalRatio: first / speed }),
      },
      warnings: [
        ...(separation === undefined ? [`separation is left out: ${speed === 0 ? 'the shaft does not turn' : waves > MOST_WAVES ? `the speed lies above some ${MOST_WAVES} critical speeds` : 'there is no critical speed'}.`] : []),
        ...(first === undefined ? ['firstCriticalSpeed is left out: there is no critical speed.'] : []),
        ...(first === undefined || speed === 0 ? [`firstCriticalRatio is left out: ${speed === 0 ? 'the shaft does not turn' : 'there is no critical speed'}.`] : []),
        ...(criticalSpeeds.length < modes ? [criticalSpeeds.length === 1 ? 'There is only one critical speed.' : `There are only ${criticalSpeeds.length} critical speeds.`] : []),
        ...(separation !== undefined && separation < NEAR ? [`The shaft runs within ${NEAR * 100} % of a critical speed.`] : []),
        ...(first !== undefined && first < speed ? ['The shaft runs above its first critical speed: it passes through it on the way up.'] : []),
      ],
    };
  },
});
