import { assemblyPreload, screwStrength, tighteningArms } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { forceOutput, torqueInput, torqueOutput } from '../specs.ts';
import { classInput, frictionInputs, frictionValidity, seatInputs, seatOf, sizeInput, threadOf } from './screw-specs.ts';

export const screwTightening = defineCalculation({
  id: 'screw-tightening',
  title: 'Tightening torque of a screw',
  section: 'Joints and fits',
  summary: 'Preload that a screw may have, and the torque that gives it.',
  inputs: {
    size: sizeInput('M3'),
    propertyClass: classInput,
    ...frictionInputs,
    utilisation: { kind: 'number', title: 'Share of the yield strength that tightening may use', symbol: '\\nu', unit: '-', shown: '%', above: 0, max: 1, default: 0.9, example: 0.9 },
    ...seatInputs,
    prevailingTorque: { ...torqueInput('Torque that the thread takes before it clamps, of an insert nut or a fit with interference', 'T_p', 0), default: 0 },
  },
  outputs: {
    preload: forceOutput('Preload', 'F_M'),
    torque: torqueOutput('Tightening torque', 'M_A'),
    threadTorque: torqueOutput('Part of it that the thread takes, lift and friction', 'M_G'),
    headTorque: torqueOutput('Part of it that goes into friction under the head', 'M_K'),
  },
  formulas: [
    { output: 'preload', tex: String.raw`F_M = \frac{\nu\,R_{p0.2}\,A_s}{\sqrt{1 + 3\left[\frac32\,\frac{d_2}{d_0}\left(\frac{P}{\pi d_2} + 1.155\,\mu_G\right)\right]^2}},\quad d_0 = \frac{d_2 + d_3}{2}` },
    { output: 'threadTorque', tex: String.raw`M_G = F_M\left(\frac{P}{2\pi} + 0.577\,d_2\,\mu_G\right)` },
    { output: 'headTorque', tex: String.raw`M_K = F_M\,\mu_K\,\frac{d_w + d_h}{4}` },
    { output: 'torque', tex: String.raw`M_A = M_G + M_K + T_p` },
  ],
  source: 'VDI 2230-1:2003, equations R7/2 and R13/1 (from memory), checked against public tables after it. Torque on top of the running torque: FAA AC 43.13-1B (1998), chapter 7.',
  validity: [
    'Steel or stainless screws with the full thread in tension. What clamps in plastic, carbon plate or soft aluminium may crush long before.',
    ...frictionValidity,
    'A torque wrench scatters the preload by ±35 % dry and ±25 % lubricated: see screw-preload.',
    'Whether the thread that it goes into holds: see thread-engagement. The torque in the maker’s paper goes before this one.',
  ],
  compute: ({ size, propertyClass, threadFriction, headFriction, utilisation, prevailingTorque, ...given }) => {
    const found = threadOf(size);
    const arms = tighteningArms(found, seatOf(found, given), { thread: threadFriction, head: headFriction });
    const preload = assemblyPreload(found, screwStrength(propertyClass, found.diameter).yieldStrength, threadFriction, utilisation);
    const threadTorque = preload * (arms.pitch + arms.thread);
    const headTorque = preload * arms.head;
    return { outputs: { preload, torque: threadTorque + headTorque + prevailingTorque, threadTorque, headTorque }, warnings: [] };
  },
});
