import type { Controls, Link, Point, Servo } from '../model/controls.ts';
import { joinPath } from '../read/tree.ts';
import type { PerCopy, ReadsAs } from '../schema/field.ts';
import type { controlsField } from '../schema/sections/controls.ts';
import type { Expansion, Referrer } from './names.ts';
import { resolveOne } from './resolve.ts';
import { forCopy } from './thing.ts';
import { compact } from './words.ts';

type Written = ReadsAs<typeof controlsField>;
const movers = ['servo', 'swashplate', 'link', 'part', 'joint', 'rotor'] as const;

export function expandControls(written: Written | undefined, expansion: Expansion): Controls {
  const servos = new Map<string, Servo>();
  const links = new Map<string, Link>();
  for (const [key, servo] of Object.entries(written?.servos ?? {})) {
    for (const one of eachCopy(key, servo.copies)) servos.set(one.id, expandServo(one, joinPath('controls.servos', key), servo, expansion));
  }
  for (const [key, link] of Object.entries(written?.links ?? {})) {
    for (const one of eachCopy(key, link.copies)) {
      const expanded = expandLink(one, joinPath('controls.links', key), link, expansion);
      if (expanded) links.set(one.id, expanded);
    }
  }
  const swashplate = expandSwashplate(written?.swashplate, expansion);
  return compact({ swashplate, servos, links });
}

interface OneCopy {
  readonly id: string;
  readonly from: Referrer;
}

function eachCopy(key: string, copies: readonly string[] | undefined): readonly OneCopy[] {
  if (!copies) return [{ id: key, from: { siblings: [] } }];
  return copies.map((current) => ({ id: `${key}.${current}`, from: { siblings: [{ names: copies, current }] } }));
}

function expandServo({ id, from }: OneCopy, path: string, written: NonNullable<Written['servos']>[string], expansion: Expansion): Servo {
  const value = <T>(of: PerCopy<T> | undefined, name: string) => forCopy(of, joinPath(path, name), from.siblings, expansion)?.value;
  const part = forCopy(written.part, joinPath(path, 'part'), from.siblings, expansion);
  return compact({
    id, path, part: part && resolveOne(expansion, part.value, ['part'], part.path, from), arm: value(written.arm, 'arm'), travel: value(written.travel, 'travel'), axis: value(written.axis, 'axis'), pivot: value(written.pivot, 'pivot') as Point | undefined,
    azimuth: value(written.azimuth, 'azimuth'), torque: value(written.torque, 'torque'), speed: value(written.speed, 'speed'),
  });
}

function expandLink({ id, from }: OneCopy, path: string, written: NonNullable<Written['links']>[string], expansion: Expansion): Link | undefined {
  const start = written.from === undefined ? undefined : resolveOne(expansion, written.from, movers, joinPath(path, 'from'), from);
  const end = written.to === undefined ? undefined : resolveOne(expansion, written.to, movers, joinPath(path, 'to'), from);
  const length = forCopy(written.length, joinPath(path, 'length'), from.siblings, expansion)?.value;
  return start === undefined || end === undefined ? undefined : compact({ id, path, from: start, to: end, length });
}

function expandSwashplate(written: Written['swashplate'], expansion: Expansion): Controls['swashplate'] {
  if (!written) return undefined;
  const path = 'controls.swashplate';
  const on = written.on === undefined ? undefined : resolveOne(expansion, written.on, ['shaft'], joinPath(path, 'on'));
  const turnsWith = written.turnsWith === undefined ? undefined : resolveOne(expansion, written.turnsWith, ['part'], joinPath(path, 'turns-with'));
  return on === undefined ? undefined : compact({ path, on, arms: written.arms, radius: written.radius, at: written.at as Point | undefined, turnsWith });
}
