import { balanceFourRuns } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { angleOutput, numberOutput } from '../specs.ts';
import { amplitudeInput, massOutput, trialMassInput } from './balance-specs.ts';

/** Runs agree when the circle that they give closes to this. Common practice, no source. */
const CLOSES = 0.1;

export const balanceFourRun = defineCalculation({
  id: 'balance-four-run',
  title: 'Balancing without phase',
  section: 'Balance and vibration',
  summary: 'Correction mass and angle from amplitudes alone: a run as it is, and three with a trial mass at places 120° apart.',
  inputs: {
    initialAmplitude: amplitudeInput('Amplitude as it is, in any one unit', 'V_0', 0.42),
    trialMass: trialMassInput('Trial mass, the same at each place', 'm_t'),
    amplitude0: amplitudeInput('Amplitude with it at the first place, 0°', 'A', 0.31),
    amplitude120: amplitudeInput('Amplitude with it at 120°', 'B', 0.554),
    amplitude240: amplitudeInput('Amplitude with it at 240°', 'C', 0.861),
  },
  outputs: {
    trialEffect: numberOutput('Amplitude that the trial mass alone makes, in the unit of the readings', 'T'),
    correctionMass: massOutput('Correction mass, at the radius of the trial mass', 'm_c'),
    correctionAngle: angleOutput('Angle of the correction mass from the first place, towards the second', '\\alpha_c'),
    closure: numberOutput('How well the runs agree: 1 in perfect readings', 'q'),
  },
  formulas: [
    { output: 'trialEffect', tex: String.raw`T = \sqrt{\frac{A^2 + B^2 + C^2}{3} - V_0^2}` },
    { output: 'correctionMass', tex: String.raw`m_c = m_t\,\frac{V_0}{T}` },
    { output: 'correctionAngle', tex: String.raw`\alpha_c = 180^\circ - x,\quad \cos x = \frac{A^2 - V_0^2 - T^2}{2V_0T},\quad \sin x = \frac{C^2 - B^2}{2\sqrt3\,V_0T}` },
    { output: 'closure', tex: String.raw`q = \sqrt{\cos^2 x + \sin^2 x}` },
  ],
  source: 'Law of cosines on the three triangles of each run; agrees with the influence coefficient where phases are known.',
  validity: ['Speed and sensor stay the same between the runs. Places follow in the sense in which angles are counted; the trial mass is taken off each time.'],
  compute: ({ initialAmplitude, trialMass, amplitude0, amplitude120, amplitude240 }) => {
    const { trialEffect, correction, closure } = balanceFourRuns(initialAmplitude, trialMass, [amplitude0, amplitude120, amplitude240]);
    if (trialEffect === undefined || correction === undefined) {
      return { outputs: {}, warnings: ['trialEffect, correctionMass, correctionAngle and closure are left out: on average the trial mass made nothing stronger. Take a heavier one, or read again.'] };
    }
    const apart = closure === undefined ? undefined : Math.abs(closure - 1);
    return {
      outputs: { trialEffect, correctionMass: correction.size, correctionAngle: correction.angle, ...(closure === undefined ? {} : { closure }) },
      warnings: [
        ...(closure === undefined ? ['closure is left out: nothing is out of balance.'] : []),
        ...(apart !== undefined && apart > CLOSES ? ['The four readings do not agree: no one unbalance gives them all. Speed or the surface under the machine may have changed; read again.'] : []),
      ],
    };
  },
});
