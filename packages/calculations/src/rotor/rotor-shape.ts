import { DRAG_SCATTER, INDUCED_SCATTER, REAL_INDUCED_FACTOR, REAL_ROUGHNESS, bladeElements, givenSection, naca0012, naca0015, type BladeElements, type Flow, type Scatter, type Section } from '@rotorwright/rotor';
import { CalculationError } from '../define.ts';
import { refusing } from '../refuse.ts';
import { countInput, degrees, lengthInput } from '../specs.ts';
import { density, positive } from './rotor-specs.ts';

const builtIn: ReadonlyMap<string, Section> = new Map([
  ['NACA 0012', naca0012()],
  ['NACA 0015', naca0015()],
]);

const radial = { kind: 'number', title: 'From the rotor axis', symbol: 'r', unit: 'm', shown: 'mm', min: 0, default: 0 } as const;
const numbers = (title: string, symbol: string, unit: string, shown: string) => ({ kind: 'number', title, symbol, unit, shown }) as const;
const rows = (title: string, symbol: string) =>
  ({ kind: 'list', title: `${title}, one row for each Reynolds number, with one value for each angle`, optional: true, of: { kind: 'list', title: 'Row', of: numbers(title, symbol, '-', '-') } }) as const;

/** Sea level of ISO 2533:1975. */
const VISCOSITY = 1.789e-5;
const SPEED_OF_SOUND = 340.294;

/** The rotor and its air, as hover and forward-trim ask for them. */
export const rotorShapeInputs = {
  blades: countInput('Blades', 'b', 2),
  radius: lengthInput('Radius of the rotor', 'R', 775),
  rootCutout: { kind: 'number', title: 'Where the blade begins, from the rotor axis', symbol: 'r_0', unit: 'm', shown: 'mm', min: 0, example: 0.14 },
  chord: {
    kind: 'list',
    title: 'Chord, straight between the radii given',
    atLeast: 1,
    single: 'chord',
    of: { kind: 'record', title: 'Station', fields: { r: radial, chord: { kind: 'number', title: 'Chord', symbol: 'c', unit: 'm', shown: 'mm', above: 0 } } },
    example: [{ r: 0, chord: 0.062 }],
  },
  twist: {
    kind: 'list',
    title: 'Twist: pitch less the collective, straight between the radii given',
    optional: true,
    of: { kind: 'record', title: 'Station', fields: { r: radial, twist: { kind: 'number', title: 'Twist', symbol: '\\theta_t', unit: 'rad', shown: '°', default: 0 } } },
  },
  airfoil: {
    kind: 'record',
    title: 'Section: a name, a drag law with its lift slope, or a table',
    shorthand: 'name',
    fields: {
      name: { kind: 'choice', title: 'Name of the section', choices: [...builtIn.keys()], optional: true, example: 'NACA 0012' },
      liftSlope: { kind: 'number', title: 'Lift slope', symbol: 'a', unit: '1/rad', shown: '1/rad', above: 0, max: 100, optional: true },
      cd0: { kind: 'number', title: 'Drag coefficient without lift', symbol: 'c_{d0}', unit: '-', shown: '-', min: 0, max: 10, optional: true },
      cd2: { kind: 'number', title: 'Growth of the drag with the square of the angle', symbol: 'c_{d2}', unit: '1/rad²', shown: '1/rad²', min: 0, max: 1000, optional: true },
      reynolds: { kind: 'list', title: 'Reynolds numbers of the table, ascending', optional: true, of: { kind: 'number', title: 'Reynolds number', symbol: 'Re', unit: '-', shown: '-', above: 0 } },
      alpha: { kind: 'list', title: 'Angles of attack of the table, ascending', optional: true, of: { kind: 'number', title: 'Angle of attack', symbol: '\\alpha', unit: 'rad', shown: '°', min: -Math.PI, max: Math.PI } },
      cl: rows('Lift coefficient', 'c_l'),
      cd: rows('Drag coefficient', 'c_d'),
    },
  },
  density,
  viscosity: { kind: 'number', title: 'Dynamic viscosity of the air', symbol: '\\mu', unit: 'Pa·s', shown: 'Pa·s', above: 0, default: VISCOSITY, example: VISCOSITY },
  speedOfSound: { ...positive('Speed of sound', 'a', 'm/s', 'm/s', SPEED_OF_SOUND), default: SPEED_OF_SOUND },
  roughness: { kind: 'number', title: `Drag of the blade over that of its section; ${REAL_ROUGHNESS} when not given, 1 with a drag law, which speaks of the blade itself`, symbol: 'k', unit: '-', shown: '-', above: 0, max: 10, optional: true, example: REAL_ROUGHNESS },
  inducedFactor: { ...positive('Induced speed over that of momentum theory', '\\kappa', '-', '-', REAL_INDUCED_FACTOR), max: 2, default: REAL_INDUCED_FACTOR },
  dragScatter: { kind: 'number', title: 'Share by which the drag of blades may differ', symbol: 's_0', unit: '-', shown: '%', above: 0, max: 1, default: DRAG_SCATTER, example: DRAG_SCATTER },
  inducedScatter: { kind: 'number', title: 'Share by which the induced power may differ', symbol: 's_i', unit: '-', shown: '%', above: 0, max: 1, default: INDUCED_SCATTER, example: INDUCED_SCATTER },
} as const;

