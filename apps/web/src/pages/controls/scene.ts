import { cranksAt, mixed, poseAt, tailAt, wantedAt, type Plate, type Sticks, type Tail } from '@rotorwright/figures';
import { ballOf, linkBalls, pitchAt, plateBall, rotateAbout, trainAt, type Vector3 } from '@rotorwright/mechanics';

/** What something is drawn as: the ink says which. */
export type Ink = 'still' | 'servo' | 'rod' | 'plate' | 'blade' | 'marked';

/** Straight pieces, balls and plates, m: forward, left, up; of the head along its mast, which stands upright whether it leans or not. The stage and the flat drawing draw the same. */
export interface Scene {
  readonly pieces: readonly { readonly from: Vector3; readonly to: Vector3; readonly radius: number; readonly ink: Ink }[];
  readonly balls: readonly { readonly at: Vector3; readonly radius: number; readonly ink: Ink }[];
  readonly faces: readonly { readonly corners: readonly [Vector3, Vector3, Vector3, Vector3]; readonly ink: Ink }[];
}

/** Which ball of which link is marked. */
export interface Mark {
  readonly link: string;
  readonly ball: 'from' | 'to';
}

const ballRadius = 0.0027;
const around = 40;
const plus = (a: Vector3, b: Vector3, by = 1): Vector3 => [a[0] + by * b[0], a[1] + by * b[1], a[2] + by * b[2]];

/** Collects what is drawn. */
function drawer(mark: Mark | undefined) {
  const scene: { readonly [Part in keyof Scene]: Scene[Part][number][] } = { pieces: [], balls: [], faces: [] };
  const piece = (from: Vector3, to: Vector3, ink: Ink, radius: number): void => void scene.pieces.push({ from, to, radius, ink });
  return {
    scene: scene as Scene,
    piece,
    face: (corners: Scene['faces'][number]['corners'], ink: Ink): void => void scene.faces.push({ corners, ink }),
    rod: (id: string, from: Vector3, to: Vector3): void => {
      piece(from, to, 'rod', 0.0012);
      for (const [ball, at] of [['from', from], ['to', to]] as const) {
        const marked = mark?.link === id && mark.ball === ball;
        scene.balls.push({ at, radius: marked ? 1.5 * ballRadius : ballRadius, ink: marked ? 'marked' : 'rod' });
      }
    },
    ring: (at: (angle: number) => Vector3 | undefined, ink: Ink, radius: number): void => {
      for (let step = 0; step < around; step += 1) {
        const [from, to] = [at((2 * Math.PI * step) / around), at((2 * Math.PI * (step + 1)) / around)];
        if (from && to) piece(from, to, ink, radius);
      }
    },
  };
}

/**
 * Servos, plate, links and grips with the sticks and the rotor somewhere.
 *
 * @param turn  azimuth of the first blade, rad from over the tail, growing with the rotor
 * @returns     undefined where something does not reach
 */
export function plateScene(plate: Plate, sticks: Sticks, turn: number, mark?: Mark): Scene | undefined {
  const angles = mixed(plate, wantedAt(plate, sticks));
  const cranks = angles && cranksAt(plate, angles);
  const pose = angles && poseAt(plate, angles, plate.rest)?.pose;
  if (!angles || !cranks || !pose) return undefined;
  const { geometry, ends, train, rods, rotor, pitchRod } = plate;
  const { scene, piece, rod, ring, face } = drawer(mark);
  // 1. Below the plate: arms, levers, rods.
  const position = trainAt(train, angles);
  if ('unreached' in position) return undefined;
  cranks.geometry.servos.forEach((crank, index) => {
    const [tip, end] = [ballOf(crank, cranks.angles[index]!), plateBall(geometry, pose, crank.ball)];
    if (!end) return;
    piece(crank.pivot, tip, 'servo', 0.0022);
    rod(ends[index]!.link.id, tip, end);
  });
  train.levers.forEach(({ ball, pivot, rod: drive }, index) => {
    const start = position.at(drive.from, drive.ball);
    const end = position.at({ lever: index }, ball);
    const middle = position.at({ lever: index }, pivot);
    piece(middle, end, 'servo', 0.0022);
    rod(rods[index]!.link.id, start, end);
  });
  train.servos.forEach(({ pivot, axis }, index) => {
    const half = 0.006 / Math.hypot(...axis);
    piece(plus(pivot, axis, -half), plus(pivot, axis, half), 'servo', 0.004);
    const driven = train.levers.find(({ rod: drive }) => 'servo' in drive.from && drive.from.servo === index);
    if (driven) piece(pivot, position.at(driven.rod.from, driven.rod.ball), 'servo', 0.0022);
  });
  // 2. The plate: a ring through its balls, one through those of the links, the guide.
  const radius = geometry.servos.reduce((sum, { ball }) => sum + Math.hypot(ball[0], ball[1]), 0) / geometry.servos.length;
  const [upperR, upperT, upperZ] = geometry.link.upperBall;
  ring((angle) => plateBall(geometry, pose, [radius * Math.cos(angle), radius * Math.sin(angle), 0]), 'plate', 0.0018);
  ring((angle) => plateBall(geometry, pose, [Math.hypot(upperR, upperT) * Math.cos(angle), Math.hypot(upperR, upperT) * Math.sin(angle), upperZ]), 'plate', 0.0018);
  const guide = plateBall(geometry, pose, geometry.guide);
  if (guide && Math.hypot(...geometry.guide) < 0.2) piece([0, 0, pose.height], guide, 'plate', 0.0012);
  // 3. Mast, links, grips, the first of each blade.
  const height = geometry.grip.height;
  const low = Math.min(...train.servos.map(({ pivot }) => pivot[2]));
  piece([0, 0, low], [0, 0, height], 'still', 0.004);
  const blades = rotor.blades ?? 2;
  const sense = geometry.rotation === 'counterclockwise' ? 1 : -1;
  for (let blade = 0; blade < blades; blade += 1) {
    const azimuth = turn + (2 * Math.PI * blade) / blades;
    const pitch = pitchAt(geometry, pose, [azimuth])?.[0];
    const balls = pitch === undefined ? undefined : linkBalls(geometry, pose, azimuth, pitch);
    if (pitch === undefined || !balls) return undefined;
    const space = ([r, t, z]: Vector3): Vector3 => [-r * Math.cos(azimuth) + t * Math.sin(azimuth), -r * sense * Math.sin(azimuth) - sense * t * Math.cos(azimuth), z];
    const turned = (r: number, t: number): Vector3 => space([r, t * Math.cos(pitch), height + t * Math.sin(pitch)]);
    rod(pitchRod.link.id, space(balls.upper), space(balls.grip));
    piece([0, 0, height], space([0.11, 0, height]), 'blade', 0.003);
    piece(space([balls.grip[0], 0, height]), space(balls.grip), 'blade', 0.0022);
    const chord = rotor.chord ?? 0.05;
    face([turned(0.1, 0.25 * chord), turned(0.16, 0.25 * chord), turned(0.16, -0.75 * chord), turned(0.1, -0.75 * chord)], 'blade');
  }
  return scene;
}

