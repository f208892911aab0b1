import { balanceSinglePlane as balanced } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { angleOutput } from '../specs.ts';
import { amplitudeInput, massOutput, trialMassInput, turnInput } from './balance-specs.ts';

export const balanceSinglePlane = defineCalculation({
  id: 'balance-single-plane',
  title: 'Balancing in one plane',
  section: 'Balance and vibration',
  summary: 'Correction mass and its angle from a run as it is and a run with a trial mass.',
  inputs: {
    initialAmplitude: amplitudeInput('Amplitude as it is, in any one unit', 'V_0', 7),
    initialPhase: turnInput('Phase as it is', '\\varphi_0', 160),
    trialMass: trialMassInput('Trial mass', 'm_t'),
    trialAngle: turnInput('Angle of the trial mass', '\\alpha_t', 0),
    withTrialAmplitude: amplitudeInput('Amplitude with the trial mass, in the same unit', 'V_1', 5),
    withTrialPhase: turnInput('Phase with the trial mass', '\\varphi_1', 70),
    trialRemoved: { kind: 'number', title: 'The trial mass is taken off again: 1, or stays on: 0', symbol: 'r', unit: '-', shown: '-', whole: true, min: 0, max: 1, default: 1, example: 1 },
  },
  outputs: {
    influenceAmplitude: { title: 'Change of the amplitude by a mass, per kilogram', symbol: '|H|', unit: '1/kg', shown: '1/g' },
    influencePhase: angleOutput('Phase of that change, for a mass at angle 0', '\\arg H'),
    correctionMass: massOutput('Correction mass, at the radius of the trial mass', 'm_c'),
    correctionAngle: angleOutput('Angle of the correction mass', '\\alpha_c'),
  },
  formulas: [
    { output: 'influenceAmplitude', tex: String.raw`H = \frac{V_1 e^{i\varphi_1} - V_0 e^{i\varphi_0}}{m_t\,e^{i\alpha_t}}` },
    { output: 'influencePhase', tex: String.raw`\arg H` },
    { output: 'correctionMass', tex: String.raw`m_c\,e^{i\alpha_c} = -\frac{V e^{i\varphi}}{H},\quad V = V_0 \text{ when the trial mass is taken off, else } V_1` },
    { output: 'correctionAngle', tex: String.raw`\alpha_c` },
  ],
  source: 'Influence coefficients; Thomson, Theory of Vibration (from memory), checked by vector arithmetic on the readings of a published example.',
  validity: ['Speed, sensor and all else stay the same between the runs; phases and angles are taken in one rotating sense. Angles come out from 0 to 360°.'],
  compute: (inputs) => {
    const { influence, correction } = balanced(
      { size: inputs.initialAmplitude, angle: inputs.initialPhase },
      { size: inputs.trialMass, angle: inputs.trialAngle },
      { size: inputs.withTrialAmplitude, angle: inputs.withTrialPhase },
      inputs.trialRemoved === 1,
    );
    if (correction === undefined) {
      return { outputs: { influenceAmplitude: 0 }, warnings: ['influencePhase, correctionMass and correctionAngle are left out: the trial mass changed nothing. Take a heavier one.'] };
    }
    return { outputs: { influenceAmplitude: influence.size, influencePhase: influence.angle, correctionMass: correction.size, correctionAngle: correction.angle }, warnings: [] };
  },
});
