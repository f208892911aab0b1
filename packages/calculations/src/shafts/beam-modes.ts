import { defineCalculation } from '../define.ts';
import { frequencyOutput } from '../specs.ts';
import { beamInputs, beamSource, frequenciesOf, massFields, modesInput, readBeam } from './beam-specs.ts';

export const beamModes = defineCalculation({
  id: 'beam-modes',
  title: 'Bending frequencies of a beam',
  section: 'Shafts and beams',
  summary: 'Natural frequencies of a boom or tube of one section on its supports, with the masses that it carries.',
  inputs: {
    ...beamInputs,
    length: { ...beamInputs.length, example: 0.85 },
    bendingStiffness: { ...beamInputs.bendingStiffness, example: 420 },
    massPerLength: { ...beamInputs.massPerLength, example: 0.17 },
    supports: { ...beamInputs.supports, example: [{ at: 0, kind: 'clamped' }, { at: 0.5, kind: 'spring', stiffness: 40_000 }] },
    masses: { kind: 'list', title: 'Masses on the beam', optional: true, of: { kind: 'record', title: 'Mass', fields: massFields }, example: [{ at: 0.85, mass: 0.19 }] },
    modes: modesInput('How many frequencies'),
  },
  outputs: {
    frequencies: { ...frequencyOutput('Natural frequencies, ascending', 'f_n'), list: true },
    firstFrequency: frequencyOutput('The first of them', 'f_1'),
    secondFrequency: frequencyOutput('The second', 'f_2'),
    thirdFrequency: frequencyOutput('The third', 'f_3'),
  },
  formulas: [
    { output: 'frequencies', tex: String.raw`EI\,w'''' = m'\,\omega^2 w,\quad f = \frac{\omega}{2\pi}` },
    { output: 'firstFrequency', tex: String.raw`f_1` },
    { output: 'secondFrequency', tex: String.raw`f_2` },
    { output: 'thirdFrequency', tex: String.raw`f_3` },
  ],
  source: beamSource,
  validity: [
    'One plane, small deflections, one section; the ends are free unless supported. Rigid-body motions, at 0 Hz, are not listed.',
    'Left out: shear, rotary inertia of the section itself, axial force, damping. Short thick beams lie lower than given.',
  ],
  compute: ({ masses = [], modes, ...beam }) => {
    const frequencies = frequenciesOf(readBeam(beam, masses), modes).map((omega) => omega / (2 * Math.PI));
    const [firstFrequency, secondFrequency, thirdFrequency] = frequencies;
    const single = { firstFrequency, secondFrequency, thirdFrequency };
    const lacking = Object.entries(single).filter(([, value]) => value === undefined).map(([name]) => name);
    return {
      outputs: { frequencies, ...Object.fromEntries(Object.entries(single).filter(([, value]) => value !== undefined)) },
      warnings: [
        ...(lacking.length > 0 ? [`${lacking.join(', ')} left out: not so many were asked for, or there are not so many.`] : []),
        ...(frequencies.length < modes ? [`There ${frequencies.length === 1 ? 'is only one frequency' : `are only ${frequencies.length} frequencies`}: a beam without mass of its own has no more than its masses allow.`] : []),
      ],
    };
  },
});
