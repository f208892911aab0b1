import { answer, isCalcProblem } from '@rotorwright/calculations';
import type { Check } from './check.ts';
import { plain } from './deviation.ts';
import { sourced } from './rows.ts';

const rotor = { blades: 2, radius: 0.8, rootCutout: 0.14, chord: 0.06, airfoil: 'NACA 0012', speed: 180, density: 1.225 };
const THRUST = 60;
/** A number of another answer, on which a check that turns the question round stands. */
function told(calculation: string, inputs: Readonly<Record<string, unknown>>, output: string): number {
  const answered = answer(calculation, inputs);
  if (isCalcProblem(answered)) throw new RangeError(`${calculation} refuses what a check asks of it`);
  const found = answered.outputs[output];
  const value = found && plain(found);
  if (typeof value !== 'number') throw new RangeError(`${calculation} has no number ${output} for a check`);
  return value;
}

const hover = { ...rotor, thrust: THRUST };
const of = (output: string): number => told('hover', hover, output);
const TIP = 180 * 0.8;
const DISC = 1.225 * Math.PI * 0.8 ** 2;
const SOLIDITY = (2 * 0.06) / (Math.PI * 0.8);
const POWER = of('power');
const HALF = (of('powerHigh') - of('powerLow')) / 2;
const IDEAL = THRUST * Math.sqrt(THRUST / (2 * DISC));

const measured = { ...rotor, thrust: THRUST, measuredPower: POWER, powerAccuracy: HALF / POWER };
const heavy = 110;
const limits = { ...rotor, weight: THRUST, power: told('hover', { ...rotor, thrust: heavy }, 'power') };
const climbing = { ...rotor, weight: THRUST, power: told('hover', { ...hover, climbRate: 3 }, 'power') };

const flight = { blades: 2, radius: 0.8, rootCutout: 0.14, chord: 0.06, airfoil: 'NACA 0012', speed: 180, mass: 5, dragArea: 0.02, flapInertia: 0.05, density: 1.225 };
const trimmed = (airspeed: number): number => told('forward-trim', { ...flight, airspeed }, 'power');

/** Airspeed at which something of forward-trim is least, by thirds: another search on a finer blade than flight-speeds has. */
function least(of: (airspeed: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > 0.05) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (of(a) < of(b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

const longest = least(trimmed, 4, 24);
const farthest = least((airspeed) => trimmed(airspeed) / airspeed, 10, 34);

/** Hover by its definitions, and the questions that turn it round. */
export const hoverChecks: readonly Check[] = [
  ...sourced({ document: 'Definitions of the coefficients', place: 'C_T = T/ρA(ΩR)², σ = bc/πR, M = T·√(T/2ρA)/P', kind: 'law' }, [
    ['180 rad/s on 0.8 m: 144 m/s', 'hover', hover, 'tipSpeed', TIP, 1e-12, 'relative'],
    ['144 m/s in air with 340.294 m/s', 'hover', hover, 'tipMach', TIP / 340.294, 1e-6, 'relative'],
    ['60 N over ρA(ΩR)²', 'hover', hover, 'thrustCoefficient', THRUST / (DISC * TIP ** 2), 1e-6, 'relative'],
    ['… over the solidity', 'hover', hover, 'bladeLoading', THRUST / (DISC * TIP ** 2) / SOLIDITY, 1e-6, 'relative'],
    ['power over speed', 'hover', hover, 'torque', POWER / 180, 1e-12, 'relative'],
    ['torque over ρAR(ΩR)²', 'hover', hover, 'torqueCoefficient', POWER / 180 / (DISC * 0.8 * TIP ** 2), 1e-9, 'relative'],
    ['least power over power', 'hover', hover, 'figureOfMerit', IDEAL / POWER, 1e-6, 'relative'],
    ['what is not drag is lift', 'hover', hover, 'inducedPower', POWER - of('profilePower'), 1e-9, 'relative'],
    ['the band lies as far above as below', 'hover', hover, 'powerHigh', POWER + HALF, 1e-9, 'relative'],
    ['nothing stalls at a lift of some 0.3', 'hover', hover, 'stalledFraction', 0, 0, 'absolute'],
    ['pitch that gives the thrust gives it', 'hover', { ...rotor, collective: of('collective') }, 'thrust', THRUST, 1e-6, 'relative'],
    ['and thrust gives that pitch back', 'hover', { ...rotor, thrust: told('hover', { ...rotor, collective: 0.1 }, 'thrust') }, 'collective', 0.1, 1e-6, 'relative'],
  ]),
  ...sourced({ document: 'hover, asked the other way round', kind: 'independent route' }, [
    ['with the power that 110 N take, 110 N are the most; half as many elements along the blade', 'hover-limits', limits, 'thrust', heavy, 2e-3, 'relative'],
    ['… 110 N over 60 N', 'hover-limits', limits, 'reserve', heavy / THRUST, 2e-3, 'relative'],
    ['… and the power sets the limit', 'hover-limits', limits, 'limit', 'power', 0, 'absolute'],
    ['with the power that a climb of 3 m/s takes it climbs at 3 m/s', 'hover-limits', climbing, 'climbRate', 3, 5e-3, 'relative'],
  ]),
  ...sourced({ document: 'Two independent estimates of equal worth: the mean, with 1/√2 of the width of each', kind: 'law' }, [
    ['measured as expected, to the same accuracy: the band loses 1 − 1/√2 of its width', 'hover-calibration', measured, 'narrowing', 1 - Math.SQRT1_2, 1e-3, 'relative'],
    ['… the power stays', 'hover-calibration', measured, 'power', POWER, 1e-6, 'relative'],
    ['… and so do the blades', 'hover-calibration', measured, 'roughness', told('hover-calibration', { ...measured, powerAccuracy: 1 }, 'roughness'), 1e-4, 'relative'],
    ['a collective as expected leaves nothing over', 'hover-calibration', { ...rotor, thrust: THRUST, measuredCollective: of('collective') }, 'pitchDeviation', 0, 1e-6, 'absolute'],
  ]),
  ...sourced({ document: 'forward-trim on its own finer grid, least value sought by thirds', kind: 'independent route' }, [
    ['airspeed of the least power', 'flight-speeds', flight, 'enduranceSpeed', longest, 0.06, 'relative'],
    ['the power there', 'flight-speeds', flight, 'endurancePower', trimmed(longest), 0.01, 'relative'],
    ['airspeed of the least power over airspeed', 'flight-speeds', flight, 'rangeSpeed', farthest, 0.04, 'relative'],
    ['the power there', 'flight-speeds', flight, 'rangePower', trimmed(farthest), 0.02, 'relative'],
    ['with the power that 30 m/s take, 30 m/s is the fastest', 'flight-speeds', { ...flight, power: trimmed(30) }, 'topSpeed', 30, 0.01, 'relative'],
  ]),
];
