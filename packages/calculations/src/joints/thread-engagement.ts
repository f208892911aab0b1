import { leastThread, screwStrength, shearAreas } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { forceInput, forceOutput, lengthInput, lengthOutput, numberOutput, stressInput, textOutput } from '../specs.ts';
import { classInput, sizeInput, threadOf } from './screw-specs.ts';

const diameterInput = (title: string, symbol: string) => ({ kind: 'number', title: `${title}; of 6g in 6H when not given`, symbol, unit: 'm', shown: 'mm', above: 0, optional: true }) as const;

export const threadEngagement = defineCalculation({
  id: 'thread-engagement',
  title: 'Does the thread hold?',
  section: 'Joints and fits',
  summary: 'At which pull a screw strips the thread it goes into, strips itself, or breaks; and the length from which it breaks first.',
  inputs: {
    size: sizeInput('M3'),
    engagement: lengthInput('Length of full threads that engage', 'L', 6),
    propertyClass: classInput,
    internalShearStrength: stressInput('Shear strength of the part with the inner thread', '\\tau_i', 200),
    load: { ...forceInput('Pull on the screw, such as its preload', 'F_0', 2000), optional: true },
    screwTensileStrength: { ...stressInput('Tensile strength of the screw; the least of its class when not given', 'R_m', 800), optional: true },
    screwMajorDiameter: diameterInput('Smallest outside diameter of the screw', 'd'),
    screwPitchDiameter: diameterInput('Smallest pitch diameter of the screw', 'd_2'),
    nutPitchDiameter: diameterInput('Largest pitch diameter of the inner thread', 'D_2'),
    nutMinorDiameter: diameterInput('Largest minor diameter of the inner thread', 'D_1'),
  },
  outputs: {
    strippingForceInternal: forceOutput('Pull that strips the inner thread', 'F_i'),
    strippingForceExternal: forceOutput('Pull that strips the screw', 'F_e'),
    boltBreakingForce: forceOutput('Pull that breaks the screw', 'F_m'),
    critical: textOutput('What gives way first', 'w'),
    holdingForce: forceOutput('Pull at which it does', 'F'),
    margin: numberOutput('That pull over the given one', 'm'),
    engagementNeeded: lengthOutput('Length of full threads from which the screw breaks first', 'L_\\mathrm{min}'),
  },
  formulas: [
    { output: 'strippingForceInternal', tex: String.raw`F_i = \tau_i\,\frac{\pi}{P}\,L\,d\left(\frac P2 + \frac{d - D_2}{\sqrt3}\right)` },
    { output: 'strippingForceExternal', tex: String.raw`F_e = \tau_B\,\frac{\pi}{P}\,L\,D_1\left(\frac P2 + \frac{d_2 - D_1}{\sqrt3}\right)` },
    { output: 'boltBreakingForce', tex: String.raw`F_m = R_m\,A_s` },
    { output: 'critical', tex: String.raw`w = \operatorname{arg\,min}(F_m, F_i, F_e)` },
    { output: 'holdingForce', tex: String.raw`F = \min(F_m, F_i, F_e)` },
    { output: 'margin', tex: String.raw`m = \frac{F}{F_0}` },
    { output: 'engagementNeeded', tex: String.raw`L_\mathrm{min} = L\,\frac{F_m}{\min(F_i, F_e)}` },
  ],
  source: 'Alexander, SAE 770420 (1977), and FED-STD-H28; tolerances ISO 965-1:2013; shear strength of screws VDI 2230-1:2003, table 6 (all from memory), checked against a published example.',
  validity: [
    'Worst sizes of a screw 6g in a thread 6H. A perfect thread of basic sizes would hold about a fifth more.',
    'Shear strength of what is tapped: the calculation named material has it, 331 MPa for aluminium 7075, 207 for 6061, 53 for POM; of a plastic for a short pull only, for it creeps.',
    'Left out: a boss so thin that it widens, bending of the threads, chamfers. Count full threads only; to be sure that the screw breaks first, give the greatest tensile strength of its class.',
  ],
  compute: ({ size, engagement, propertyClass, internalShearStrength, load, screwTensileStrength, ...given }) => {
    const found = threadOf(size);
    const usual = leastThread(found);
    const least = {
      screwMajor: given.screwMajorDiameter ?? usual.screwMajor,
      screwPitch: given.screwPitchDiameter ?? usual.screwPitch,
      nutPitch: given.nutPitchDiameter ?? usual.nutPitch,
      nutMinor: given.nutMinorDiameter ?? usual.nutMinor,
    };
    const { tensileStrength, shearRatio } = screwStrength(propertyClass, found.diameter);
    const tensile = screwTensileStrength ?? tensileStrength;
    const areas = shearAreas(found, engagement, least);
    const forces = { bolt: tensile * found.stressArea, internal: internalShearStrength * areas.internal, external: shearRatio * tensile * areas.external };
    const stripping = Math.min(forces.internal, forces.external);
    const critical = forces.bolt <= stripping ? 'bolt' : forces.internal <= forces.external ? 'internal' : 'external';
    const loaded = load !== undefined && load > 0;
    return {
      outputs: {
        strippingForceInternal: forces.internal,
        strippingForceExternal: forces.external,
        boltBreakingForce: forces.bolt,
        critical,
        holdingForce: forces[critical],
        engagementNeeded: (engagement * forces.bolt) / stripping,
        ...(loaded ? { margin: forces[critical] / load } : {}),
      },
      warnings: [
        ...(loaded ? [] : [`margin is left out: ${load === undefined ? 'load is not given' : 'there is no load'}.`]),
        ...(loaded && load > forces[critical] ? ['The load is more than the thread holds.'] : []),
        ...(critical === 'bolt' ? [] : ['The thread strips before the screw breaks: a stripped thread shows no warning and cannot be locked again.']),
      ],
    };
  },
});
