import type { Part, Size, Thing } from '../model/assembly.ts';
import { joinPath } from '../read/tree.ts';
import { camel, type ReadsAs } from '../schema/field.ts';
import { sizeFields, type partField } from '../schema/sections/things.ts';
import type { Expansion } from './names.ts';
import { resolveOne } from './resolve.ts';
import { expandAccess, forCopy, referrerIn, thingBase, type ModuleCopy } from './thing.ts';
import { compact } from './words.ts';

type WrittenPart = ReadsAs<typeof partField>;

const sizeNames = Object.keys(sizeFields).map((name) => [name, camel(name) as keyof WrittenPart] as const);

export function expandPart(module: ModuleCopy, key: string, written: WrittenPart, expansion: Expansion): Part {
  const base = thingBase(module, 'parts', key, written);
  const { path } = base;
  const from = referrerIn(module);
  const one = (ref: string | undefined, to: 'part' | 'consumable' | 'type' | 'measurement', name: string) => (ref === undefined ? undefined : resolveOne(expansion, ref, [to], joinPath(path, name), from));
  return compact({
    ...base,
    kind: written.kind ?? 'part',
    type: one(written.type, 'type', 'type'),
    material: written.material,
    mass: written.mass,
    at: placesOf(module, written, base, expansion),
    lies: written.lies,
    ...sizesOf(written),
    shims: written.sizes?.flatMap((size) => (typeof size === 'number' ? [{ thickness: size, count: 1 }] : size.thickness === undefined ? [] : [{ thickness: size.thickness, count: size.count ?? 1 }])),
    dynamic: written.dynamic,
    static: written.static,
    maxTorque: written.maxTorque,
    balls: written.balls,
    housingFit: written.housingFit,
    thread: written.thread,
    grease: one(written.grease, 'consumable', 'grease'),
    turnsWith: one(written.turnsWith, 'part', 'turns-with'),
    movesOn: one(written.movesOn, 'part', 'moves-on'),
    facing: written.facing ?? {},
    ground: written.ground ?? false,
    until: one(written.until, 'measurement', 'until'),
    behind: expandAccess(written.behind, joinPath(path, 'behind'), module, expansion),
  });
}

function placesOf(module: ModuleCopy, written: WrittenPart, { path, copies, instances }: Thing, expansion: Expansion): Part['at'] {
  const places = instances.flatMap((id, i) => {
    const own = forCopy(written.at, joinPath(path, 'at'), referrerIn(module, copies, copies[i]).siblings, expansion);
    return own ? [[id, own.value] as const] : [];
  });
  return places.length > 0 ? new Map(places) : undefined;
}

function sizesOf(written: WrittenPart): Pick<Part, 'sizes' | 'limits'> {
  const given = sizeNames.flatMap(([name, field]) => (written[field] === undefined ? [] : [[name, written[field] as Size] as const]));
  const windows = given.filter(([, { least, most }]) => least < most);
  return { sizes: Object.fromEntries(given.map(([name, { nominal }]) => [name, nominal])), ...(windows.length > 0 ? { limits: Object.fromEntries(windows) } : {}) };
}
