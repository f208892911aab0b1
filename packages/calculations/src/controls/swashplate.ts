import { closed, harmonicsOf, linearServoAngles, pitchAt, poseFor, poseOf, rodErrorsAt, sensitivityOf, servoAnglesAt, tiltOf, unreachedAzimuths, type PlatePose, type SwashplateGeometry } from '@rotorwright/mechanics';
import type { Outcome } from '../calculation.ts';
import { CalculationError, defineCalculation, type InputsOf } from '../define.ts';
import { crankOf, three } from './control-specs.ts';
import { inputs, outputs } from './swashplate-specs.ts';

export const swashplate = defineCalculation({
  id: 'swashplate',
  title: 'Swashplate',
  section: 'Controls',
  summary: 'Servo angles to plate and blade pitch over azimuth, or back; in three dimensions, without small angles.',
  inputs,
  outputs,
  formulas: [
    { output: 'plateHeight', tex: String.raw`\min_{h,\,n}\sum_i e_i^2,\quad e_i = \left|(0,0,h) + R(n)\,q_i - s_i(\alpha_i)\right| - L_i` },
    { output: 'tilt', tex: String.raw`\tau = \arccos n_z` },
    { output: 'tiltForward', tex: String.raw`\tau_x = \operatorname{atan2}(n_x, n_z)` },
    { output: 'tiltRight', tex: String.raw`\tau_y = \operatorname{atan2}(-n_y, n_z)` },
    { output: 'pitch', tex: String.raw`\left|u(\psi) - g(\psi, \theta)\right| = l` },
    { output: 'collective', tex: String.raw`\theta_0 = \frac{1}{72}\sum\theta(\psi_k)` },
    { output: 'cyclicCos', tex: String.raw`\theta_{1c} = \frac{2}{72}\sum\theta(\psi_k)\cos\psi_k` },
    { output: 'cyclicSin', tex: String.raw`\theta_{1s} = \frac{2}{72}\sum\theta(\psi_k)\sin\psi_k` },
    { output: 'residual', tex: String.raw`r = \max_k\left|\theta(\psi_k) - \theta_0 - \theta_{1c}\cos\psi_k - \theta_{1s}\sin\psi_k\right|` },
    { output: 'rodErrors', tex: String.raw`e_i = \left|(0,0,h) + R(n)\,q_i - s_i(\alpha_i)\right| - L_i` },
    { output: 'servoAngles', tex: String.raw`\left|(0,0,h) + R(n)\,q_i - s_i(\alpha_i)\right| = L_i` },
    { output: 'reachable', tex: String.raw`\max_i |e_i| \le 10^{-9}\,\text{m}` },
    { output: 'sensitivity', tex: String.raw`S = \left.\frac{\partial(\theta_0, \theta_{1c}, \theta_{1s})}{\partial\alpha_i}\right|_{\alpha = 0}` },
    { output: 'linearServoAngles', tex: String.raw`\alpha_\text{lin} = S^{+}\left(\theta_\text{wanted} - \theta(\alpha = 0)\right)` },
    { output: 'linearCollectiveError', tex: String.raw`\Delta\theta_0 = \theta_0(\alpha_\text{lin}) - \theta_{0,\text{wanted}}` },
    { output: 'linearCyclicCosError', tex: String.raw`\Delta\theta_{1c} = \theta_{1c}(\alpha_\text{lin}) - \theta_{1c,\text{wanted}}` },
    { output: 'linearCyclicSinError', tex: String.raw`\Delta\theta_{1s} = \theta_{1s}(\alpha_\text{lin}) - \theta_{1s,\text{wanted}}` },
  ],
  source: 'Rigid-body geometry: closed loops of rods with ball ends, guides in upright planes.',
  validity: [
    'Origin on the mast axis; x forward, y left, z up. Azimuth from over the tail, growing with the rotor. Hub coordinates: outboard, towards the leading edge, up.',
    'Feathering axis horizontal: no coning, lag or flap. No play, nothing bends.',
    'Harmonics from 72 azimuths 5° apart.',
  ],
  compute: (given) => {
    const geometry = geometryOf(given);
    const { angles, wanted } = given;
    if ((angles === undefined) === (wanted === undefined)) throw new CalculationError('angles', angles === undefined ? 'neither angles nor wanted' : 'both angles and wanted', 'one of the two');
    if (angles !== undefined && angles.length !== geometry.servos.length) throw new CalculationError('angles', `${angles.length} angles`, `one for each of the ${geometry.servos.length} servos`);
    const azimuths = given.azimuths ?? Array.from({ length: 12 }, (_, index) => (index * Math.PI) / 6);
    return wanted === undefined ? forward(geometry, angles!, azimuths) : inverse(geometry, wanted, azimuths);
  },
});

