import { answer, isCalcProblem } from '@rotorwright/calculations';
import data from '../data/measured-rotors.json' with { type: 'json' };
import type { Check, Source } from './check.ts';

const DEGREE = Math.PI / 180;
const RPM = Math.PI / 30;
const DENSITY = 1.225;

type Inputs = Readonly<Record<string, unknown>>;

/** One measured condition: the rotor as it is set, and thrust and power as they were measured. */
interface MeasuredPoint {
  readonly set: string;
  readonly title: string;
  readonly source: Source;
  readonly inputs: Inputs;
  /** Blade pitch [rad] */
  readonly collective: number;
  /** N */
  readonly thrust: number;
  /** W; of TN 2474 less that at zero thrust */
  readonly power?: number;
  readonly speed: number;
}

const published = (document: string): Source => ({ document, kind: 'published' });
const row = (values: readonly (number | null)[], index: number): number => values[index]!;

/** Thrust and torque of coefficients on the tip speed. */
function scales(radius: number, speed: number): { readonly thrust: number; readonly torque: number } {
  const thrust = DENSITY * Math.PI * radius ** 2 * (speed * radius) ** 2;
  return { thrust, torque: thrust * radius };
}

const tn626: readonly MeasuredPoint[] = Object.entries(data.tn626.blades).flatMap(([blades, rows]) => {
  const { radius, chord, rootCutout, airfoil, rpm } = data.tn626.rotor;
  const speed = rpm * RPM;
  const scale = scales(radius, speed);
  return rows.map((values) => ({
    set: 'TN-626',
    title: `${blades} blades at ${row(values, 0)}°`,
    source: published(data.tn626.source),
    inputs: { blades: Number(blades), radius, rootCutout, chord, airfoil, speed, viscosity: 1.46e-5 * DENSITY },
    collective: row(values, 0) * DEGREE,
    thrust: row(values, 1) * scale.thrust,
    power: row(values, 2) * scale.torque * speed,
    speed,
  }));
});

const tn2474: readonly MeasuredPoint[] = data.tn2474.rows.map((values) => {
  const { blades, radius, chord, rootCutout, airfoil, rpm, kinematicViscosity } = data.tn2474.rotor;
  const speed = rpm * RPM;
  const scale = scales(radius, speed);
  const torque = values[2];
  return {
    set: 'TN 2474',
    title: `3 blades at ${row(values, 0)}°`,
    source: published(data.tn2474.source),
    inputs: { blades, radius, rootCutout, chord, airfoil, speed, viscosity: kinematicViscosity * DENSITY },
    collective: row(values, 0) * DEGREE,
    thrust: row(values, 1) * scale.thrust,
    ...(typeof torque === 'number' ? { power: torque * scale.torque * speed } : {}),
    speed,
  };
});

const uiuc: readonly MeasuredPoint[] = data.uiuc.rows.map((values) => {
  const { blades, diameter, geometry, name } = data.uiuc.propeller;
  const radius = diameter / 2;
  const { alpha_deg: alpha, Re: reynolds, cl, cd } = data.uiuc.polar;
  const turns = row(values, 0) / 60;
  return {
    set: 'UIUC',
    title: `${name} at ${Math.round(row(values, 0))} rpm`,
    source: published(data.uiuc.source),
    inputs: {
      blades,
      radius,
      rootCutout: geometry[0]![0]! * radius,
      chord: geometry.map((station) => ({ r: station[0]! * radius, chord: station[1]! * radius })),
      twist: geometry.map((station) => ({ r: station[0]! * radius, twist: station[2]! * DEGREE })),
      airfoil: { reynolds, alpha: alpha.map((angle) => angle * DEGREE), cl, cd },
      speed: turns * 2 * Math.PI,
      viscosity: 1.46e-5 * DENSITY,
    },
    collective: 0,
    thrust: row(values, 1) * DENSITY * turns ** 2 * diameter ** 4,
    power: row(values, 2) * DENSITY * turns ** 3 * diameter ** 5,
    speed: turns * 2 * Math.PI,
  };
});

/** Thrust at the pitch that was set. Two runs of one rotor differ by up to 12 % (NACA TN 2474); below 3° a tenth of a degree counts as much. */
export const measuredThrusts: readonly Check[] = [...tn626, ...tn2474, ...uiuc]
  .filter(({ set, collective }) => set === 'UIUC' || collective > 3 * DEGREE)
  .map(({ set, title, source, inputs, collective, thrust }) => ({
    calculation: 'hover',
    title: `${set}, ${title}: thrust`,
    source,
    inputs: { ...inputs, collective },
    output: 'thrust',
    expected: thrust,
    tolerance: 0.12,
    mode: 'relative',
  }));

