import { harmonicsOf, poseFor, tiltOf, type Harmonics } from '@rotorwright/mechanics';
import { mixed, poseAt, wantedAt } from './plate-motion.ts';
import type { Plate, Sticks } from './plate-types.ts';
import { servoForPitch, tailAnswer, tailAt, type Tail } from './tail.ts';

/** What a builder feels as precision: how straight, how separate, how even. All as the mixer gives it, in rad. */
export interface Quality {
  /** Collective asked for and given, from end to end. */
  readonly collective: readonly { readonly asked: number; readonly given: number }[];
  /** Largest distance of that curve from the straight line through its ends. */
  readonly straightness: number;
  /** How much full cyclic moves collective at most. */
  readonly cyclicMovesCollective: number;
  /** How much cyclic at the ends of collective differs from cyclic in the middle, at most. */
  readonly collectiveMovesCyclic: number;
  /** Difference between right and left cyclic, and between fore and aft, in the middle of collective. */
  readonly leftRight: number;
  readonly foreAft: number;
  /** Largest pitch beyond the first harmonic over a turn of the blade. */
  readonly residual: number;
  /** The way that the plate leans for fore cyclic, from forward, counter-clockwise from above. */
  readonly phase: number;
  /** How the collective answers to one servo, and cyclic to the one that moves it most: rad/rad. */
  readonly collectivePerServo: readonly number[];
  readonly pitchPerServo: number;
}

const curvePoints = 41;
/** What two sides differ by less than is rounding, rad. */
const rounding = 1e-9;
/** How far apart two cyclic pitches are, rad. */
const apart = (a: number, b: number): number => (Math.abs(a - b) < rounding ? 0 : Math.abs(a - b));

/** @returns undefined where plate or links do not reach with the sticks at some end */
export function qualityOf(plate: Plate): Quality | undefined {
  const at = (sticks: Sticks): Harmonics | undefined => {
    const angles = mixed(plate, wantedAt(plate, sticks));
    const pose = angles && poseAt(plate, angles, plate.rest)?.pose;
    return pose && harmonicsOf(plate.geometry, pose);
  };
  const still = (collective: number): Sticks => ({ collective, fore: 0, right: 0 });
  const curve = Array.from({ length: curvePoints }, (_, index) => {
    const sticks = still(-1 + (2 * index) / (curvePoints - 1));
    const given = at(sticks)?.collective;
    return given === undefined ? undefined : { asked: wantedAt(plate, sticks).collective, given };
  });
  const sides = [-1, 0, 1].flatMap((collective) => ([[1, 0], [-1, 0], [0, 1], [0, -1]] as const).map(([fore, right]) => ({ sticks: { collective, fore, right }, own: at({ collective, fore, right }), without: at(still(collective)) })));
  if (curve.includes(undefined) || sides.some(({ own, without }) => own === undefined || without === undefined)) return undefined;
  const known = curve as readonly { readonly asked: number; readonly given: number }[];
  const cyclicOf = (collective: number, fore: number, right: number): Harmonics => sides.find(({ sticks }) => sticks.collective === collective && sticks.fore === fore && sticks.right === right)!.own!;
  const sizeOf = ({ cyclicCos, cyclicSin }: Harmonics): number => Math.sqrt(cyclicCos ** 2 + cyclicSin ** 2);
  const [first, last] = [known[0]!, known.at(-1)!];
  const line = (asked: number): number => first.given + ((asked - first.asked) * (last.given - first.given)) / (last.asked - first.asked);
  const most = (values: readonly number[]): number => values.reduce((largest, value) => Math.max(largest, Math.abs(value)), 0);
  const forward = poseFor(plate.geometry, wantedAt(plate, { collective: 0, fore: 1, right: 0 }), plate.rest);
  if (forward === undefined) return undefined;
  const { forward: ahead, right } = tiltOf(forward);
  const answers = plate.servos.map((_, servo) => ({ collective: plate.sensitivity[0][servo]!, cyclic: Math.sqrt(plate.sensitivity[1][servo]! ** 2 + plate.sensitivity[2][servo]! ** 2) }));
  return {
    collective: known,
    straightness: most(known.map(({ asked, given }) => given - line(asked))),
    cyclicMovesCollective: most(sides.map(({ own, without }) => own!.collective - without!.collective)),
    collectiveMovesCyclic: most([-1, 1].flatMap((collective) => ([[1, 0], [-1, 0], [0, 1], [0, -1]] as const).map(([fore, side]) => {
      const [end, middle] = [cyclicOf(collective, fore, side), cyclicOf(0, fore, side)];
      return Math.sqrt((end.cyclicCos - middle.cyclicCos) ** 2 + (end.cyclicSin - middle.cyclicSin) ** 2);
    }))),
    leftRight: apart(sizeOf(cyclicOf(0, 0, 1)), sizeOf(cyclicOf(0, 0, -1))),
    foreAft: apart(sizeOf(cyclicOf(0, 1, 0)), sizeOf(cyclicOf(0, -1, 0))),
    residual: most(sides.map(({ own }) => own!.residual)),
    phase: Math.atan2(-right, ahead),
    collectivePerServo: answers.map(({ collective }) => collective),
    // A blade over the azimuth where it answers most has collective and cyclic together.
    pitchPerServo: most(answers.map(({ collective, cyclic }) => Math.abs(collective) + cyclic)),
  };
}