type Given = InputsOf<typeof inputs>;
type Answer = Outcome<keyof typeof outputs>;

function geometryOf({ rotation, servos, antiRotation, plateSide, link, grip }: Given): SwashplateGeometry {
  const upperBall = three(link.upperBall, 'link.upperBall');
  const driver = link.driver === undefined ? ([upperBall[0], upperBall[1], 0] as const) : three(link.driver, 'link.driver');
  const guide = antiRotation === undefined ? ([-1, 0, 0] as const) : three(antiRotation.point, 'antiRotation.point');
  const driven = link.driver === undefined ? (['link.upperBall', upperBall] as const) : (['link.driver', driver] as const);
  for (const [name, point] of [['antiRotation.point', guide] as const, driven]) {
    if (!(point[0] ** 2 + point[1] ** 2 > 1e-24)) throw new CalculationError(name, `[${point.join(', ')}] m`, `a point off the mast axis${name === 'link.upperBall' ? ', or a link.driver that is' : ''}`);
  }
  const gripBall = three(grip.ball, 'grip.ball');
  if (!(gripBall[1] ** 2 + gripBall[2] ** 2 > 1e-24)) throw new CalculationError('grip.ball', `[${gripBall.join(', ')}] m`, 'a ball that stands off the feathering axis');
  return {
    rotation, plateSide, guide,
    servos: servos.map((each, index) => ({ ...crankOf(each, `servos[${index}]`), rodLength: each.rodLength, ball: three(each.ball, `servos[${index}].ball`) })),
    link: { upperBall, length: link.length, driver },
    grip: { height: grip.height, ball: gripBall },
  };
}

const unreachable = (warning: string): Answer => ({ outputs: { reachable: 0 }, warnings: [`${warning} All other outputs are left out.`] });

function forward(geometry: SwashplateGeometry, angles: readonly number[], azimuths: readonly number[]): Answer {
  const found = poseOf(geometry, angles);
  if (found === undefined) return unreachable(`No attitude has the plate ${geometry.plateSide} the servo balls.`);
  if (geometry.servos.length === 3) {
    const worst = [...found.rodErrors].map(Math.abs).reduce((most, error, index, all) => (error > all[most]! ? index : most), 0);
    if (Math.abs(found.rodErrors[worst]!) > closed) return unreachable(`The three rods cannot close: that of servo ${worst + 1} misses by ${(1000 * found.rodErrors[worst]!).toPrecision(3)} mm at best.`);
  }
  return atPose(geometry, angles, found.pose, azimuths);
}

function inverse(geometry: SwashplateGeometry, wanted: NonNullable<Given['wanted']>, azimuths: readonly number[]): Answer {
  const start = startOf(geometry);
  if (start === undefined) return unreachable('The links reach at no level height of the plate.');
  const pose = poseFor(geometry, wanted, start);
  if (pose === undefined) return unreachable('No pose of the plate at which the links reach gives the wanted pitch.');
  const angles = servoAnglesAt(geometry, pose);
  if ('unreached' in angles) return unreachable(`The rod of servo ${angles.unreached + 1} does not reach the plate where it gives the wanted pitch.`);
  const answer = atPose(geometry, angles, pose, azimuths);
  if (answer.outputs.reachable === 0) return answer;
  const { outputs, warnings } = linear(geometry, wanted);
  return { outputs: { ...answer.outputs, ...outputs }, warnings: [...answer.warnings, ...warnings] };
}

