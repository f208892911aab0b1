import type { Controls, Lever, Link, Point, Servo, Slider, Swashplate } from '../model/controls.ts';
import { joinPath } from '../read/tree.ts';
import type { PerCopy, ReadsAs } from '../schema/field.ts';
import type { controlsField } from '../schema/sections/controls.ts';
import { windowOf } from './drive.ts';
import type { Expansion, Referrer } from './names.ts';
import { resolveOne } from './resolve.ts';
import { forCopy } from './thing.ts';
import { compact, titleFrom } from './words.ts';

type Written = ReadsAs<typeof controlsField>;
const movers = ['servo', 'lever', 'swashplate', 'slider', 'link', 'part', 'joint', 'rotor'] as const;

export function expandControls(written: Written | undefined, expansion: Expansion): Controls {
  const swashplate = expandSwashplate(written?.swashplate, expansion);
  const slider = expandSlider(written?.slider, expansion);
  return compact({
    swashplate,
    servos: new Map(everyCopy('servos', written?.servos, (copy, servo) => expandServo(copy, servo, expansion))),
    levers: new Map(everyCopy('levers', written?.levers, (copy, lever) => expandLever(copy, lever, expansion))),
    slider,
    links: new Map(everyCopy('links', written?.links, (copy, link) => expandLink(copy, link, expansion))),
  });
}

interface OneCopy {
  readonly id: string;
  readonly path: string;
  readonly title: string;
  readonly from: Referrer;
}

interface WithCopies {
  readonly title?: string;
  readonly copies?: readonly string[];
}

function everyCopy<W extends WithCopies, T>(section: string, written: Readonly<Record<string, W>> | undefined, expand: (copy: OneCopy, one: W) => T | undefined): [string, T][] {
  return Object.entries(written ?? {}).flatMap(([key, one]) => eachCopy(section, key, one).flatMap((copy): [string, T][] => {
    const expanded = expand(copy, one);
    return expanded === undefined ? [] : [[copy.id, expanded]];
  }));
}

function eachCopy(section: string, key: string, { copies, title = titleFrom(key) }: WithCopies): readonly OneCopy[] {
  const path = joinPath(joinPath('controls', section), key);
  if (!copies) return [{ id: key, path, title, from: { siblings: [] } }];
  return copies.map((current) => ({ id: `${key}.${current}`, path, title: `${title}, ${current}`, from: { siblings: [{ names: copies, current }] } }));
}

/** Reads what one copy has of each entry, and says where it stands. */
function readerOf({ path, from }: OneCopy, expansion: Expansion) {
  const read = <T>(of: PerCopy<T> | undefined, name: string) => forCopy(of, joinPath(path, name), from.siblings, expansion);
  return {
    value: <T>(of: PerCopy<T> | undefined, name: string): T | undefined => read(of, name)?.value,
    path: <T>(of: PerCopy<T> | undefined, name: string): string => (of && 'each' in of ? joinPath(joinPath(path, name), from.siblings[0]?.current ?? '') : joinPath(path, name)),
    ref: (of: PerCopy<string> | undefined, name: string, to: Parameters<typeof resolveOne>[2]): string | undefined => {
      const found = read(of, name);
      return found && resolveOne(expansion, found.value, to, found.path, from);
    },
  };
}

function expandServo(copy: OneCopy, written: NonNullable<Written['servos']>[string], expansion: Expansion): Servo {
  const { value, ref, path } = readerOf(copy, expansion);
  return compact({
    id: copy.id, path: copy.path, title: copy.title, part: ref(written.part, 'part', ['part']), arm: value(written.arm, 'arm'), armPath: path(written.arm, 'arm'), holes: written.holes, points: value(written.points, 'points'),
    travel: value(written.travel, 'travel'), pulses: windowOf(written.pulses), step: written.step, spline: written.spline, play: value(written.play, 'play'), axis: value(written.axis, 'axis'),
    pivot: value(written.pivot, 'pivot') as Point | undefined, azimuth: value(written.azimuth, 'azimuth'), torque: value(written.torque, 'torque'), speed: value(written.speed, 'speed'),
  });
}

function expandLever(copy: OneCopy, written: NonNullable<Written['levers']>[string], expansion: Expansion): Lever | undefined {
  const { value, ref } = readerOf(copy, expansion);
  const pivot = value(written.pivot, 'pivot') as Point | undefined;
  const axis = value(written.axis, 'axis');
  const on = ref(written.on, 'on', ['lever']);
  const part = ref(written.part, 'part', ['part']);
  return pivot && axis && compact({ id: copy.id, path: copy.path, title: copy.title, part, pivot, axis, on, play: value(written.play, 'play') });
}

function expandLink(copy: OneCopy, written: NonNullable<Written['links']>[string], expansion: Expansion): Link | undefined {
  const { value, path } = readerOf(copy, expansion);
  const start = written.from === undefined ? undefined : resolveOne(expansion, written.from, movers, joinPath(copy.path, 'from'), copy.from);
  const end = written.to === undefined ? undefined : resolveOne(expansion, written.to, movers, joinPath(copy.path, 'to'), copy.from);
  if (start === undefined || end === undefined) return undefined;
  return compact({
    id: copy.id, path: copy.path, title: copy.title, from: start, to: end, fromBall: value(written.fromBall, 'from-ball') as Point | undefined, fromBallPath: path(written.fromBall, 'from-ball'),
    toBall: value(written.toBall, 'to-ball') as Point | undefined, toBallPath: path(written.toBall, 'to-ball'), length: value(written.length, 'length'), lengthPath: path(written.length, 'length'),
    thread: written.thread, rod: written.rod, end: written.end, engaged: written.engaged, lean: written.lean, play: written.play,
  });
}

function expandSwashplate(written: Written['swashplate'], expansion: Expansion): Swashplate | undefined {
  if (!written) return undefined;
  const path = 'controls.swashplate';
  const on = written.on === undefined ? undefined : resolveOne(expansion, written.on, ['shaft'], joinPath(path, 'on'));
  const turnsWith = written.turnsWith === undefined ? undefined : resolveOne(expansion, written.turnsWith, ['part'], joinPath(path, 'turns-with'));
  return on === undefined ? undefined : compact({
    path, on, arms: written.arms, radius: written.radius, at: written.at as Point | undefined, turnsWith, guide: written.guide as Point | undefined, driver: written.driver as Point | undefined,
    tilt: written.tilt, rise: windowOf(written.rise), play: written.play,
  });
}

function expandSlider(written: Written['slider'], expansion: Expansion): Slider | undefined {
  if (!written) return undefined;
  const path = 'controls.slider';
  const on = written.on === undefined ? undefined : resolveOne(expansion, written.on, ['shaft'], joinPath(path, 'on'));
  const part = written.part === undefined ? undefined : resolveOne(expansion, written.part, ['part'], joinPath(path, 'part'));
  const by = written.by === undefined ? undefined : resolveOne(expansion, written.by, ['lever'], joinPath(path, 'by'));
  const at = written.at as Point | undefined;
  return on === undefined || at === undefined ? undefined : compact({ path, on, part, at, by, pin: written.pin as Point | undefined, travel: windowOf(written.travel), play: written.play });
}
