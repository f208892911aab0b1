import type { Link, Servo } from '@rotorwright/machine';
import { metricThread } from '@rotorwright/mechanics';
import type { Rod } from './layout.ts';

/** How a link is set: the length that it must have, and what of it the thread can give. */
export interface LinkSetting {
  readonly link: Link;
  /** m, ball to ball: with servos at mid travel, plate level, blades in the middle of their range. */
  readonly wanted: number;
  /** m, as the file has it. */
  readonly given?: number;
  /** The nearest that whole half turns of an end can give from the length of the file, m. */
  readonly set?: number;
  /** Turns of one end from the length of the file to that, plus makes it longer; in halves. */
  readonly turns?: number;
  /** m, what one turn of an end changes. */
  readonly pitch?: number;
  /** Thread in each end at that length, m, and the least that the file asks for. */
  readonly engaged?: number;
  readonly leastEngaged?: number;
  /** Rod that is seen between the ends, m. */
  readonly seen?: number;
}

/** Half a turn: an end may sit on its ball either way round (common practice, no source). */
const finest = 0.5;

/** @param rods  in the order in which they shall be told */
export function linkTable(rods: readonly Rod[]): readonly LinkSetting[] {
  return rods.map(({ link, wanted }): LinkSetting => {
    const { length, rod, end, engaged } = link;
    const pitch = pitchOf(link);
    const turns = length === undefined || pitch === undefined ? undefined : Math.round((wanted - length) / (finest * pitch)) * finest;
    const set = turns === undefined || length === undefined || pitch === undefined ? undefined : length + turns * pitch;
    const at = set ?? wanted;
    return {
      link,
      wanted,
      ...(length === undefined ? {} : { given: length }),
      ...(set === undefined ? {} : { set, turns: turns! }),
      ...(pitch === undefined ? {} : { pitch }),
      ...(rod === undefined || end === undefined ? {} : { engaged: (rod + 2 * end - at) / 2, seen: at - 2 * end }),
      ...(engaged === undefined ? {} : { leastEngaged: engaged }),
    };
  });
}

/** Pitch of a link's thread, m; undefined where the file names none of the standard. */
export function pitchOf({ thread }: Pick<Link, 'thread'>): number | undefined {
  if (thread === undefined) return undefined;
  try {
    return metricThread(thread).pitch;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** What a servo must be trimmed by because its link cannot be set to the very length, and what that costs. */
export interface SubTrim {
  readonly servo: Servo;
  /** rad and s, without sign: which way is seen at the machine. */
  readonly angle: number;
  readonly pulse?: number;
  /** Share of the way to one end that it takes. */
  readonly share: number;
  /** Steps of the servo from end to end, and those lost to one side. */
  readonly steps?: number;
  readonly lost?: number;
  /** The most that a tooth of the spline can leave besides, s: half a tooth. */
  readonly spline?: number;
}

/** @param leftOver  m, what the link is too long or too short by */
export function subTrim(servo: Servo, leftOver: number): SubTrim | undefined {
  const { arm, travel, pulses, step, spline } = servo;
  if (arm === undefined || travel === undefined) return undefined;
  // With the arm square to its rod a turn by asin(x/arm) moves the ball by x along it.
  const angle = Math.asin(Math.min(1, Math.abs(leftOver) / arm));
  const span = pulses?.min === undefined || pulses.max === undefined ? undefined : pulses.max - pulses.min;
  const pulse = span === undefined ? undefined : (angle / travel) * span;
  return {
    servo,
    angle,
    share: angle / (travel / 2),
    ...(pulse === undefined ? {} : { pulse }),
    ...(span === undefined || step === undefined ? {} : { steps: Math.floor(span / step), lost: Math.round(pulse! / step) }),
    ...(span === undefined || spline === undefined ? {} : { spline: (Math.PI / spline / travel) * span }),
  };
}

/** Pulse at which a servo stands at an angle from mid travel, s; a servo that turns the other way counts from the other end. */
export function pulseAt({ pulses, travel }: Servo, angle: number): number | undefined {
  if (pulses?.min === undefined || pulses.max === undefined || travel === undefined) return undefined;
  return (pulses.min + pulses.max) / 2 + (angle / travel) * (pulses.max - pulses.min);
}
