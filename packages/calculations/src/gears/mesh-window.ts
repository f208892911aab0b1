import { centreDistances, grownBacklash, grownCentreDistance, type Growth } from '@rotorwright/mechanics';
import { CalculationError, defineCalculation } from '../define.ts';
import { degrees, lengthOutput } from '../specs.ts';
import { checkCentreDistance, gearStandard, pairInputs } from './gear-specs.ts';
import { growingPartInput, growthOf } from './growing-part.ts';

const temperature = (title: string, symbol: string, celsius: number) => ({ kind: 'number', title, symbol, unit: 'K', shown: '°C', min: 173.15, max: 473.15, example: celsius + 273.15 }) as const;
/** Backlash that rounding leaves where there is none, m. */
const NOTHING = 1e-12;

const play = (when: string, symbol: string) => lengthOutput(`Backlash ${when}`, symbol);

export const meshWindow = defineCalculation({
  id: 'mesh-window',
  title: 'Mesh from cold to hot',
  section: 'Gears',
  summary: 'Backlash of a pair, in its frame, from a cold dry day to a hot damp one, and the centre distance at which it never binds.',
  inputs: {
    ...pairInputs,
    helixAngle: { ...pairInputs.helixAngle, example: degrees(15) },
    centreDistance: { ...pairInputs.centreDistance, title: 'Centre distance at assembly; without backlash when not given', example: 0.0525 },
    material1: growingPartInput('Material of gear 1', 'steel'),
    material2: growingPartInput('Material of gear 2', 'POM'),
    frameMaterial: growingPartInput('Material of the frame between the axes', 'aluminium 6061'),
    cold: temperature('Coldest, dry', 'T_c', -10),
    assembly: temperature('At assembly, dry', 'T_0', 20),
    hot: temperature('Hottest, soaked', 'T_h', 60),
    tolerance: { kind: 'number', title: 'How far the centre distance may come out smaller than set', symbol: '\\delta a', unit: 'm', shown: 'mm', min: 0, max: 0.1, default: 0, example: 2e-5 },
    leastBacklash: { kind: 'number', title: 'Backlash that must always be left', symbol: 'j_\\mathrm{min}', unit: 'm', shown: 'mm', min: 0, max: 0.1, default: 0, example: 0 },
  },
  outputs: {
    backlashCold: play('when cold and dry', 'j_c'),
    backlashAssembly: play('at assembly', 'j_0'),
    backlashHot: play('when hot and soaked', 'j_h'),
    backlashHotDry: play('when hot and dry', 'j_{hd}'),
    centreDistanceToSet: lengthOutput('Centre distance to set at assembly, so that it never binds', 'a_\\mathrm{set}'),
    backlashToSet: play('at assembly that this distance shows', 'j_{0,\\mathrm{set}}'),
    backlashColdSet: play('when cold, at this distance', 'j_{c,\\mathrm{set}}'),
    backlashHotSet: play('when hot and soaked, at this distance', 'j_{h,\\mathrm{set}}'),
  },
  formulas: [
    { output: 'backlashAssembly', tex: String.raw`j = \frac{(d_{b1}+d_{b2})\,\mathrm{inv}\,\alpha_w - (s_{b1} + s_{b2} - p_b)}{\cos\alpha_w},\quad \cos\alpha_w = \frac{d_{b1}+d_{b2}}{2a}` },
    { output: 'backlashCold', tex: String.raw`l \to l\,(1 + \alpha\,(T_c - T_0))` },
    { output: 'backlashHotDry', tex: String.raw`l \to l\,(1 + \alpha\,(T_h - T_0))` },
    { output: 'backlashHot', tex: String.raw`l \to l\,(1 + \alpha\,(T_h - T_0) + s)` },
    { output: 'centreDistanceToSet', tex: String.raw`a_\mathrm{set} = \max_i a(j_i = j_\mathrm{min}) + \delta a` },
    { output: 'backlashToSet', tex: String.raw`j_0(a_\mathrm{set})` },
    { output: 'backlashColdSet', tex: String.raw`j_c(a_\mathrm{set})` },
    { output: 'backlashHotSet', tex: String.raw`j_h(a_\mathrm{set})` },
  ],
  source: `Geometry ${gearStandard} (from memory), each part’s lengths scaled by its own growth; linear expansion. Growth of plastics in damp from memory.`,
  validity: [
    'Each part has one temperature, all the same. A gear that is warmer than its frame closes the mesh further: give it a hotter day.',
    'Gears that grow differently no longer share a pitch: the smaller one counts, so the backlash is the least over a turn of true gears. Runout is not in it: put it into the tolerance.',
    'The frame’s material is that between the two axes: a carbon plate hardly grows, a pair of aluminium halves does.',
  ],
  compute: (inputs) => {
    checkCentreDistance(inputs);
    const { cold, assembly, hot, tolerance, leastBacklash } = inputs;
    if (!(cold <= assembly)) throw new CalculationError('cold', `${cold} K`, `at most the ${assembly} K of assembly`);
    if (!(hot >= assembly)) throw new CalculationError('hot', `${hot} K`, `at least the ${assembly} K of assembly`);
    const grow1 = growthOf(inputs.material1, 'material1');
    const grow2 = growthOf(inputs.material2, 'material2');
    const growFrame = growthOf(inputs.frameMaterial, 'frameMaterial');
    const at = (kelvin: number, soaked: boolean): Growth => {
      const rise = kelvin - assembly;
      return { gear1: grow1(rise, soaked), gear2: grow2(rise, soaked), frame: growFrame(rise, soaked) };
    };
    const states = { cold: at(cold, false), assembly: at(assembly, false), hot: at(hot, true), hotDry: at(hot, false), damp: at(assembly, true) };
    const distance = inputs.centreDistance ?? centreDistances(inputs, inputs.teeth1, inputs.teeth2, inputs.shift1, inputs.shift2, 'external').zeroBacklashCentreDistance;
    const backlash = (growth: Growth, centre: number): number => {
      const play = grownBacklash(inputs, centre, growth).backlash;
      return Math.abs(play) < NOTHING ? 0 : play;
    };
    const set = Math.max(...Object.values(states).map((growth) => grownCentreDistance(inputs, growth, leastBacklash))) + tolerance;
    const plays = { backlashCold: backlash(states.cold, distance), backlashAssembly: backlash(states.assembly, distance), backlashHot: backlash(states.hot, distance), backlashHotDry: backlash(states.hotDry, distance) };
    const binds = Object.entries(plays).filter(([, value]) => value < 0);
    return {
      outputs: {
        ...plays,
        centreDistanceToSet: set,
        backlashToSet: backlash(states.assembly, set),
        backlashColdSet: backlash(states.cold, set),
        backlashHotSet: backlash(states.hot, set),
      },
      warnings: binds.length > 0 ? [`At the centre distance given the teeth bind: ${binds.map(([name]) => name).join(', ')} negative.`] : [],
    };
  },
});
