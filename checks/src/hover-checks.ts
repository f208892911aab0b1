import type { Check } from './check.ts';
import { plainHover } from './hovering-rotor.ts';
import { sourced } from './rows.ts';
import { told } from './told.ts';

const rotor = { blades: 2, radius: 0.8, rootCutout: 0.14, chord: 0.06, airfoil: 'NACA 0012', speed: 180, density: 1.225 };
const THRUST = 60;
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
const curve = Array.from({ length: 15 }, (_, j) => (0.4 * TIP * j) / 14);
/** With so little drag the whole curve is flown. */
const slender = { ...flight, dragArea: 0.008 };
const slenderly = (output: string): readonly number[] => curve.map((airspeed) => told('forward-trim', { ...slender, airspeed }, output));

/** A tail that gives 0.14·b·c·ρR·(iΩR)² at its stall, the blade loading of 0.14, a metre behind the mast. */
const tail = { ...rotor, thrust: THRUST, lowSpeed: 150, highSpeed: 200, tailRatio: 5, arm: '1 m', tailBlades: 2, tailRadius: '100 mm', tailChord: '20 mm', maximumPitch: '40 °' };
const tailThrust = (main: number): number => 0.14 * 2 * 0.02 * 1.225 * 0.1 * (5 * main * 0.1) ** 2;
const tailNeeded = (main: number): number => told('hover', { ...hover, speed: main }, 'torqueHigh');

