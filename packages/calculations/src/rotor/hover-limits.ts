import { HoverSolver, realRotor } from '@rotorwright/rotor';
import { findRoot } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { numberOutput, speedInput, textOutput } from '../specs.ts';
import { readRotorShape, rotorShapeInputs } from './rotor-shape.ts';
import { airspeedOutput, forceOutput, positive } from './rotor-specs.ts';

/** Of the blade: twice as many change the thrust by 0.02 %. */
const ELEMENTS = 30;
/** Steps by which thrust and climb grow until something gives out. */
const GROWTH = 1.25;
const CLIMB_STEP = 2;
const MOST_CLIMB = 60;

export const hoverLimits = defineCalculation({
  id: 'hover-limits',
  title: 'Thrust in reserve, and climb',
  section: 'Rotor',
  summary: 'The most that a rotor can carry with the power it gets, what sets the limit, and how fast it climbs with its weight.',
  inputs: {
    ...rotorShapeInputs,
    speed: { ...speedInput('Speed of the rotor', 'n', 1760), above: 0 },
    weight: positive('Thrust in hover: the weight', 'W', 'N', 'N', 51),
    power: { kind: 'number', title: 'Power that the rotor can have', symbol: 'P_a', unit: 'W', shown: 'W', above: 0, example: 1500 },
    maximumCollective: { kind: 'number', title: 'Collective at the stop', symbol: '\\theta_\\mathrm{max}', unit: 'rad', shown: '°', above: 0, max: 0.7, optional: true },
  },
  outputs: {
    thrust: forceOutput('Most thrust', 'T_\\mathrm{max}'),
    reserve: numberOutput('Most thrust over weight', 'T_\\mathrm{max}/W'),
    limit: textOutput('What sets the limit', '-'),
    climbRate: airspeedOutput('Rate of a straight climb with that power', 'V_c'),
  },
  formulas: [
    { output: 'thrust', tex: String.raw`P(T_\mathrm{max}) = P_a` },
    { output: 'limit', tex: String.raw`w = \operatorname{arg\,min}(T_P, T_\mathrm{stop}, T_\mathrm{stall})` },
    { output: 'reserve', tex: String.raw`\frac{T_\mathrm{max}}{W}` },
    { output: 'climbRate', tex: String.raw`P(W, V_c) = P_a` },
  ],
  source: 'Hover and axial climb by blade elements, as in hover.',
  validity: ['Still air, away from the ground, the speed of the rotor held. What a gust or a turn asks for beside the weight comes out of the reserve.', 'The drag of the fuselage in a climb is left out.', 'Past the onset of stall expect 10 % and more.'],
  compute: (inputs) => {
    const { speed, weight, power, maximumCollective } = inputs;
    const { elements, flow, roughness, inducedFactor } = readRotorShape(inputs, 0, ELEMENTS);
    const model = { ...realRotor, roughness, inducedFactor };
    const solver = new HoverSolver(elements, flow, model);
    const stop = maximumCollective ?? Infinity;
    /** Power in hand at a thrust, NaN where the blades cannot give it. */
    const inHand = (thrust: number): number => {
      const found = solver.forThrust(speed, thrust);
      return found === undefined ? Number.NaN : power - speed * found.torque;
    };
    const pitchOf = (thrust: number): number => solver.forThrust(speed, thrust)?.collective ?? Number.NaN;
    if (!(inHand(weight) >= 0) || pitchOf(weight) > stop) {
      const reason = Number.isNaN(inHand(weight)) ? 'the blades stall below it' : inHand(weight) < 0 ? 'the power does not reach' : 'the stop comes first';
      return { outputs: {}, warnings: [`thrust, reserve, limit and climbRate are left out: the rotor cannot carry the weight; ${reason}.`] };
    }
    let low = weight;
    let high = weight * GROWTH;
    while (inHand(high) > 0 && pitchOf(high) <= stop) [low, high] = [high, high * GROWTH];
    const within = (thrust: number): boolean => inHand(thrust) >= 0 && pitchOf(thrust) <= stop;
    // By halves: past the limit there may be no solution at all, so that there is nothing to interpolate.
    for (let step = 0; step < 24; step++) {
      const middle = (low + high) / 2;
      if (within(middle)) low = middle;
      else high = middle;
    }
    const limit = Number.isNaN(inHand(high)) ? 'stall of the blades' : pitchOf(high) > stop ? 'stop of the collective' : 'power';
    const atClimb = (climbRate: number): number => {
      const found = new HoverSolver(elements, { ...flow, climbRate }, model).forThrust(speed, weight);
      return found === undefined || found.collective > stop ? Number.NaN : power - speed * found.torque;
    };
    let fast = CLIMB_STEP;
    while (fast < MOST_CLIMB && atClimb(fast) > 0) fast += CLIMB_STEP;
    const climbing = atClimb(fast) < 0;
    return {
      outputs: { thrust: low, reserve: low / weight, limit, ...(climbing ? { climbRate: findRoot(atClimb, fast - CLIMB_STEP, fast) } : {}) },
      warnings: climbing ? [] : ['climbRate is left out: stall, or the stop of the collective, comes before the power is used up.'],
    };
  },
});