export const collectiveInput = { kind: 'number', title: 'Collective: pitch where the twist is 0', symbol: '\\theta', unit: 'rad', shown: '°', min: -degrees(40), max: degrees(40), optional: true } as const;

interface AirfoilInput {
  readonly name?: string;
  readonly liftSlope?: number;
  readonly cd0?: number;
  readonly cd2?: number;
  readonly reynolds?: readonly number[];
  readonly alpha?: readonly number[];
  readonly cl?: readonly (readonly number[])[];
  readonly cd?: readonly (readonly number[])[];
}

export interface RotorShapeInput {
  readonly blades: number;
  readonly radius: number;
  readonly rootCutout: number;
  readonly chord: readonly { readonly r: number; readonly chord: number }[];
  readonly twist?: readonly { readonly r: number; readonly twist: number }[];
  readonly airfoil: AirfoilInput;
  readonly density: number;
  readonly viscosity: number;
  readonly speedOfSound: number;
  readonly roughness?: number;
  readonly inducedFactor: number;
  readonly dragScatter: number;
  readonly inducedScatter: number;
}

export interface RotorShape {
  readonly elements: BladeElements;
  readonly flow: Flow;
  readonly roughness: number;
  readonly inducedFactor: number;
  readonly scatter: Scatter;
}

/**
 * The rotor that the inputs describe.
 *
 * @param count  elements of a blade
 * @throws CalculationError when they do not describe one
 */
export function readRotorShape(inputs: RotorShapeInput, climbRate: number, count?: number): RotorShape {
  const { blades, radius, rootCutout, density: rho, viscosity, speedOfSound } = inputs;
  if (rootCutout >= radius) throw new CalculationError('rootCutout', `${rootCutout} m`, `less than the radius, ${radius} m`);
  const chord = inputs.chord.map(({ r, chord: value }) => ({ r, value }));
  const twist = (inputs.twist ?? []).map(({ r, twist: value }) => ({ r, value }));
  requireAscending('chord', chord);
  requireAscending('twist', twist);
  const section = readAirfoil(inputs.airfoil);
  return {
    elements: bladeElements({ blades, radius, rootCutout, chord, twist, section }, count),
    // A drag law holds at any speed: it says nothing of shocks.
    flow: { density: rho, kinematicViscosity: viscosity / rho, climbRate, ...(section.kind === 'table' ? { speedOfSound } : {}) },
    roughness: inputs.roughness ?? (section.kind === 'table' ? REAL_ROUGHNESS : 1),
    inducedFactor: inputs.inducedFactor,
    scatter: { drag: inputs.dragScatter, induced: inputs.inducedScatter },
  };
}

function requireAscending(name: string, points: readonly { readonly r: number }[]): void {
  const back = points.findIndex(({ r }, index) => index > 0 && r <= points[index - 1]!.r);
  if (back > 0) throw new CalculationError(`${name}[${back}].r`, `${points[back]!.r} m`, `more than that of the station before, ${points[back - 1]!.r} m`);
}

function readAirfoil(airfoil: AirfoilInput): Section {
  const { name, liftSlope, cd0, cd2, reynolds, alpha, cl, cd } = airfoil;
  const law = [liftSlope, cd0, cd2];
  const table = [reynolds, alpha, cl, cd];
  const given = [name !== undefined, law.some(isGiven), table.some(isGiven)].filter(Boolean).length;
  const wanted = `one of: a name, ${[...builtIn.keys()].map((one) => `"${one}"`).join(' or ')}; liftSlope, cd0 and cd2; reynolds, alpha, cl and cd`;
  if (given !== 1) throw new CalculationError('airfoil', given === 0 ? 'nothing' : 'several of them', wanted);
  if (name !== undefined) {
    const section = builtIn.get(name);
    if (section === undefined) throw new CalculationError('airfoil.name', `"${name}"`, `one of ${[...builtIn.keys()].map((one) => `"${one}"`).join(', ')}`);
    return section;
  }
  if (liftSlope !== undefined && cd0 !== undefined && cd2 !== undefined) return { kind: 'polar', thickness: 0, liftSlope, cd0, cd2 };
  if (reynolds !== undefined && alpha !== undefined && cl !== undefined && cd !== undefined) {
    return refusing('airfoil', 'this table', () => givenSection({ reynolds, angles: alpha, lift: cl, drag: cd }));
  }
  throw new CalculationError('airfoil', Object.keys(airfoil).join(', '), wanted);
}

const isGiven = (value: unknown): boolean => value !== undefined;