/** A pose at which the links reach: that at servo angles 0, else level at the height at which the link stands upright. */
function startOf(geometry: SwashplateGeometry): PlatePose | undefined {
  const atZero = poseOf(geometry, geometry.servos.map(() => 0));
  const { link, grip } = geometry;
  const across = Math.sqrt(Math.max(0, link.length ** 2 - (link.upperBall[0] - grip.ball[0]) ** 2 - (link.upperBall[1] - grip.ball[1]) ** 2));
  const level = [-1, 1].map((side): PlatePose => ({ height: grip.height + grip.ball[2] + side * across - link.upperBall[2], p: 0, q: 0 }));
  return [...(atZero ? [atZero.pose] : []), ...level].find((pose) => harmonicsOf(geometry, pose) !== undefined);
}

function atPose(geometry: SwashplateGeometry, angles: readonly number[], pose: PlatePose, azimuths: readonly number[]): Answer {
  const harmonics = harmonicsOf(geometry, pose);
  const pitch = pitchAt(geometry, pose, azimuths);
  if (harmonics === undefined || pitch === undefined) {
    const missed = new Set([...unreachedAzimuths(geometry, pose), ...unreachedAzimuths(geometry, pose, azimuths)]);
    return unreachable(`The link does not reach at azimuth ${[...missed].map((azimuth) => `${Number(((azimuth * 180) / Math.PI).toFixed(1))}°`).join(', ')}.`);
  }
  const { forward, right, whole } = tiltOf(pose);
  const sensitivity = sensitivityOf(geometry);
  return {
    outputs: {
      reachable: 1, servoAngles: angles, plateHeight: pose.height, tiltForward: forward, tiltRight: right, tilt: whole, rodErrors: rodErrorsAt(geometry, angles, pose), pitch, ...harmonics,
      ...(sensitivity === undefined ? {} : { sensitivity }),
    },
    warnings: sensitivity === undefined ? ['With all servos at angle 0 plate or links do not reach: sensitivity is left out.'] : [],
  };
}

/** What a mixer that knows only the sensitivities would command, and what the swashplate then misses. */
function linear(geometry: SwashplateGeometry, wanted: NonNullable<Given['wanted']>): Answer {
  const left = 'linearServoAngles, linearCollectiveError, linearCyclicCosError and linearCyclicSinError are left out.';
  const atZero = poseOf(geometry, geometry.servos.map(() => 0));
  const harmonics = atZero && harmonicsOf(geometry, atZero.pose);
  const sensitivity = sensitivityOf(geometry);
  const angles = sensitivity && harmonics && linearServoAngles(sensitivity, harmonics, wanted);
  if (angles === undefined) return { outputs: {}, warnings: [`The servos do not settle collective and cyclic at angle 0: ${left}`] };
  const found = poseOf(geometry, angles, atZero?.pose);
  const given = found && harmonicsOf(geometry, found.pose);
  const closes = found !== undefined && (geometry.servos.length > 3 || found.rodErrors.every((error) => Math.abs(error) <= closed));
  if (given === undefined || !closes) return { outputs: { linearServoAngles: angles }, warnings: ['Where a linear mixer would put them, plate or links do not reach: linearCollectiveError, linearCyclicCosError and linearCyclicSinError are left out.'] };
  return {
    outputs: { linearServoAngles: angles, linearCollectiveError: given.collective - wanted.collective, linearCyclicCosError: given.cyclicCos - wanted.cyclicCos, linearCyclicSinError: given.cyclicSin - wanted.cyclicSin },
    warnings: [],
  };
}
