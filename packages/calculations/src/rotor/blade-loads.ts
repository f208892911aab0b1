import {
  centrifugalForce,
  coningAngle,
  featheringMoment,
  flappingFrequencyRatio,
  lagFrequencyRatio,
  massIntegrals,
  meanShear,
  type BladeStation,
  type HingedBlade,
  type PointMass,
} from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { angleOutput, countInput, degrees, lengthOutput, numberOutput, speedInput } from '../specs.ts';

const length = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm' }) as const;
const radial = (title: string, symbol: string) => ({ ...length(title, symbol), min: 0 }) as const;
const offset = (title: string, symbol: string) => ({ ...length(title, symbol), default: 0 }) as const;
const gyration = (title: string, symbol: string) => ({ ...radial(title, symbol), default: 0 }) as const;
const massOf = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'kg', shown: 'g', min: 0 }) as const;
const spring = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'N·m/rad', shown: 'N·m/rad', min: 0, default: 0, example: 0 }) as const;
const inertiaOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'kg·m²', shown: 'kg·m²' }) as const;

const chordwise = offset('Centre of mass ahead of the feathering axis', '\\xi');
const height = offset('Centre of mass over the feathering axis at pitch 0', '\\eta');
const pointFields = { r: radial('From the rotor axis', 'r'), mass: massOf('Mass', 'm'), chordwise, height } as const;
const stationFields = {
  r: radial('From the rotor axis', 'r'),
  massPerLength: { kind: 'number', title: 'Mass per length', symbol: "m'", unit: 'kg/m', shown: 'g/mm', min: 0 },
  chordwise,
  height,
  chordwiseGyration: gyration('Radius of gyration along the chord', 'k_\\xi'),
  heightGyration: gyration('Radius of gyration across the chord', 'k_\\eta'),
} as const;

interface BladeInput {
  readonly distribution?: readonly BladeStation[];
  readonly points?: readonly PointMass[];
  readonly mass?: number;
  readonly centreOfMass?: number;
}

