import { angleOutput, degrees, lengthInput, lengthOutput } from '../specs.ts';
import { angleInput, directionInput, pointInput } from './control-specs.ts';

const servo = {
  kind: 'record', title: 'Servo',
  fields: { pivot: pointInput('Pivot'), axis: directionInput('Axis'), arm: pointInput('Arm at angle 0: pivot to ball'), rodLength: lengthInput('Rod, ball to ball', 'L', 92), ball: pointInput('Ball on the lower plate, plate coordinates') },
} as const;

export const inputs = {
  rotation: { kind: 'choice', title: 'Sense of the rotor, seen from above', choices: ['clockwise', 'counterclockwise'], default: 'clockwise' },
  servos: {
    kind: 'list', title: 'Servos', atLeast: 3, of: servo,
    example: [
      { pivot: [0.032588, 0.020445, -0.1], axis: [0.5, 0.866025, 0], arm: [-0.015588, 0.009, 0], rodLength: 0.092, ball: [0.017, 0.029445, -0.004] },
      { pivot: [-0.034, 0.018, -0.1], axis: [-1, 0, 0], arm: [0, -0.018, 0], rodLength: 0.092, ball: [-0.034, 0, -0.004] },
      { pivot: [0.001412, -0.038445, -0.1], axis: [0.5, -0.866025, 0], arm: [0.015588, 0.009, 0], rodLength: 0.092, ball: [0.017, -0.029445, -0.004] },
    ],
  },
  antiRotation: { kind: 'record', title: 'Guide that keeps the lower plate from turning', optional: true, fields: { point: pointInput('Guided point, plate coordinates', [-1, 0, 0]) } },
  plateSide: { kind: 'choice', title: 'Where the plate lies from the servo balls', choices: ['above', 'below'], default: 'above' },
  link: {
    kind: 'record', title: 'Link from upper plate to grip, hub coordinates',
    fields: { upperBall: pointInput('Ball on the upper plate', [0.028, 0.034, 0.006]), length: lengthInput('Link, ball to ball', 'l', 64.2), driver: { ...pointInput('Point that the driver keeps with the blade'), optional: true } },
  },
  grip: {
    kind: 'record', title: 'Blade grip',
    fields: { height: { kind: 'number', title: 'Height of the feathering axis', symbol: 'H', unit: 'm', shown: 'mm', min: -1e3, max: 1e3, example: 0.07 }, ball: pointInput('Ball of the pitch arm at pitch 0, hub coordinates', [0.045, 0.03, 0]) },
  },
  azimuths: { kind: 'list', title: 'Azimuths', optional: true, atLeast: 1, of: angleInput('Azimuth', 'ψ') },
  angles: { kind: 'list', title: 'Servo angles', optional: true, atLeast: 3, of: angleInput('Angle', 'α') },
  wanted: {
    kind: 'record', title: 'Wanted pitch', optional: true,
    fields: { collective: angleInput('Collective', 'θ_0', degrees(8)), cyclicCos: angleInput('Cyclic, cosine', 'θ_1c', 0), cyclicSin: angleInput('Cyclic, sine', 'θ_1s', degrees(5)) },
  },
} as const;

const angleList = (title: string, symbol: string) => ({ title, symbol, unit: 'rad', shown: '°', list: true }) as const;

export const outputs = {
  reachable: { title: 'Whether everything reaches (1) or not (0)', symbol: '-', unit: '-', shown: '-' },
  servoAngles: angleList('Servo angles', 'α_i'),
  plateHeight: lengthOutput('Height of the plate’s centre', 'h'),
  tiltForward: angleOutput('Tilt forward', 'τ_x'),
  tiltRight: angleOutput('Tilt to the right', 'τ_y'),
  tilt: angleOutput('Tilt', 'τ'),
  rodErrors: { title: 'What each rod is too long or too short by', symbol: 'e_i', unit: 'm', shown: 'mm', list: true },
  pitch: angleList('Blade pitch at the azimuths', 'θ(ψ)'),
  collective: angleOutput('Collective', 'θ_0'),
  cyclicCos: angleOutput('Cyclic, cosine', 'θ_1c'),
  cyclicSin: angleOutput('Cyclic, sine', 'θ_1s'),
  residual: angleOutput('Largest pitch beyond the first harmonic', 'r'),
  sensitivity: { title: 'How collective and cyclic answer to each servo', symbol: 'S', unit: '-', shown: '-', list: true },
  linearServoAngles: angleList('Servo angles of a linear mixer', 'α_lin'),
  linearCollectiveError: angleOutput('What its collective misses', 'Δθ_0'),
  linearCyclicCosError: angleOutput('What its cosine cyclic misses', 'Δθ_1c'),
  linearCyclicSinError: angleOutput('What its sine cyclic misses', 'Δθ_1s'),
} as const;
