import { remembered, type InstanceId, type Machine, type Part, type Stack } from '@rotorwright/machine';
import { structureOf, type Structure } from './bench.ts';
import { along, placeOfPart, type ShaftLine } from './geometry.ts';

/** A stack whose two radial bearings carry a shaft. */
export interface Support {
  readonly stack: Stack;
  /** The shaft that is carried: the spindle's, or the housing's where the housing turns about a spindle. */
  readonly shaft: string;
  /** What the bearings stand on turns with this shaft; absent where it stands still. */
  readonly about?: string;
  readonly bearings: readonly { readonly instance: InstanceId; readonly part: Part }[];
}

const radial = new Set(['deep-groove', 'angular-contact', 'needle']);
export const isRadial = (part: Part): boolean => radial.has(part.kind);

/** Every stack with bearings that carries a shaft of the drive, of the first of copies that are alike. */
export const supportsOf = remembered((machine: Machine): readonly Support[] => supportsAmong(structureOf(machine)));

export function supportsAmong(bench: Pick<Structure, 'machine' | 'members' | 'partAt' | 'isFirst'>): readonly Support[] {
  return [...bench.machine.stacks.values()].filter((stack) => bench.isFirst(stack) && !stack.housing.some((each) => bench.partAt(each)?.kind === 'grip')).flatMap((stack): Support[] => {
    const bearings = bearingsOf(bench, stack).filter(({ part }) => isRadial(part));
    const spindle = bench.members.shaftOf.get(stack.spindle);
    const housing = stack.housing.map((each) => bench.members.shaftOf.get(each)).find((shaft) => shaft !== undefined);
    if (bearings.length === 0 || (spindle === undefined && housing === undefined) || spindle === housing) return [];
    if (housing === undefined) return [{ stack, shaft: spindle!, bearings }];
    return [{ stack, shaft: housing, ...(spindle === undefined ? {} : { about: spindle }), bearings }];
  });
}

export function bearingsOf({ partAt }: Pick<Structure, 'partAt'>, stack: Stack): readonly { readonly instance: InstanceId; readonly part: Part }[] {
  return stack.order.flatMap((item) => {
    const part = 'part' in item ? partAt(item.part) : undefined;
    return part && 'part' in item && (isRadial(part) || part.kind === 'thrust-ball') ? [{ instance: item.part, part }] : [];
  });
}

/** Of several supports of one shaft the one nearest to a place along it. */
export function nearest(bench: Structure, supports: readonly Support[], line: ShaftLine, place: number): Support | undefined {
  const distance = ({ bearings }: Support): number => {
    const places = bearings.flatMap(({ instance }) => {
      const [at] = placeOfPart(bench, instance);
      return at ? [along(line, at)] : [];
    });
    return places.length === 0 ? Infinity : Math.abs(places.reduce((sum, each) => sum + each, 0) / places.length - place);
  };
  return supports.toSorted((a, b) => distance(a) - distance(b))[0];
}