export const bladeLoads = defineCalculation({
  id: 'blade-loads',
  title: 'Loads of the blades',
  section: 'Rotor',
  summary: 'Pull, inertia, hinge frequencies, coning and feathering moment of a rigid blade on its rotor.',
  inputs: {
    blades: countInput('Blades', 'b', 2),
    speed: speedInput('Speed of the rotor', 'n', 1760),
    radius: { ...length('Radius of the rotor', 'R'), above: 0, optional: true, example: 0.775 },
    blade: {
      kind: 'record',
      title: 'The blade: its mass distribution, or only its mass and centre of mass',
      fields: {
        distribution: {
          kind: 'list',
          title: 'Stations in ascending r, linear between them',
          optional: true,
          atLeast: 2,
          of: { kind: 'record', title: 'Station', fields: stationFields },
          example: [
            { r: 0.095, massPerLength: 0.27, chordwise: 0.002, chordwiseGyration: 0.014, heightGyration: 0.0018 },
            { r: 0.775, massPerLength: 0.24, chordwise: 0.002, chordwiseGyration: 0.014, heightGyration: 0.0018 },
          ],
        },
        points: { kind: 'list', title: 'Point masses in the blade', optional: true, of: { kind: 'record', title: 'Point mass', fields: pointFields } },
        mass: { ...massOf('Mass', 'm'), optional: true },
        centreOfMass: { ...radial('Centre of mass, from the rotor axis', 'r_m'), optional: true },
      },
    },
    grip: {
      kind: 'list',
      title: 'Grip, bolt, balance weights: what turns in pitch and does not hang on the bolt',
      optional: true,
      of: { kind: 'record', title: 'Mass', fields: pointFields },
      example: [{ r: 0.052, mass: 0.082 }],
    },
    boltRadius: { ...radial('Blade bolt, from the rotor axis', 'r_B'), optional: true, example: 0.1 },
    boltDiameter: { ...length('Diameter of the blade bolt', 'd'), above: 0, optional: true, example: 0.005 },
    shearPlanes: { kind: 'number', title: 'Sections of the bolt that carry', symbol: 'j', unit: '-', shown: '-', whole: true, min: 1, max: 4, default: 2, example: 2 },
    flapOffset: { ...radial('Flapping hinge, from the rotor axis', 'e'), default: 0, example: 0.012 },
    flapSpring: spring('Spring at the flapping hinge', 'K'),
    lagSpring: spring('Spring at the blade bolt', 'K_L'),
    thrust: { kind: 'number', title: 'Thrust of the whole rotor', symbol: 'T', unit: 'N', shown: 'N', optional: true, example: 51 },
    thrustRadius: { ...radial('Where the thrust acts; 0.75 R when not given', 'r_T'), optional: true },
    gravity: { kind: 'number', title: 'Gravity', symbol: 'g', unit: 'm/s²', shown: 'm/s²', default: 9.80665, example: 9.80665 },
    pitch: { kind: 'number', title: 'Pitch of the blade', symbol: '\\theta', unit: 'rad', shown: '°', optional: true, example: degrees(6) },
  },
  outputs: {
    mass: { title: 'Mass of one blade', symbol: 'm', unit: 'kg', shown: 'g' },
    staticMoment: { title: 'Static moment of one blade about the rotor axis', symbol: 'S', unit: 'kg·m', shown: 'kg·m' },
    centreOfMass: lengthOutput('Centre of mass of the blade, from the rotor axis', 'r_m'),
    inertia: inertiaOutput('Moment of inertia of one blade about the rotor axis', 'I'),
    rotorInertia: inertiaOutput('Moment of inertia of all blades and grips', 'J'),
    centrifugalForceBolt: { title: 'Pull on one blade bolt', symbol: 'F_B', unit: 'N', shown: 'N' },
    centrifugalForceGrip: { title: 'Pull of blade and grip: load of one thrust bearing', symbol: 'F_G', unit: 'N', shown: 'N' },
    boltShear: { title: 'Mean shear stress of the bolt', symbol: '\\tau', unit: 'Pa', shown: 'MPa' },
    flappingFrequencyRatio: numberOutput('Flapping frequency over rotor speed', '\\nu_\\beta'),
    lagFrequencyRatio: numberOutput('Lagging frequency over rotor speed', '\\nu_\\zeta'),
    coning: angleOutput('Coning angle, up', '\\beta_0'),
    featheringMoment: { title: 'Feathering moment of one blade; positive turns the leading edge up', symbol: 'M_\\theta', unit: 'N·m', shown: 'N·m' },
  },
  formulas: [
    { output: 'mass', tex: String.raw`m = \int \mathrm{d}m` },
    { output: 'staticMoment', tex: String.raw`S = \int r\,\mathrm{d}m` },
    { output: 'centreOfMass', tex: String.raw`r_m = \frac{S}{m}` },
    { output: 'inertia', tex: String.raw`I = \int r^2\,\mathrm{d}m` },
    { output: 'rotorInertia', tex: String.raw`J = b\left(I + \sum m_G\,r^2\right)` },
    { output: 'centrifugalForceBolt', tex: String.raw`F_B = \Omega^2 S` },
    { output: 'centrifugalForceGrip', tex: String.raw`F_G = \Omega^2\left(S + \sum m_G\,r\right)` },
    { output: 'boltShear', tex: String.raw`\tau = \frac{F_B}{j\,\pi d^2/4}` },
    { output: 'flappingFrequencyRatio', tex: String.raw`\nu_\beta = \sqrt{1 + \frac{e\,S_e}{I_e} + \frac{K}{I_e\,\Omega^2}}` },
    { output: 'lagFrequencyRatio', tex: String.raw`\nu_\zeta = \sqrt{\frac{r_B\,S_L}{I_L} + \frac{K_L}{I_L\,\Omega^2}}` },
    { output: 'coning', tex: String.raw`\beta_0 = \frac{\frac{T}{b}\,(r_T - e) - g\,S_e}{\Omega^2\,(I_e + e\,S_e) + K}` },
    { output: 'featheringMoment', tex: String.raw`M_\theta = -\Omega^2\left[(I_\xi - I_\eta)\sin\theta\cos\theta + I_{\xi\eta}\cos 2\theta\right]` },
  ],
  source: 'Dynamics of a rigid blade: moments of the centrifugal forces about hinge, bolt and feathering axis, derived from first principles.',
  validity: [
    'Rigid blade, small angles, no twist. Lag and coning leave the feathering moment alone.',
    'Flapping and coning with blade and grip, none cut off at the hinge; lag over the blade alone.',
    'The bolt shear is the mean over the sections: bending, bearing pressure and preload are left out.',
  ],
  compute: (inputs) => {
    const { blades, speed, grip = [], boltDiameter, shearPlanes } = inputs;
    const known = readBlade(inputs.blade);
    const gripMoment = massIntegrals([], grip).staticMoment;
    const pull = centrifugalForce(known.staticMoment, speed);
    const outputs = {
      mass: known.mass,
      staticMoment: known.staticMoment,
      ...(known.mass > 0 ? { centreOfMass: known.staticMoment / known.mass } : {}),
      centrifugalForceBolt: pull,
      centrifugalForceGrip: centrifugalForce(known.staticMoment + gripMoment, speed),
      ...(boltDiameter === undefined ? {} : { boltShear: meanShear(pull, boltDiameter, shearPlanes) }),
    };
    const warnings = [
      ...(known.mass > 0 ? [] : ['centreOfMass is left out: the blade has no mass.']),
      ...(boltDiameter === undefined ? ['boltShear is left out: it needs boltDiameter.'] : []),
    ];
    if (known.stations === undefined) {
      const left = 'inertia, rotorInertia, flappingFrequencyRatio, lagFrequencyRatio, coning and featheringMoment';
      return { outputs, warnings: [...warnings, `${left} are left out: they need the distribution of the blade’s mass.`] };
    }
    const inertia = known.inertia!;
    const hinged = hingedOutputs({ speed, stations: known.stations, points: known.points, grip }, inputs);
    return {
      outputs: { ...outputs, inertia, rotorInertia: blades * (inertia + massIntegrals([], grip).inertia), ...hinged.outputs },
      warnings: [...warnings, ...hinged.warnings],
    };
  },
});

