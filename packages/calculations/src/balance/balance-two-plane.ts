import { balanceTwoPlanes as balanced, type Phasor, type TwoReadings } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { angleOutput } from '../specs.ts';
import { amplitudeInput, massOutput, trialMassInput, turnInput } from './balance-specs.ts';

const readings = (title: string, mark: string, [amplitude1, phase1, amplitude2, phase2]: readonly [number, number, number, number]) =>
  ({
    kind: 'record',
    title,
    fields: {
      amplitude1: amplitudeInput('Amplitude at sensor 1', `V_{1${mark}}`, amplitude1),
      phase1: turnInput('Phase at sensor 1', `\\varphi_{1${mark}}`, phase1),
      amplitude2: amplitudeInput('Amplitude at sensor 2', `V_{2${mark}}`, amplitude2),
      phase2: turnInput('Phase at sensor 2', `\\varphi_{2${mark}}`, phase2),
    },
  }) as const;

const trial = (plane: 1 | 2) =>
  ({ kind: 'record', title: `Trial mass in plane ${plane}`, fields: { mass: trialMassInput('Mass', `m_{t${plane}}`), angle: { ...turnInput('Angle', `\\alpha_{t${plane}}`, 0), default: 0 } } }) as const;

const influence = (sensor: 1 | 2, plane: 1 | 2) => ({ title: `Change at sensor ${sensor} by a mass in plane ${plane}, per kilogram`, symbol: `|H_{${sensor}${plane}}|`, unit: '1/kg', shown: '1/g' }) as const;
const influencePhase = (sensor: 1 | 2, plane: 1 | 2) => angleOutput(`Phase of that change`, `\\arg H_{${sensor}${plane}}`);

export const balanceTwoPlane = defineCalculation({
  id: 'balance-two-plane',
  title: 'Balancing in two planes',
  section: 'Balance and vibration',
  summary: 'Correction masses in two planes from a run as it is and a run each with a trial mass in either plane.',
  inputs: {
    initial: readings('The run as it is', '0', [170, 112, 53, 78]),
    trial1: trial(1),
    withTrial1: readings('The run with the trial mass in plane 1', '1', [235, 94, 58, 68]),
    trial2: trial(2),
    withTrial2: readings('The run with the trial mass in plane 2, the first taken off', '2', [185, 115, 77, 104]),
  },
  outputs: {
    correctionMass1: massOutput('Correction mass in plane 1', 'm_{c1}'),
    correctionAngle1: angleOutput('Its angle', '\\alpha_{c1}'),
    correctionMass2: massOutput('Correction mass in plane 2', 'm_{c2}'),
    correctionAngle2: angleOutput('Its angle', '\\alpha_{c2}'),
    influenceAmplitude11: influence(1, 1),
    influencePhase11: influencePhase(1, 1),
    influenceAmplitude12: influence(1, 2),
    influencePhase12: influencePhase(1, 2),
    influenceAmplitude21: influence(2, 1),
    influencePhase21: influencePhase(2, 1),
    influenceAmplitude22: influence(2, 2),
    influencePhase22: influencePhase(2, 2),
  },
  formulas: [
    ...(['11', '12', '21', '22'] as const).flatMap((pair) => [
      { output: `influenceAmplitude${pair}` as const, tex: String.raw`H_{${pair}} = \frac{V_{${pair}} - V_{${pair[0]}0}}{m_{t${pair[1]}}\,e^{i\alpha_{t${pair[1]}}}},\quad V = |V|\,e^{i\varphi}` },
      { output: `influencePhase${pair}` as const, tex: String.raw`\arg H_{${pair}}` },
    ]),
    { output: 'correctionMass1', tex: String.raw`m_{c1}e^{i\alpha_{c1}} = \frac{H_{12}V_{20} - H_{22}V_{10}}{H_{11}H_{22} - H_{12}H_{21}}` },
    { output: 'correctionAngle1', tex: String.raw`\alpha_{c1}` },
    { output: 'correctionMass2', tex: String.raw`m_{c2}e^{i\alpha_{c2}} = \frac{H_{21}V_{10} - H_{11}V_{20}}{H_{11}H_{22} - H_{12}H_{21}}` },
    { output: 'correctionAngle2', tex: String.raw`\alpha_{c2}` },
  ],
  source: 'Influence coefficients in two planes; checked against a worked example of a maker of vibration meters.',
  validity: ['Speed, sensors and all else stay the same between the runs; each trial mass is taken off again. Phases and angles are taken in one rotating sense; angles come out from 0 to 360°.'],
  compute: ({ initial, trial1, trial2, withTrial1, withTrial2 }) => {
    const { influence: found, correction } = balanced(pairOf(initial), [{ size: trial1.mass, angle: trial1.angle }, { size: trial2.mass, angle: trial2.angle }], pairOf(withTrial1), pairOf(withTrial2));
    const [[h11, h12], [h21, h22]] = found;
    return {
      outputs: {
        influenceAmplitude11: h11.size,
        influencePhase11: h11.angle,
        influenceAmplitude12: h12.size,
        influencePhase12: h12.angle,
        influenceAmplitude21: h21.size,
        influencePhase21: h21.angle,
        influenceAmplitude22: h22.size,
        influencePhase22: h22.angle,
        ...(correction && { correctionMass1: correction[0].size, correctionAngle1: correction[0].angle, correctionMass2: correction[1].size, correctionAngle2: correction[1].angle }),
      },
      warnings: correction ? [] : ['correctionMass1, correctionAngle1, correctionMass2 and correctionAngle2 are left out: the readings do not tell the two planes apart. Take heavier trial masses, or balance in one plane.'],
    };
  },
});

interface Readings {
  readonly amplitude1: number;
  readonly phase1: number;
  readonly amplitude2: number;
  readonly phase2: number;
}

const pairOf = ({ amplitude1, phase1, amplitude2, phase2 }: Readings): TwoReadings => [{ size: amplitude1, angle: phase1 } satisfies Phasor, { size: amplitude2, angle: phase2 }];
