import { defineCalculation } from '../define.ts';
import { countInput, forceInput, forceOutput, torqueOutput } from '../specs.ts';

export const clampGrip = defineCalculation({
  id: 'clamp-grip',
  title: 'Grip of clamped faces',
  section: 'Joints and fits',
  summary: 'Force across, and torque, that the preload of screws holds by friction before the faces slip and the screws are bent.',
  inputs: {
    screws: {
      kind: 'list',
      title: 'Screws that press the faces together',
      of: { kind: 'record', title: 'Screws alike', fields: { preload: forceInput('Preload of one', 'F_M', 2313), count: countInput('How many', 'n', 2) } },
      example: [{ preload: 2313, count: 2 }, { preload: 2120, count: 2 }],
    },
    friction: { kind: 'number', title: 'Friction between the faces', symbol: '\\mu', unit: '-', shown: '-', above: 0, max: 2, example: 0.12 },
    circle: { kind: 'number', title: 'Diameter of the circle on which the screws stand', symbol: 'd', unit: 'm', shown: 'mm', above: 0, max: 10, optional: true, example: 0.03 },
  },
  outputs: { force: forceOutput('Force across that they hold', 'F_Q'), torque: torqueOutput('Torque that they hold', 'T') },
  formulas: [
    { output: 'force', tex: String.raw`F_Q = \mu\sum_i n_i\,F_{M,i}` },
    { output: 'torque', tex: String.raw`T = F_Q\,\frac{d}{2}` },
  ],
  source: 'Coulomb’s law of friction; VDI 2230-1 asks for no slip of joints that are loaded across (from memory).',
  validity: ['One face, force and friction shared evenly. Preload scatters by a third, and some of it settles away; a screw that fits its hole, or a spigot, holds beyond that.'],
  compute: ({ screws, friction, circle }) => {
    const force = friction * screws.reduce((sum, { preload, count }) => sum + count * preload, 0);
    return { outputs: { force, ...(circle === undefined ? {} : { torque: (force * circle) / 2 }) }, warnings: circle === undefined ? ['torque is left out: circle is not given.'] : [] };
  },
});