/** Main rotor speed at which that tail just holds hover, by halves. */
function holding(): number {
  let [low, high] = [150, 200];
  while (high - low > 1e-3) {
    const middle = (low + high) / 2;
    if (tailThrust(middle) < tailNeeded(middle)) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const law = { liftSlope: 5.73, cd0: 0.012, cd2: 0.3 };
const simple = { blades: 2, radius: 0.8, rootCutout: 0.14, chord: 0.06, speed: 180, density: 1.225, viscosity: 1.8e-5, collective: 0.1 };
const plainly = plainHover({ ...simple, ...law });
const lawful = { ...simple, airfoil: law };
const halfWidth = 0.2 * plainly.profilePower + 0.07 * (plainly.power - plainly.profilePower);
/** What half a degree of pitch makes of the power, for the pitch is given: from a quarter of a degree to either side. */
const pitched = ((plainHover({ ...simple, ...law, collective: 0.1 + Math.PI / 720 }).power - plainHover({ ...simple, ...law, collective: 0.1 - Math.PI / 720 }).power) / 2) * 2;
const simpleThrust = told('hover', lawful, 'thrust');

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
  ...sourced({ document: 'Ring by ring, each by halving its inflow angle', place: 'straight lift, drag 0.012 + 0.3 α², 0.1 rad', kind: 'independent route' }, [
    ['middles of sixty rings', 'hover', lawful, 'r', plainly.r, 1e-12, 'relative'],
    ['pitch less inflow', 'hover', lawful, 'angleOfAttack', plainly.angleOfAttack, 1e-8, 'absolute'],
    ['density, speed and chord over viscosity', 'hover', lawful, 'reynolds', plainly.reynolds, 1e-8, 'relative'],
    ['force along the axis', 'hover', lawful, 'lift', plainly.lift, 1e-6, 'relative'],
    ['its sum', 'hover', lawful, 'thrust', plainly.thrust, 1e-8, 'relative'],
    ['what the torque takes', 'hover', lawful, 'power', plainly.power, 1e-8, 'relative'],
    ['… for the drag', 'hover', lawful, 'profilePower', plainly.profilePower, 1e-8, 'relative'],
    ['less a fifth of the drag, 7 % of the lift and half a degree of pitch', 'hover', lawful, 'powerLow', plainly.power - halfWidth - pitched, 1e-4, 'relative'],
    ['… over the speed', 'hover', lawful, 'torqueLow', (plainly.power - halfWidth - pitched) / 180, 1e-4, 'relative'],
    ['more by as much', 'hover', lawful, 'torqueHigh', (plainly.power + halfWidth + pitched) / 180, 1e-4, 'relative'],
    ['asked for that thrust, without the pitch', 'hover', { ...lawful, collective: undefined, thrust: simpleThrust }, 'powerLow', plainly.power - halfWidth, 1e-6, 'relative'],
  ]),
  ...sourced({ document: 'hover, asked the other way round', kind: 'independent route' }, [
    ['with the power that 110 N take, 110 N are the most; half as many elements along the blade', 'hover-limits', limits, 'thrust', heavy, 2e-3, 'relative'],
    ['… 110 N over 60 N', 'hover-limits', limits, 'reserve', heavy / THRUST, 2e-3, 'relative'],
    ['… and the power sets the limit', 'hover-limits', limits, 'limit', 'power', 0, 'absolute'],
    ['the torque of hover, high, a metre behind the mast, at 33 speeds', 'tail-speeds', tail, 'needed', Array.from({ length: 33 }, (_, j) => tailNeeded(150 + (50 * j) / 32)), 2e-3, 'relative'],
    ['where the tail that stalls at 0.14 b·c·ρR·(iΩR)² just gives it', 'tail-speeds', tail, 'leastSpeedHover', holding(), 2e-3, 'relative'],
    ['with the power that a climb of 3 m/s takes it climbs at 3 m/s', 'hover-limits', climbing, 'climbRate', 3, 5e-3, 'relative'],
  ]),
  ...sourced({ document: 'Two independent estimates of equal worth: the mean, with 1/√2 of the width of each', kind: 'law' }, [
    ['measured as expected, to the same accuracy: the band loses 1 − 1/√2 of its width', 'hover-calibration', measured, 'narrowing', 1 - Math.SQRT1_2, 1e-3, 'relative'],
    ['… the power stays', 'hover-calibration', measured, 'power', POWER, 1e-6, 'relative'],
    ['… and so do the blades', 'hover-calibration', measured, 'roughness', told('hover-calibration', { ...measured, powerAccuracy: 1 }, 'roughness'), 1e-4, 'relative'],
    ['… as it was before', 'hover-calibration', measured, 'powerBefore', POWER, 1e-9, 'relative'],
    ['… between a band 1/√2 as wide', 'hover-calibration', measured, 'powerLow', POWER - HALF * Math.SQRT1_2, 1e-4, 'relative'],
    ['… on either side', 'hover-calibration', measured, 'powerHigh', POWER + HALF * Math.SQRT1_2, 1e-4, 'relative'],
    ['20 % of scatter over √2', 'hover-calibration', measured, 'dragScatter', 0.2 * Math.SQRT1_2, 1e-4, 'relative'],
    ['7 % over √2', 'hover-calibration', measured, 'inducedScatter', 0.07 * Math.SQRT1_2, 1e-4, 'relative'],
    ['a power says nothing of the induced factor', 'hover-calibration', measured, 'inducedFactor', 1.08, 1e-12, 'relative'],
    ['a collective as expected leaves nothing over', 'hover-calibration', { ...rotor, thrust: THRUST, measuredCollective: of('collective') }, 'pitchDeviation', 0, 1e-6, 'absolute'],
  ]),
  ...sourced({ document: 'forward-trim on its own finer grid, least value sought by thirds', kind: 'independent route' }, [
    ['airspeed of the least power', 'flight-speeds', flight, 'enduranceSpeed', longest, 0.06, 'relative'],
    ['the power there', 'flight-speeds', flight, 'endurancePower', trimmed(longest), 0.01, 'relative'],
    ['airspeed of the least power over airspeed', 'flight-speeds', flight, 'rangeSpeed', farthest, 0.04, 'relative'],
    ['the power there', 'flight-speeds', flight, 'rangePower', trimmed(farthest), 0.02, 'relative'],
    ['… and the power sets that limit', 'flight-speeds', { ...flight, power: trimmed(30) }, 'topLimit', 'power', 0, 'absolute'],
    // By hand: 144 m/s and 0.8·a − 144 m/s = 20 m/s along the disc, which leans by some degrees; straight between two points of the curve.
    ['in air with 205 m/s the tip meets 0.8 of that near 20 m/s', 'flight-speeds', { ...slender, speedOfSound: 205 }, 'topSpeed', 20, 0.03, 'relative'],
    ['… and shocks set the limit', 'flight-speeds', { ...slender, speedOfSound: 205 }, 'topLimit', 'shocks on the blade that goes ahead', 0, 'absolute'],
    ['fifteen speeds up to 0.4 of the tip speed', 'flight-speeds', slender, 'airspeed', curve, 1e-12, 'relative'],
    ['the power at each', 'flight-speeds', slender, 'power', slenderly('power'), 0.006, 'relative'],
    ['… low', 'flight-speeds', slender, 'powerLow', slenderly('powerLow'), 0.006, 'relative'],
    ['… high', 'flight-speeds', slender, 'powerHigh', slenderly('powerHigh'), 0.006, 'relative'],
    // A coarse grid sees the edge of the stall in steps of a twentieth of a blade and a sixteenth of a turn.
    ['share of the disc that stalls at each', 'flight-speeds', slender, 'stalledFraction', slenderly('stalledFraction'), 0.02, 'absolute'],
    ['with the power that 30 m/s take, 30 m/s is the fastest', 'flight-speeds', { ...flight, power: trimmed(30) }, 'topSpeed', 30, 0.01, 'relative'],
  ]),
];
