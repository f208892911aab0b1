import { lockNumber, tipRisePerPitch } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { angleOutput, lengthInput, lengthOutput, numberOutput } from '../specs.ts';

export const bladeTracking = defineCalculation({
  id: 'blade-tracking',
  title: 'Tracking',
  section: 'Balance and vibration',
  summary: 'Turns of a blade link that bring two blade tips into one path.',
  inputs: {
    pathDifference: { kind: 'number', title: 'How much higher this blade flies at the tip; lower is minus', symbol: '\\Delta z', unit: 'm', shown: 'mm', min: -1, max: 1, example: 0.008 },
    radius: lengthInput('Rotor radius', 'R', 775),
    chord: lengthInput('Blade chord', 'c', 62),
    inertia: { kind: 'number', title: 'Moment of inertia of one blade about the rotor axis', symbol: 'I_b', unit: 'kg·m²', shown: 'kg·m²', above: 0, max: 1e6, example: 0.052 },
    arm: lengthInput('Arm of the blade horn: from the feathering axis to the ball', 'l', 22),
    threadPitch: { ...lengthInput('How far one turn moves the link: the thread pitch, twice it where a turnbuckle turns', 'P', 0.5), max: 0.01 },
    density: { kind: 'number', title: 'Density of the air', symbol: '\\rho', unit: 'kg/m³', shown: 'kg/m³', above: 0, max: 100, default: 1.225, example: 1.225 },
    liftSlope: { kind: 'number', title: 'Lift slope of the section, per radian', symbol: 'a', unit: '-', shown: '-', above: 0, max: 20, default: 5.73, example: 5.73 },
    flappingFrequencyRatio: { kind: 'number', title: 'Flapping frequency per turn: 1 for a free hinge, 1.03 to 1.1 with dampers', symbol: '\\nu', unit: '-', shown: '-', min: 1, max: 3, default: 1, example: 1.05 },
  },
  outputs: {
    lockNumber: numberOutput('Lock number of the blade', '\\gamma'),
    risePerPitch: { title: 'Rise of the tip per pitch of this blade', symbol: 'z_\\theta', unit: 'm/rad', shown: 'mm/°' },
    pitchChange: angleOutput('Pitch to take off this blade; minus: to add', '\\Delta\\theta'),
    linkChange: lengthOutput('How far to turn the link towards less pitch; minus: towards more', '\\Delta s'),
    turns: numberOutput('Turns of the link towards less pitch; minus: towards more', 'n'),
  },
  formulas: [
    { output: 'lockNumber', tex: String.raw`\gamma = \frac{\rho\,a\,c\,R^4}{I_b}` },
    { output: 'risePerPitch', tex: String.raw`z_\theta = \frac{R\,\gamma}{8\nu^2}` },
    { output: 'pitchChange', tex: String.raw`\Delta\theta = \frac{\Delta z}{z_\theta}` },
    { output: 'linkChange', tex: String.raw`\Delta s = l\,\Delta\theta` },
    { output: 'turns', tex: String.raw`n = \frac{\Delta s}{P}` },
  ],
  source: 'Equilibrium of moments about the flapping axis, inflow unchanged; Gessow and Myers, Aerodynamics of the Helicopter, chapter 7 (from memory).',
  validity: [
    'Hover, one stiff blade of even chord from the axis to the tip; the other blade stays as it is. Half the turns on each blade, one up and one down, keep the collective.',
    'An estimate for the first try. Look from a safe distance in the plane’s side, never along it, and stop the rotor before touching a link.',
  ],
  compute: ({ pathDifference, arm, threadPitch, ...blade }) => {
    const risePerPitch = tipRisePerPitch(blade);
    const pitchChange = pathDifference / risePerPitch;
    const linkChange = arm * pitchChange;
    return {
      outputs: { lockNumber: lockNumber(blade), risePerPitch, pitchChange, linkChange, turns: linkChange / threadPitch },
      warnings: Math.abs(pitchChange) > 0.1 ? ['More than 6° are no matter of tracking: look for a wrong link, a blade in the wrong way round, or a bent spindle.'] : [],
    };
  },
});