/** Tail pitch over the servo's travel, and where the wanted ends lie in it. */
export interface TailQuality {
  /** Servo angle, slide and pitch from end to end of the servo's travel, as far as everything reaches. */
  readonly curve: readonly { readonly angle: number; readonly slide: number; readonly pitch: number }[];
  /** What the whole travel of the servo gives within the slider's way, rad. */
  readonly reach: readonly [low: number, high: number];
  /** Servo angle and slide at the wanted ends; absent where they are out of reach. */
  readonly low?: { readonly angle: number; readonly slide: number };
  readonly high?: { readonly angle: number; readonly slide: number };
  /** Largest distance of pitch over servo angle from the straight line between the wanted ends, rad. */
  readonly straightness?: number;
  /** Pitch for one radian of the servo, at mid travel. */
  readonly pitchPerServo: number;
  /** Where the blades push hardest on the servo: their pitch, and its change for one radian of the servo there; absent where a wanted end is out of reach. */
  readonly hardest?: { readonly pitch: number; readonly answer: number };
}

/** @returns undefined where the servo has no travel, or nothing reaches at mid travel */
export function tailQualityOf(tail: Tail): TailQuality | undefined {
  const [servo] = tail.servos;
  if (servo?.travel === undefined || tailAt(tail, 0) === undefined) return undefined;
  const half = servo.travel / 2;
  const within = ({ slide }: { readonly slide: number }): boolean => slide >= (tail.slider.travel?.min ?? -Infinity) && slide <= (tail.slider.travel?.max ?? Infinity);
  const curve = Array.from({ length: curvePoints }, (_, index) => {
    const angle = -half + (2 * half * index) / (curvePoints - 1);
    const there = tailAt(tail, angle);
    return there && { angle, ...there };
  }).filter((point) => point !== undefined);
  const free = curve.filter(within);
  if (free.length === 0) return undefined;
  const pitches = free.map(({ pitch }) => pitch);
  const [low, high] = [tail.wanted.low, tail.wanted.high].map((pitch) => servoForPitch(tail, pitch));
  const hardest = low && high && hardestOf(tail, low.angle, high.angle);
  const inner = low && high ? free.filter(({ angle }) => angle >= Math.min(low.angle, high.angle) && angle <= Math.max(low.angle, high.angle)) : [];
  const line = (angle: number): number => tail.wanted.low + ((angle - low!.angle) * (tail.wanted.high - tail.wanted.low)) / (high!.angle - low!.angle);
  return {
    curve,
    reach: [Math.min(...pitches), Math.max(...pitches)],
    ...(low ? { low } : {}),
    ...(high ? { high } : {}),
    ...(low && high ? { straightness: inner.reduce((largest, { angle, pitch }) => Math.max(largest, Math.abs(pitch - line(angle))), 0) } : {}),
    pitchPerServo: tailAnswer(tail, 0) ?? 0,
    ...(hardest ? { hardest } : {}),
  };
}

/** Between two angles of the servo: where M·∂θ/∂α is greatest, with M = K·sin θ·cos θ. */
function hardestOf(tail: Tail, from: number, to: number): TailQuality['hardest'] {
  return Array.from({ length: curvePoints }, (_, index) => {
    const angle = from + ((to - from) * index) / (curvePoints - 1);
    const [there, answer] = [tailAt(tail, angle), tailAnswer(tail, angle)];
    return there && answer !== undefined ? { pitch: there.pitch, answer } : undefined;
  }).reduce((most, each) => (each && (!most || push(each) > push(most)) ? each : most), undefined);
}
const push = ({ pitch, answer }: NonNullable<TailQuality['hardest']>): number => Math.abs(Math.sin(2 * pitch) * answer);
