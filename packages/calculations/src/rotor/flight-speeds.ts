import { STANDARD_GRAVITY, TrimSolver, inflowUnevenness, powerBand, realRotor } from '@rotorwright/rotor';
import { defineCalculation } from '../define.ts';
import { speedInput, textOutput } from '../specs.ts';
import { readRotorShape, rotorShapeInputs } from './rotor-shape.ts';
import { airspeedOutput, positive, powerOutput } from './rotor-specs.ts';

/** Of the blade, and around the azimuth: coarser than forward-trim, whose power it meets within 0.3 %. */
const ELEMENTS = 12;
const AZIMUTHS = 16;
/** Speeds of the curve, and the advance ratio of the last. */
const SPEEDS = 15;
const LAST_RATIO = 0.4;
/** More of the disc stalled than this is no steady flight. */
const MOST_STALL = 0.15;
/** Mach number of the advancing tip past which shocks take what power there is: near the drag divergence of a section of 12 %. */
const MOST_MACH = 0.8;

const powers = (title: string, symbol: string) => ({ ...powerOutput(title, symbol), list: true }) as const;

interface Point {
  readonly airspeed: number;
  readonly power: number;
  readonly low: number;
  readonly high: number;
  readonly stalled: number;
  /** Of the advancing tip */
  readonly mach: number;
}

export const flightSpeeds = defineCalculation({
  id: 'flight-speeds',
  title: 'Power over airspeed, and the best speeds',
  section: 'Rotor',
  summary: 'The power curve of level flight with its band, the speeds of the longest and the farthest flight, and the fastest that power and blades allow.',
  inputs: {
    ...rotorShapeInputs,
    speed: { ...speedInput('Speed of the rotor', 'n', 1760), above: 0 },
    mass: positive('Mass of the machine', 'm', 'kg', 'kg', 5.2),
    dragArea: { kind: 'number', title: 'Drag area of the fuselage', symbol: 'f', unit: 'm²', shown: 'm²', min: 0, example: 0.018 },
    flapInertia: positive('Moment of inertia of one blade about its flapping hinge', 'I_\\beta', 'kg·m²', 'kg·m²', 0.043),
    power: { kind: 'number', title: 'Power that the rotor can have', symbol: 'P_a', unit: 'W', shown: 'W', above: 0, optional: true, example: 1500 },
  },
  outputs: {
    enduranceSpeed: airspeedOutput('Airspeed of the longest flight', 'V_e'),
    endurancePower: powerOutput('Power of the rotor there', 'P_e'),
    rangeSpeed: airspeedOutput('Airspeed of the farthest flight', 'V_r'),
    rangePower: powerOutput('Power of the rotor there', 'P_r'),
    topSpeed: airspeedOutput('Fastest level flight', 'V_\\mathrm{max}'),
    topLimit: textOutput('What sets that limit', '-'),
    airspeed: { ...airspeedOutput('Airspeeds of the curve', 'V'), list: true },
    power: powers('Power there', 'P'),
    powerLow: powers('Power there, low', 'P_\\mathrm{low}'),
    powerHigh: powers('Power there, high', 'P_\\mathrm{high}'),
    stalledFraction: { title: 'Share of the disc on which stall has begun there', symbol: 's', unit: '-', shown: '%', list: true },
  },
  formulas: [
    { output: 'power', tex: String.raw`P(V)\ \text{as forward-trim has it}` },
    { output: 'airspeed', tex: String.raw`V_j = \frac{0.4\,\Omega R\,j}{14},\quad j = 0 \ldots 14` },
    { output: 'powerLow', tex: String.raw`P_\mathrm{low} = P - s_0 P_0 - s_i |P_i|` },
    { output: 'powerHigh', tex: String.raw`P_\mathrm{high} = P + s_0 P_0 + s_i |P_i|` },
    { output: 'stalledFraction', tex: String.raw`s(V)\ \text{as forward-trim has it}` },
    { output: 'enduranceSpeed', tex: String.raw`P(V_e) \to \min` },
    { output: 'endurancePower', tex: String.raw`P_e = P(V_e)` },
    { output: 'rangeSpeed', tex: String.raw`\frac{P(V_r)}{V_r} \to \min` },
    { output: 'rangePower', tex: String.raw`P_r = P(V_r)` },
    { output: 'topSpeed', tex: String.raw`P(V_\mathrm{max}) = P_a\ \text{or}\ s(V_\mathrm{max}) = 0.15\ \text{or}\ M(V_\mathrm{max}) = 0.8` },
    { output: 'topLimit', tex: String.raw`w = \operatorname{arg\,min}(V_P, V_s, V_M)` },
  ],
  source: 'As forward-trim, on 12 elements and 16 azimuths; parabola through the lowest three points of the curve. Advancing tips faster than Mach 0.8: drag divergence of a section of 12 %, by Korn’s equation (from memory).',
  validity: [
    'Level flight in still air, standard gravity. The power is that of the rotor: tail, gears and cooling come on top.',
    'The curve ends at an advance ratio of 0.4, at the first speed at which more than 15 % of the disc stall, or where no trim is found. Past 0.3, and with stall on more than a tenth of the disc, take it for an estimate.',
    'The drag area of a model fuselage is seldom known to better than a third: fast flight is the more uncertain.',
  ],
  compute: (inputs) => {
    const { speed, mass, dragArea, radius, flapInertia, power } = inputs;
    const { elements, flow, roughness, inducedFactor, scatter } = readRotorShape(inputs, 0, ELEMENTS);
    const weight = mass * STANDARD_GRAVITY;
    const unevenness = inflowUnevenness(readRotorShape(inputs, 0).elements, flow, { ...realRotor, inducedFactor, roughness }, speed, weight);
    if (unevenness === undefined) return nothing();
    const solver = new TrimSolver(elements, flow, { inertia: flapInertia, frequencyRatio: 1, cosine: 0, sine: 0 }, { azimuths: AZIMUTHS, inducedFactor, unevenness, roughness, tipLoss: true });
    const tipSpeed = speed * radius;
    const points: Point[] = [];
    for (let i = 0; i < SPEEDS; i++) {
      const airspeed = (LAST_RATIO * tipSpeed * i) / (SPEEDS - 1);
      const drag = 0.5 * flow.density * airspeed ** 2 * dragArea;
      const found = solver.solveFlight({ speed, weight, drag, airspeed, climbRate: 0 });
      if (found === undefined || !Number.isFinite(found.power)) break;
      const parasite = drag * airspeed;
      const band = powerBand({ profilePower: found.profilePower, inducedPower: found.power - found.profilePower - parasite }, 0, scatter);
      points.push({ airspeed, power: found.power, low: band.low + parasite, high: band.high + parasite, stalled: found.stalledFraction, mach: (tipSpeed * (1 + found.advanceRatio)) / inputs.speedOfSound });
      if (found.stalledFraction > MOST_STALL) break;
    }
    if (points.length === 0) return nothing();
    const longest = lowest(points, ({ power: drawn }) => drawn);
    const farthest = lowest(points.slice(1), ({ power: drawn, airspeed }) => drawn / airspeed);
    const top = fastest(points, power);
    const at = (airspeed: number): number => between(points, airspeed, ({ power: drawn }) => drawn);
    return {
      outputs: {
        ...(longest === undefined ? {} : { enduranceSpeed: longest, endurancePower: at(longest) }),
        ...(farthest === undefined ? {} : { rangeSpeed: farthest, rangePower: at(farthest) }),
        ...(top === undefined ? {} : { topSpeed: top.airspeed, topLimit: top.limit }),
        airspeed: points.map(({ airspeed }) => airspeed),
        power: points.map(({ power: drawn }) => drawn),
        powerLow: points.map(({ low }) => low),
        powerHigh: points.map(({ high }) => high),
        stalledFraction: points.map(({ stalled }) => stalled),
      },
      warnings: [
        ...(longest === undefined ? ['enduranceSpeed and endurancePower are left out: the power is least at an end of the curve.'] : []),
        ...(farthest === undefined ? ['rangeSpeed and rangePower are left out: they lie at an end of the curve.'] : []),
        ...(top === undefined ? ['topSpeed and topLimit are left out: the power does not suffice for hover.'] : []),
      ],
    };
  },
});

