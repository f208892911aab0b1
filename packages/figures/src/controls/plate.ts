import type { EntryPath, Machine, Rotor } from '@rotorwright/machine';
import { dot, harmonicsOf, sensitivityOf, type Mover, type PlateServo, type SwashplateGeometry, type Vector3 } from '@rotorwright/mechanics';
import type { DriveSolution } from '../drive/solve.ts';
import { bladeLink, gripAt, leadBuilder, middleOf, rodOf, type Lacks, type Lead } from './layout.ts';
import { less, mastFrame, pointIn } from './mast-frame.ts';
import { poseAt } from './plate-motion.ts';
import type { Plate } from './plate-types.ts';

/** Why a plate cannot be put together although nothing is missing. */
export interface Stuck {
  readonly stuck: string;
}

/** A plate before anything is solved. */
export type LaidOut = Omit<Plate, 'rest' | 'atRest' | 'sensitivity'>;

/** The swashplate as the file places it in space, with where it rests and how it answers. */
export function plateOf(machine: Machine, drive: DriveSolution): Plate | Lacks | Stuck | undefined {
  const laid = layOut(machine, drive);
  if (!laid || !('geometry' in laid)) return laid;
  const { geometry, servos } = laid;
  const rest = poseAt(laid, servos.map(() => 0))?.pose;
  const atRest = rest && harmonicsOf(geometry, rest);
  const sensitivity = rest && sensitivityOf(geometry, servos.length, (angles) => poseAt(laid, angles)?.pose);
  if (!rest || !atRest || !sensitivity) return { stuck: 'with the servos at mid travel the links do not reach' };
  return { ...laid, rest, atRest, sensitivity };
}

/** The swashplate as the file places it in space: what every link must bridge. */
export function layOut(machine: Machine, drive: DriveSolution): LaidOut | Lacks | Stuck | undefined {
  const { controls, rotors } = machine;
  const { swashplate } = controls;
  if (swashplate === undefined) return undefined;
  const missing = new Set<EntryPath>();
  const need = <T>(value: T | undefined, path: EntryPath): T | undefined => {
    if (value === undefined) missing.add(path);
    return value;
  };
  const at = need(swashplate.at, `${swashplate.path}.at`);
  const pitchLink = need(bladeLink(controls, 'swashplate', rotors), 'controls.links');
  const rotor = pitchLink && rotors.get(pitchLink.to);
  const hub = rotor && need(rotor.at, `${rotor.path}.at`);
  const middle = rotor && need(middleOf(rotor), `${rotor.path}.stops`);
  const cyclic = rotor && need(rotor.cyclic, `${rotor.path}.cyclic`);
  const upperBall = pitchLink && need(pitchLink.fromBall, pitchLink.fromBallPath);
  const gripBall = pitchLink && need(pitchLink.toBall, pitchLink.toBallPath);
  const frame = at && hub ? mastFrame(machine, swashplate.on, at, hub) : { origin: at ?? [0, 0, 0] };
  if ('stuck' in frame) return frame;
  const rotation = rotor && senseOf(machine, drive, rotor, frame.axes?.[2] ?? [0, 0, 1]);
  for (const path of rotation && 'missing' in rotation ? rotation.missing : []) missing.add(path);
  const builder = leadBuilder(machine, frame, missing);
  const found = [...controls.links.values()].filter(({ to }) => to === 'swashplate').map((link) => {
    const from = builder.start(link);
    const azimuth = controls.servos.get(link.from)?.azimuth;
    const onCircle: Vector3 | undefined = swashplate.radius === undefined || azimuth === undefined ? undefined : [swashplate.radius * Math.cos(azimuth), swashplate.radius * Math.sin(azimuth), 0];
    const end = need(link.toBall ?? onCircle, link.toBallPath);
    return from && end && { link, mover: from.mover, ball: from.ball, end };
  });
  if (found.length < 3) missing.add('controls.links');
  if (missing.size > 0 || !at || !rotor || !pitchLink || !hub || middle === undefined || cyclic === undefined || !upperBall || !gripBall || !rotation || 'missing' in rotation) return { missing: [...missing] };

  const { train, ...lead } = builder.lead();
  const ends = found.flatMap((one) => (one ? [{ ...rodOf(one.link, one.ball, one.end), mover: one.mover }] : []));
  const height = pointIn(frame, hub)[2];
  const grip = gripAt(gripBall, middle);
  const pitchRod = rodOf(pitchLink, upperBall, [grip[0], grip[1], grip[2] + height]);
  const geometry: SwashplateGeometry = {
    rotation: rotation.sense,
    servos: ends.map(({ mover, balls: [from, to], length }): PlateServo => ({ ...crankOf(train, mover, from), rodLength: length, ball: to })),
    guide: swashplate.guide ?? [-1, 0, 0],
    plateSide: ends.reduce((sum, { balls: [from, to] }) => sum + to[2] - from[2], 0) >= 0 ? 'above' : 'below',
    link: { upperBall, length: pitchRod.length, driver: swashplate.driver ?? [upperBall[0], upperBall[1], 0] },
    grip: { height, ball: gripBall },
  };
  return { ...lead, train, ends, geometry, frame, rotor, swashplate, pitchRod, wanted: { low: rotor.stops!.min!, high: rotor.stops!.max!, cyclic } };
}

function crankOf(train: Lead['train'], mover: Mover, ball: Vector3): Pick<PlateServo, 'pivot' | 'axis' | 'arm'> {
  const { pivot, axis } = 'servo' in mover ? train.servos[mover.servo]! : train.levers[mover.lever]!;
  return { pivot, axis, arm: less(ball, pivot) };
}

/** @param up  along the mast, in the axes of the file */
function senseOf({ shafts }: Machine, drive: DriveSolution, rotor: Rotor, up: Vector3): { readonly sense: SwashplateGeometry['rotation'] } | Lacks {
  const motion = drive.states.get('driven')?.motions.get(rotor.on);
  if (motion?.sense === undefined) return { missing: motion?.missingForSense ?? ['power'] };
  return { sense: motion.sense * dot(shafts.get(rotor.on)?.axis ?? up, up) > 0 ? 'counterclockwise' : 'clockwise' };
}
