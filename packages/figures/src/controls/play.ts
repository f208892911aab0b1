import type { Rotor } from '@rotorwright/machine';
import { pitchAt, type PlatePose, type SwashplateGeometry } from '@rotorwright/mechanics';
import { poseAt } from './plate-motion.ts';
import type { Plate } from './plate-types.ts';
import { tailAt, type Tail } from './tail.ts';

/** What the slack of one place lets a blade turn by. */
export interface PlayShare {
  /** Link, servo, lever or rotor by its id, `swashplate` or `slider`. */
  readonly of: string;
  readonly what: 'balls' | 'gears' | 'pivot' | 'bearing' | 'blades';
  /** Whole slack there, from stop to stop: m, for gears and a blade in its grip rad. */
  readonly slack: number;
  /** Turn of the blade where it answers most, from stop to stop, rad. */
  readonly atBlade: number;
}

export interface Play {
  /** Largest first. */
  readonly shares: readonly PlayShare[];
  /** All at once in the same direction, rad: the most there can be. */
  readonly sum: number;
  /** What the file gives no play of; it counts as none. */
  readonly unknown: readonly string[];
}

/** Azimuths, rad, that pitch is looked at. */
const azimuths = Array.from({ length: 72 }, (_, index) => (index * Math.PI) / 36);
/** Small against any slack, large against rounding: m, or rad. */
const small = 1e-6;

/**
 * Play at the main blades with servos at mid travel, from that of each ball, bearing and gear.
 *
 * @neglects end play of the grip, which the pull of the blade takes up, and everything that bends
 */
export function platePlay(plate: Plate): Play {
  const base = pitchesOf(plate);
  const answer = (changed: Plate, angles = plate.servos.map(() => 0)): number => gain(base, pitchesOf(changed, angles));
  const rows: Slack[] = [];
  plate.servos.forEach((servo, turned) => rows.push({ of: servo.id, what: 'gears', slack: servo.play, path: `${servo.path}.play`, gain: () => answer(plate, plate.servos.map((_, index) => (index === turned ? small : 0))) }));
  plate.ends.forEach(({ link }, index) => rows.push(balls(link, () => answer({ ...plate, geometry: { ...plate.geometry, servos: plate.geometry.servos.map((servo, own) => (own === index ? { ...servo, rodLength: servo.rodLength + small } : servo)) } }))));
  plate.levers.forEach((lever, index) => {
    const { link } = plate.rods[index]!;
    rows.push(balls(link, () => answer(withRod(plate, index))));
    // A pivot that gives way moves the lever's ball against its rod by at most as much, and what the lever moves likewise.
    rows.push({ of: lever.id, what: 'pivot', slack: lever.play, path: `${lever.path}.play`, gain: () => answer(withRod(plate, index)) });
  });
  rows.push({ of: 'swashplate', what: 'bearing', slack: plate.swashplate.play, path: `${plate.swashplate.path}.play`, gain: () => gain(base, pitchesAt(plate, { ...plate.rest, height: plate.rest.height + small })) });
  rows.push(balls(plate.pitchRod.link, () => answer({ ...plate, geometry: { ...plate.geometry, link: { ...plate.geometry.link, length: plate.geometry.link.length + small } } })));
  rows.push(inGrip(plate.rotor));
  rows.push(grip(plate.rotor, () => answer({ ...plate, geometry: raised(plate.geometry) })));
  return summed(rows);
}

