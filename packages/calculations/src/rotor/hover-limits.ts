import { findLimit } from '@rotorwright/mechanics';
import { HoverSolver, realRotor, type HoverSolution } from '@rotorwright/rotor';
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
/** Of the weight, and of a climb in m/s: hover itself is solved no closer. */
const CLOSE = 1e-8;

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
    /** Share of the power, or pitch to the stop, that is left: whichever is less; NaN where the blades cannot give the thrust. */
    const roomIn = (found: HoverSolution | undefined): number => (found === undefined ? Number.NaN : Math.min(1 - (speed * found.torque) / power, stop - found.collective));
    const atThrust = (thrust: number): number => roomIn(solver.forThrust(speed, thrust));
    const hovering = solver.forThrust(speed, weight);
    if (!(roomIn(hovering) >= 0)) {
      const reason = hovering === undefined ? 'the blades stall below it' : speed * hovering.torque > power ? 'the power does not reach' : 'the stop comes first';
      return { outputs: {}, warnings: [`thrust, reserve, limit and climbRate are left out: the rotor cannot carry the weight; ${reason}.`] };
    }
    let enough = weight;
    while (atThrust(enough * GROWTH) >= 0) enough *= GROWTH;
    const [most, past] = findLimit(atThrust, enough, enough * GROWTH, CLOSE * weight);
    const next = solver.forThrust(speed, past);
    const limit = next === undefined ? 'stall of the blades' : next.collective > stop ? 'stop of the collective' : 'power';
    const atClimb = (climbRate: number): number => {
      const found = new HoverSolver(elements, { ...flow, climbRate }, model).forThrust(speed, weight);
      return found === undefined || found.collective > stop ? Number.NaN : 1 - (speed * found.torque) / power;
    };
    let fast = CLIMB_STEP;
    let left = atClimb(fast);
    while (left >= 0 && fast < MOST_CLIMB) left = atClimb((fast += CLIMB_STEP));
    const climbing = left < 0;
    return {
      outputs: { thrust: most, reserve: most / weight, limit, ...(climbing ? { climbRate: findLimit(atClimb, fast - CLIMB_STEP, fast, CLOSE)[0] } : {}) },
      warnings: climbing ? [] : ['climbRate is left out: stall, or the stop of the collective, comes before the power is used up.'],
    };
  },
});