function nothing() {
  return { outputs: {}, warnings: ['Everything is left out: not even in hover a trim was found. A slower or lighter machine, or faster or broader blades, would have one.'] } as const;
}

/** Airspeed at which something is least: the parabola through the lowest point and its neighbours; undefined at an end. */
function lowest(points: readonly Point[], of: (point: Point) => number): number | undefined {
  const values = points.map(of);
  const index = values.indexOf(Math.min(...values));
  const [left, here, right] = [values[index - 1], values[index], values[index + 1]];
  if (left === undefined || here === undefined || right === undefined) return undefined;
  const step = points[index + 1]!.airspeed - points[index]!.airspeed;
  return points[index]!.airspeed + (0.5 * step * (left - right)) / (left - 2 * here + right);
}

/** The parabola through the three points nearest to an airspeed. */
function between(points: readonly Point[], airspeed: number, of: (point: Point) => number): number {
  const step = points[1]!.airspeed - points[0]!.airspeed;
  const middle = Math.max(1, Math.min(points.length - 2, Math.round(airspeed / step)));
  const x = airspeed / step - middle;
  const [left, here, right] = [of(points[middle - 1]!), of(points[middle]!), of(points[middle + 1]!)];
  return here + (x * (right - left)) / 2 + (x ** 2 * (left - 2 * here + right)) / 2;
}

function fastest(points: readonly Point[], available: number | undefined): { readonly airspeed: number; readonly limit: string } | undefined {
  const most = available ?? Infinity;
  if (points[0]!.power > most) return undefined;
  const past = points.findIndex(({ power, stalled, mach }) => power > most || stalled > MOST_STALL || mach > MOST_MACH);
  if (past < 0) return { airspeed: points.at(-1)!.airspeed, limit: points.length < SPEEDS ? 'stall: faster no trim was found' : 'end of the curve, an advance ratio of 0.4' };
  const [from, to] = [points[past - 1] ?? points[0]!, points[past]!];
  const share = (value: number, a: number, b: number): number => (value - a) / (b - a);
  const byPower = to.power > most ? share(most, from.power, to.power) : 1;
  const byStall = to.stalled > MOST_STALL ? share(MOST_STALL, from.stalled, to.stalled) : 1;
  const byMach = to.mach > MOST_MACH ? share(MOST_MACH, from.mach, to.mach) : 1;
  const first = Math.min(byPower, byStall, byMach);
  const limit = first === byPower && to.power > most ? 'power' : first === byStall && to.stalled > MOST_STALL ? 'stall of the blade that goes back' : 'shocks on the blade that goes ahead';
  return { airspeed: from.airspeed + Math.max(0, first) * (to.airspeed - from.airspeed), limit };
}