/** Play at the tail blades with the servo at mid travel; neglects the same. */
export function tailPlay(tail: Tail): Play {
  const base = tailAt(tail, 0)?.pitch;
  const answer = (pitch: number | undefined): number => (pitch === undefined || base === undefined ? 0 : Math.abs(pitch - base) / small);
  const rows: Slack[] = tail.servos.map((servo): Slack => ({ of: servo.id, what: 'gears', slack: servo.play, path: `${servo.path}.play`, gain: () => answer(tailAt(tail, small)?.pitch) }));
  tail.levers.forEach((lever, index) => {
    const longer = (): number => answer(tailAt(withRod(tail, index), 0)?.pitch);
    rows.push(balls(tail.rods[index]!.link, longer));
    rows.push({ of: lever.id, what: 'pivot', slack: lever.play, path: `${lever.path}.play`, gain: longer });
  });
  const { push, slider, hub } = tail;
  if ('rod' in push) rows.push(balls(push.rod.link, () => answer(tailAt({ ...tail, push: { ...push, rod: { ...push.rod, length: push.rod.length + small } } }, 0)?.pitch)));
  const link = { ...tail, hub: { ...hub, link: { ...hub.link, length: hub.link.length + small } } };
  rows.push({ of: 'slider', what: 'bearing', slack: slider.play, path: `${slider.path}.play`, gain: () => answer(tailAt(link, 0)?.pitch) });
  rows.push(balls(tail.bladeRod.link, () => answer(tailAt(link, 0)?.pitch)));
  rows.push(inGrip(tail.rotor));
  rows.push(grip(tail.rotor, () => answer(tailAt({ ...tail, hub: raised(hub) }, 0)?.pitch)));
  return summed(rows);
}

interface Slack {
  readonly of: string;
  readonly what: PlayShare['what'];
  readonly slack: number | undefined;
  readonly path: string;
  /** Turn of the blade for slack of 1, rad. */
  readonly gain: () => number;
}

/** The two balls of a link, each with its play. */
const balls = ({ id, path, play }: { readonly id: string; readonly path: string; readonly play?: number }, gained: () => number): Slack => ({ of: id, what: 'balls', slack: play === undefined ? undefined : 2 * play, path: `${path}.play`, gain: gained });

/** The bearings of a grip: what they let go up and down, the link holds at its ball, and the blade turns. */
const grip = ({ id, path, bearingPlay }: Rotor, gained: () => number): Slack => ({ of: id, what: 'bearing', slack: bearingPlay, path: `${path}.bearing-play`, gain: gained });

/** A blade in its grip: its own turn. */
const inGrip = ({ id, path, bladePlay }: Rotor): Slack => ({ of: id, what: 'blades', slack: bladePlay, path: `${path}.blade-play`, gain: () => 1 });

const raised = (geometry: SwashplateGeometry): SwashplateGeometry => ({ ...geometry, grip: { ...geometry.grip, height: geometry.grip.height + small } });

function summed(rows: readonly Slack[]): Play {
  const shares = rows.flatMap(({ of, what, slack, gain: gained }) => (slack === undefined ? [] : [{ of, what, slack, atBlade: slack * gained() }])).toSorted((a, b) => b.atBlade - a.atBlade);
  return { shares, sum: shares.reduce((sum, { atBlade }) => sum + atBlade, 0), unknown: [...new Set(rows.flatMap(({ slack, path }) => (slack === undefined ? [path] : [])))] };
}

/** The same with the rod that turns one lever longer by a little. */
function withRod<L extends Pick<Plate, 'train'>>(lead: L, index: number): L {
  const levers = lead.train.levers.map((lever, own) => (own === index ? { ...lever, rod: { ...lever.rod, length: lever.rod.length + small } } : lever));
  return { ...lead, train: { ...lead.train, levers } };
}

function pitchesOf(plate: Plate, angles: readonly number[] = plate.servos.map(() => 0)): readonly number[] | undefined {
  const pose = poseAt(plate, angles, plate.rest)?.pose;
  return pose && pitchesAt(plate, pose);
}

const pitchesAt = ({ geometry }: Plate, pose: PlatePose): readonly number[] | undefined => pitchAt(geometry, pose, azimuths);

const gain = (base: readonly number[] | undefined, changed: readonly number[] | undefined): number =>
  base && changed ? changed.reduce((most, pitch, index) => Math.max(most, Math.abs(pitch - base[index]!)), 0) / small : 0;
