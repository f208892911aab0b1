import { combinedStressRatio, screwStrength, tighteningArms } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { forceOutput, numberOutput, torqueInput, torqueOutput } from '../specs.ts';
import { classInput, frictionInputs, frictionValidity, seatInputs, seatOf, sizeInput, threadOf } from './screw-specs.ts';

export const screwPreload = defineCalculation({
  id: 'screw-preload',
  title: 'Preload of a screw from its torque',
  section: 'Joints and fits',
  summary: 'What preload a torque gives, within which scatter, and how much of the screw’s strength it uses.',
  inputs: {
    size: sizeInput('M3'),
    propertyClass: classInput,
    torque: torqueInput('Tightening torque', 'M_A', 1.2),
    ...frictionInputs,
    ...seatInputs,
    prevailingTorque: { ...torqueInput('Torque that the thread takes before it clamps', 'T_p', 0), default: 0 },
    scatter: { kind: 'number', title: 'Scatter of the preload: 35 % dry, 25 % lubricated, by torque wrench', symbol: 's', unit: '-', shown: '%', min: 0, max: 1, default: 0.35, example: 0.35 },
  },
  outputs: {
    preload: forceOutput('Preload', 'F_M'),
    utilisation: numberOutput('Share of the yield strength that tightening uses', '\\nu'),
    preloadLow: forceOutput('Preload, low end', 'F_\\mathrm{low}'),
    preloadHigh: forceOutput('Preload, high end', 'F_\\mathrm{high}'),
    looseningTorque: torqueOutput('Torque by which it unscrews itself once shaking has taken its friction', 'M_L'),
  },
  formulas: [
    { output: 'preload', tex: String.raw`F_M = \frac{M_A - T_p}{\frac{P}{2\pi} + 0.577\,d_2\,\mu_G + \mu_K\frac{d_w + d_h}{4}}` },
    { output: 'utilisation', tex: String.raw`\nu = \frac{F_M}{A_s R_{p0.2}}\sqrt{1 + 3\left[\frac32\,\frac{d_2}{d_0}\left(\frac{P}{\pi d_2} + 1.155\,\mu_G\right)\right]^2}` },
    { output: 'preloadLow', tex: String.raw`F_\mathrm{low} = (1 - s)\,F_M` },
    { output: 'preloadHigh', tex: String.raw`F_\mathrm{high} = (1 + s)\,F_M` },
    { output: 'looseningTorque', tex: String.raw`M_L = F_M\,\frac{P}{2\pi}` },
  ],
  source: 'VDI 2230-1:2003, equations R7/2 and R13/1 (from memory). Scatter: table of a space agency’s fastener manual, quoted on a public page.',
  validity: [...frictionValidity, 'By feel the preload scatters by as much as with a dry torque wrench.', 'What clamps in plastic or carbon plate creeps, and the preload falls.'],
  compute: ({ size, propertyClass, torque, threadFriction, headFriction, prevailingTorque, scatter, ...given }) => {
    const found = threadOf(size);
    if (torque < prevailingTorque) throw new CalculationError('torque', `${torque} N·m`, `at least the ${prevailingTorque} N·m that the thread takes before it clamps`);
    const arms = tighteningArms(found, seatOf(found, given), { thread: threadFriction, head: headFriction });
    const preload = (torque - prevailingTorque) / (arms.pitch + arms.thread + arms.head);
    const utilisation = (preload * combinedStressRatio(found, threadFriction)) / (found.stressArea * screwStrength(propertyClass, found.diameter).yieldStrength);
    const percent = Math.round(utilisation * 1000) / 10;
    return {
      outputs: { preload, utilisation, preloadLow: (1 - scatter) * preload, preloadHigh: (1 + scatter) * preload, looseningTorque: preload * arms.pitch },
      warnings: [
        ...(utilisation > 1 ? [`It uses ${percent} % of the yield strength: the screw stretches for good.`] : utilisation > 0.9 ? [`It uses ${percent} % of the yield strength; 90 % is usual.`] : []),
        ...(utilisation <= 1 && utilisation * (1 + scatter) > 1 ? ['At the high end of the scatter the screw yields.'] : []),
      ],
    };
  },
});