function readBlade(blade: BladeInput) {
  const { distribution, points = [], mass, centreOfMass } = blade;
  const distributed = distribution !== undefined || points.length > 0;
  if (distributed && (mass !== undefined || centreOfMass !== undefined)) {
    throw new CalculationError('blade', 'a distribution as well as mass or centreOfMass', 'either distribution and points, or mass and centreOfMass');
  }
  if (distributed) {
    const stations = distribution ?? [];
    const back = stations.findIndex((station, index) => index > 0 && station.r <= stations[index - 1]!.r);
    if (back > 0) throw new CalculationError(`blade.distribution[${back}].r`, `${stations[back]!.r} m`, `more than that of the station before, ${stations[back - 1]!.r} m`);
    const { mass: sum, staticMoment, inertia } = massIntegrals(stations, points);
    return { mass: sum, staticMoment, inertia, stations, points };
  }
  if (mass === undefined || centreOfMass === undefined) {
    throw new CalculationError('blade', JSON.stringify(blade), 'distribution (and points), or mass and centreOfMass');
  }
  return { mass, staticMoment: mass * centreOfMass, points };
}

interface HingeInputs {
  readonly blades: number;
  readonly radius?: number;
  readonly boltRadius?: number;
  readonly flapOffset: number;
  readonly flapSpring: number;
  readonly lagSpring: number;
  readonly thrust?: number;
  readonly thrustRadius?: number;
  readonly gravity: number;
  readonly pitch?: number;
}

function hingedOutputs(blade: HingedBlade, inputs: HingeInputs) {
  const { blades, radius, boltRadius, flapOffset, flapSpring, lagSpring, thrust, gravity, pitch } = inputs;
  const thrustRadius = inputs.thrustRadius ?? (radius === undefined ? undefined : 0.75 * radius);
  const flap = flappingFrequencyRatio(blade, flapOffset, flapSpring);
  const lag = boltRadius === undefined ? undefined : lagFrequencyRatio(blade, boltRadius, lagSpring);
  const coning = thrust === undefined || thrustRadius === undefined ? undefined : coningAngle(blade, thrust / blades, thrustRadius, flapOffset, flapSpring, gravity);
  return {
    outputs: {
      ...(flap === undefined ? {} : { flappingFrequencyRatio: flap }),
      ...(lag === undefined ? {} : { lagFrequencyRatio: lag }),
      ...(coning === undefined ? {} : { coning }),
      ...(pitch === undefined ? {} : { featheringMoment: featheringMoment(blade, pitch) }),
    },
    warnings: [
      ...(flap === undefined ? ['flappingFrequencyRatio is left out: with this hinge the blade would not stand out, or the rotor does not turn.'] : []),
      ...(lag === undefined ? [`lagFrequencyRatio is left out: ${boltRadius === undefined ? 'it needs boltRadius' : 'about this bolt the blade would not stand out, or the rotor does not turn'}.`] : []),
      ...(coning === undefined ? [`coning is left out: ${coningNeeds(thrust, thrustRadius)}.`] : []),
      ...(pitch === undefined ? ['featheringMoment is left out: it needs pitch.'] : []),
    ],
  };
}

function coningNeeds(thrust: number | undefined, thrustRadius: number | undefined): string {
  if (thrust === undefined) return 'it needs thrust';
  return thrustRadius === undefined ? 'it needs thrustRadius or radius' : 'nothing holds the blade out';
}