/** How much of a long rod is drawn at its end, m. */
const seen = 0.07;

/** Lever, slider, links and grips of the tail with its servo somewhere. */
export function tailScene(tail: Tail, angle: number, turn: number, mark?: Mark): Scene | undefined {
  const there = tailAt(tail, angle);
  const position = trainAt(tail.train, [angle]);
  if (!there || 'unreached' in position) return undefined;
  const { scene, piece, rod, face } = drawer(mark);
  const { line, hub, push, train, rods, rotor, bladeRod } = tail;
  train.levers.forEach(({ ball, pivot, rod: drive }, index) => {
    const end = position.at({ lever: index }, ball);
    const start = position.at(drive.from, drive.ball);
    const way = plus(start, end, -1);
    const length = Math.hypot(...way);
    const middle = position.at({ lever: index }, pivot);
    rod(rods[index]!.link.id, length > 2 * seen ? plus(end, way, seen / length) : start, end);
    piece(middle, end, 'servo', 0.0022);
  });
  const slider = plus([0, 0, 0], line, there.slide);
  if ('pin' in push && 'lever' in push.mover) {
    const pin = position.at(push.mover, push.pin);
    piece(position.at(push.mover, train.levers[push.mover.lever]!.pivot), pin, 'servo', 0.0022);
    piece(pin, plus(push.pin, line, there.slide), 'plate', 0.003);
  } else if ('ball' in push) {
    const end = plus(push.end, line, there.slide);
    const start = position.at(push.mover, push.ball);
    const way = plus(start, end, -1);
    const length = Math.hypot(...way);
    rod(push.rod.link.id, length > 2 * seen ? plus(end, way, seen / length) : start, end);
    piece(slider, end, 'plate', 0.002);
  }
  // The shaft, and hub coordinates that turn about it: outboard, leading, along the shaft.
  const square: Vector3 = rotateAbout([1, 0, 0], line, turn);
  const leading: Vector3 = [line[1] * square[2] - line[2] * square[1], line[2] * square[0] - line[0] * square[2], line[0] * square[1] - line[1] * square[0]];
  const { height } = hub.grip;
  const blades = rotor.blades ?? 2;
  piece(plus([0, 0, 0], line, -0.03), plus([0, 0, 0], line, height), 'still', 0.0025);
  piece(plus(slider, line, -0.004), plus(slider, line, 0.004), 'plate', 0.0055);
  for (let blade = 0; blade < blades; blade += 1) {
    const side = (2 * Math.PI * blade) / blades;
    const [outboard, ahead] = [rotateAbout(square, line, side), rotateAbout(leading, line, side)];
    const space = ([r, t, z]: Vector3): Vector3 => plus(plus(plus([0, 0, 0], outboard, r), ahead, t), line, z);
    const balls = linkBalls(hub, { height: there.slide, p: 0, q: 0 }, 0, there.pitch);
    if (!balls) return undefined;
    rod(bladeRod.link.id, space(balls.upper), space(balls.grip));
    piece(slider, space([balls.upper[0], balls.upper[1], balls.upper[2]]), 'plate', 0.0015);
    piece(plus([0, 0, 0], line, height), space([0.035, 0, height]), 'blade', 0.0025);
    piece(space([balls.grip[0], 0, height]), space(balls.grip), 'blade', 0.0018);
    const chord = rotor.chord ?? 0.027;
    const turned = (r: number, t: number): Vector3 => space([r, t * Math.cos(there.pitch), height + t * Math.sin(there.pitch)]);
    face([turned(0.033, 0.25 * chord), turned(0.06, 0.25 * chord), turned(0.06, -0.75 * chord), turned(0.033, -0.75 * chord)], 'blade');
  }
  return scene;
}