/** How far a set of measured points and the calculation lie apart. */
export interface Gate {
  readonly title: string;
  readonly source: Source;
  /** Root mean square of the deviations, and what it must not pass; of shares, or of degrees. */
  readonly rms: number;
  readonly limit: number;
  readonly points: number;
}

/** Outputs of hover, all single numbers. */
function hover(inputs: Inputs): Readonly<Record<string, number>> {
  const answered = answer('hover', inputs);
  if (isCalcProblem(answered)) throw new Error(JSON.stringify(answered.problems));
  return Object.fromEntries(Object.entries(answered.outputs).flatMap(([name, value]) => (typeof value === 'object' && 'value' in value && typeof value.value === 'number' ? [[name, value.value]] : [])));
}

const rootMeanSquare = (values: readonly number[]): number => Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);

function gate(title: string, limit: number, points: readonly MeasuredPoint[], deviation: (point: MeasuredPoint) => number): Gate {
  return { title, source: points[0]!.source, rms: rootMeanSquare(points.map(deviation)), limit, points: points.length };
}

const between = (points: readonly MeasuredPoint[], from: number, to: number): readonly MeasuredPoint[] => points.filter(({ collective }) => collective >= from * DEGREE && collective <= to * DEGREE);

const atPitch = ({ inputs, collective }: MeasuredPoint): Readonly<Record<string, number>> => hover({ ...inputs, collective });
const atThrust = ({ inputs, thrust }: MeasuredPoint): Readonly<Record<string, number>> => hover({ ...inputs, thrust });
const thrustAtPitch = (point: MeasuredPoint): number => atPitch(point)['thrust']! / point.thrust - 1;
const pitchAtThrust = (point: MeasuredPoint): number => (atThrust(point)['collective']! - point.collective) / DEGREE;
const powerAtThrust = (point: MeasuredPoint): number => atThrust(point)['power']! / point.power! - 1;
const powerAtPitch = (point: MeasuredPoint): number => atPitch(point)['power']! / point.power! - 1;
const addedPowerAtThrust = (point: MeasuredPoint): number => (atThrust(point)['power']! - hover({ ...point.inputs, thrust: 0 })['power']!) / point.power! - 1;

/** The measured sets as wholes: default settings, nothing set per case. */
export function rotorGates(): readonly Gate[] {
  const knight = between(tn626, 4, 90);
  const castles = between(tn2474, 3, 10);
  return [
    gate('TN-626 from 4°: thrust at pitch', 0.05, knight, thrustAtPitch),
    gate('TN-626 from 4°: torque at thrust', 0.06, knight, powerAtThrust),
    gate('TN-626 from 4°: pitch at thrust, degrees', 0.3, knight, pitchAtThrust),
    gate('TN 2474, 3° to 10°: thrust at pitch', 0.06, castles, thrustAtPitch),
    gate('TN 2474, 3° to 10°: torque above that at zero thrust, at thrust', 0.1, castles, addedPowerAtThrust),
    gate('TN 2474, 3° to 10°: pitch at thrust, degrees', 0.4, castles, pitchAtThrust),
    gate('TN 2474 above 10°: thrust at pitch', 0.1, between(tn2474, 10.01, 90), thrustAtPitch),
    gate('UIUC static: thrust', 0.05, uiuc, thrustAtPitch),
    gate('UIUC static: power', 0.08, uiuc, powerAtPitch),
  ];
}

/** Share of the measured powers that lie in the band: at the thrust measured (TN-626), at the pitch set (UIUC). */
export function bandCoverage(): { readonly inside: number; readonly points: number } {
  const bands = [...tn626.map((point) => [point, atThrust(point)] as const), ...uiuc.map((point) => [point, atPitch(point)] as const)];
  const inside = bands.filter(([{ power }, found]) => found['powerLow']! <= power! && power! <= found['powerHigh']!);
  return { inside: inside.length, points: bands.length };
}

/** Thrust over that measured at tip Mach numbers up to 0.88, and the growth of the thrust with the pitch. */
export function transonicRotor(): { readonly thrustRatios: readonly number[]; readonly from8To12: number; readonly from5To8: number } {
  const { blades, radius, chord, rootCutout, airfoil } = data.tm81232.rotor;
  const coefficient = (degrees: number, rpm: number): number => hover({ blades, radius, chord, rootCutout, airfoil, speed: rpm * RPM, collective: degrees * DEGREE })['thrustCoefficient']!;
  const slow = data.tm81232.rows[0]![1]!;
  return {
    thrustRatios: data.tm81232.rows.map((values) => coefficient(row(values, 0), row(values, 1)) / row(values, 2)),
    from8To12: coefficient(12, slow) / coefficient(8, slow),
    from5To8: coefficient(8, slow) / coefficient(5, slow),
  };
}
