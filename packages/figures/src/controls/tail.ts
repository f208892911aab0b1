import type { EntryPath, Machine, Rotor, Slider } from '@rotorwright/machine';
import { angleToPush, angleToReach, bladePitches, dot, trainAt, wayAlong, type Mover, type SwashplateGeometry, type Vector3 } from '@rotorwright/mechanics';
import { bladeLink, gripAt, leadBuilder, middleOf, rodOf, type Lacks, type Lead, type Rod } from './layout.ts';
import { less } from './mast-frame.ts';
import { turnBack } from './turn-back.ts';

/** What takes the slider along: a lever's pin, or a link with its ball on the slider. */
type Push = { readonly mover: Mover; readonly pin: Vector3 } | { readonly mover: Mover; readonly ball: Vector3; readonly end: Vector3; readonly rod: Rod };

/** The tail with everything that sets the pitch of its blades. Origin: the slider's centre at mid travel. */
export interface Tail extends Lead {
  readonly rotor: Rotor;
  readonly slider: Slider;
  readonly push: Push;
  /** Along the tail shaft, away from the boom. */
  readonly line: Vector3;
  /** Slider, link and grip as an upper ring that never leans. */
  readonly hub: SwashplateGeometry;
  readonly bladeRod: Rod;
  /** Pitch that the builder wants, from end to end, rad. */
  readonly wanted: { readonly low: number; readonly high: number };
}

/** The tail controls as the file places them in space. */
export function tailOf(machine: Machine): Tail | Lacks | undefined {
  const { controls, rotors } = machine;
  const { slider } = controls;
  if (slider === undefined) return undefined;
  const missing = new Set<EntryPath>();
  const need = <T>(value: T | undefined, path: EntryPath): T | undefined => {
    if (value === undefined) missing.add(path);
    return value;
  };
  const link = need(bladeLink(controls, 'slider', rotors), 'controls.links');
  const rotor = link && rotors.get(link.to);
  const hubAt = rotor && need(rotor.at, `${rotor.path}.at`);
  const middle = rotor && need(middleOf(rotor), `${rotor.path}.stops`);
  const upperBall = link && need(link.fromBall, link.fromBallPath);
  const gripBall = link && need(link.toBall, link.toBallPath);
  const shaft = need(machine.shafts.get(slider.on)?.axis, `shafts.${slider.on}.axis`);
  const builder = leadBuilder(machine, { origin: slider.at }, missing);
  const push = pushOf(machine, slider, builder, missing);
  if (missing.size > 0 || !link || !rotor || !hubAt || middle === undefined || !upperBall || !gripBall || !shaft || !push) return { missing: [...missing] };
  // The boom lies in the middle of the machine: away from it is where the hub is.
  const away = shaft[1] * hubAt[1] < 0 ? -1 : 1;
  const line: Vector3 = [away * shaft[0], away * shaft[1], away * shaft[2]];
  const height = dot(less(hubAt, slider.at), line);
  const grip = gripAt(gripBall, middle);
  const bladeRod = rodOf(link, upperBall, [grip[0], grip[1], grip[2] + height]);
  const hub: SwashplateGeometry = { rotation: 'counterclockwise', servos: [], guide: [-1, 0, 0], plateSide: 'above', link: { upperBall, length: bladeRod.length, driver: [upperBall[0], upperBall[1], 0] }, grip: { height, ball: gripBall } };
  const lead = builder.lead();
  if (lead.servos.length !== 1) return { missing: ['controls.servos'] };
  const rods = 'rod' in push ? [...lead.rods, push.rod] : lead.rods;
  return { ...lead, rods, rotor, slider, push, line, hub, bladeRod, wanted: { low: rotor.stops!.min!, high: rotor.stops!.max! } };
}

function pushOf({ controls }: Machine, slider: Slider, builder: ReturnType<typeof leadBuilder>, missing: Set<EntryPath>): Push | undefined {
  if (slider.by !== undefined) {
    const lever = controls.levers.get(slider.by);
    const index = lever && builder.leverAt(lever);
    if (slider.pin === undefined) missing.add(`${slider.path}.pin`);
    return index === undefined || slider.pin === undefined ? undefined : { mover: { lever: index }, pin: less(slider.pin, slider.at) };
  }
  const link = [...controls.links.values()].find(({ to }) => to === 'slider');
  if (link === undefined) {
    missing.add(`${slider.path}.by`);
    return undefined;
  }
  const from = builder.start(link);
  if (link.toBall === undefined) missing.add(link.toBallPath);
  if (from === undefined || link.toBall === undefined) return undefined;
  const end = less(link.toBall, slider.at);
  return { mover: from.mover, ball: from.ball, end, rod: rodOf(link, from.ball, end) };
}

/** Where slider and blades go when the servo stands at an angle [rad]: m and rad; undefined where something does not reach. */
export function tailAt(tail: Tail, angle: number): { readonly slide: number; readonly pitch: number } | undefined {
  const position = trainAt(tail.train, [angle]);
  if ('unreached' in position) return undefined;
  const { push, line } = tail;
  const slide = 'pin' in push ? dot(less(position.at(push.mover, push.pin), push.pin), line) : wayAlong(push.end, line, position.at(push.mover, push.ball), push.rod.length);
  const pitch = slide === undefined ? undefined : pitchAtSlide(tail, slide);
  return slide === undefined || pitch === undefined ? undefined : { slide, pitch };
}

/** Turn of the servo that a change of pitch is taken over, rad. */
const step = 1e-4;

/** Pitch for one radian of the servo at one of its angles [rad]; undefined where something does not reach. */
export function tailAnswer(tail: Tail, angle: number): number | undefined {
  const [ahead, behind] = [tailAt(tail, angle + step), tailAt(tail, angle - step)];
  return ahead && behind && (ahead.pitch - behind.pitch) / (2 * step);
}

/** Pitch of the blades with the slider some way from mid travel [m], rad; undefined where the link does not reach. */
export function pitchAtSlide({ hub }: Pick<Tail, 'hub'>, slide: number): number | undefined {
  const into = new Float64Array(1);
  return bladePitches(hub, { height: slide, p: 0, q: 0 }, [0], into) > 0 ? undefined : into[0]!;
}

/** Servo angle and slide that give a pitch [rad]; undefined where something does not reach. */
export function servoForPitch(tail: Tail, pitch: number): { readonly angle: number; readonly slide: number } | undefined {
  const { hub, push, line, train } = tail;
  const grip = gripAt(hub.grip.ball, pitch);
  const slide = wayAlong(hub.link.upperBall, [0, 0, 1], [grip[0], grip[1], grip[2] + hub.grip.height], hub.link.length);
  if (slide === undefined) return undefined;
  const mover = 'servo' in push.mover ? train.servos[push.mover.servo]! : train.levers[push.mover.lever]!;
  const turned = 'pin' in push
    ? angleToPush(mover, push.pin, line, slide)
    : angleToReach(mover, push.ball, [push.end[0] + slide * line[0], push.end[1] + slide * line[1], push.end[2] + slide * line[2]], push.rod.length);
  const back = turned === undefined ? undefined : turnBack(train, push.mover, turned);
  return back && { angle: back.angle, slide };
}
