import type { EntryPath, Machine, Part, Point } from '@rotorwright/machine';
import { extentOf, type Extent } from './extents.ts';

/** One piece of the machine's mass with its place. */
export interface Body {
  /** Instance id of a part; of a module for what its parts do not make up; `fuel`. */
  readonly id: string;
  /** Module copy that it belongs to; none for fuel without a tank among the parts. */
  readonly module?: string;
  readonly title: string;
  /** kg */
  readonly mass: number;
  readonly massPath: EntryPath;
  /** What was made of the entry of its mass: "rest of". */
  readonly massAs?: string;
  /** m, in the machine's axes */
  readonly at: Point;
  readonly atPath: EntryPath;
  /** What was made of the entry of its place: "centre of the parts of". */
  readonly atAs?: string;
  /** Of a part whose length and direction are known; any other is a point. */
  readonly extent?: Extent & { readonly path: EntryPath };
}

/** Everything that has mass and place, and all that lacks one of them. */
export interface Bodies {
  /** Without fuel. */
  readonly dry: readonly Body[];
  /** Parts whose mass the file does not give, nor that of their module. */
  readonly massless: readonly EntryPath[];
  /** What has mass and no place. */
  readonly placeless: readonly { readonly path: EntryPath; readonly mass: number }[];
  /** Modules that weigh less than their parts. */
  readonly overweight: readonly { readonly path: EntryPath; readonly mass: number; readonly parts: number }[];
}

/** Shares of a weighed module below which scales, not parts, are the reason that it weighs less than its parts. */
const SCALES = 1e-3;

/**
 * The bodies that a machine is made of: its parts, and what each weighed module has besides them, at the centre of those that have a place.
 */
export function bodiesOf(machine: Machine): Bodies {
  const dry: Body[] = [];
  const massless: EntryPath[] = [];
  const placeless: { path: EntryPath; mass: number }[] = [];
  const overweight: { path: EntryPath; mass: number; parts: number }[] = [];
  for (const module of machine.modules.values()) {
    const parts = module.parts.flatMap((id) => {
      const part = machine.parts.get(id)!;
      return part.instances.map((instance) => ({ part, instance, at: part.at?.get(instance) }));
    });
    const placed = parts.flatMap(({ part, instance, at }): Body[] => (part.mass === undefined || at === undefined ? [] : [{ id: instance, module: module.id, title: instanceTitle(part, instance), mass: part.mass, massPath: `${part.path}.mass`, at, atPath: placePath(part, instance, machine), ...withExtent(machine, part, instance) }]));
    const lost = parts.filter(({ part, at }) => part.mass !== undefined && at === undefined).map(({ part }) => ({ path: `${part.path}.at`, mass: part.mass! }));
    const known = sum(placed) + lost.reduce((total, { mass }) => total + mass, 0);
    dry.push(...placed);
    if (module.mass === undefined) {
      massless.push(...new Set(parts.flatMap(({ part }) => (part.mass === undefined ? [`${part.path}.mass`] : []))));
      placeless.push(...lost);
      continue;
    }
    if (module.mass < known * (1 - SCALES)) overweight.push({ path: `${module.path}.mass`, mass: module.mass, parts: known });
    // What has mass and no place lies within what the parts with a place do not make up.
    const rest = module.mass - sum(placed);
    if (rest <= 0) continue;
    const at = module.at ? restAt(placed, module.mass, module.at, rest) : centreOf(placed);
    if (at) dry.push({ id: module.id, module: module.id, title: placed.length === 0 ? module.title : `${module.title}: screws, wires and the rest`, mass: rest, massPath: `${module.path}.mass`, ...(placed.length === 0 ? {} : { massAs: 'rest of' }), at, ...(module.at ? { atPath: `${module.path}.at` } : { atPath: module.path, atAs: 'centre of the parts of' }) });
    else placeless.push({ path: `${module.path}.at`, mass: rest });
  }
  return { dry, massless, placeless, overweight };
}

/** Its length makes a part more than a point. */
function withExtent(machine: Machine, part: Part, instance: string): Pick<Body, 'extent'> {
  const extent = extentOf(machine, part, instance);
  return extent ? { extent: { ...extent, path: `${part.path}.length` } } : {};
}

/** Fuel at a share of the tank's volume, at the centre of the tank; none where volume, density or place is not in the file. */
export function fuelBody(machine: Machine, share: number): Body | undefined {
  const { tank } = machine.power;
  const at = tank?.part === undefined ? undefined : machine.parts.get(machine.thingOf.get(tank.part) ?? '')?.at?.get(tank.part);
  if (tank?.volume === undefined || tank.density === undefined || !at || share === 0) return undefined;
  return { id: 'fuel', title: 'fuel', mass: tank.volume * tank.density * share, massPath: 'power.tank.volume', massAs: `fuel, ${Math.round(share * 100)} % of`, at, atPath: 'power.tank.part', atAs: 'place of' };
}

/** Where a rotor's hub is: as the file says it of the rotor, else the place of the part that is its hub. */
export function hubOf({ rotors, parts, thingOf }: Machine, rotor = 'main'): Point | undefined {
  const { at, part } = rotors.get(rotor) ?? {};
  return at ?? (part === undefined ? undefined : parts.get(thingOf.get(part) ?? '')?.at?.get(part));
}

/** Where the rest of a module must lie for the whole to have its centre at the given place. */
function restAt(placed: readonly Body[], whole: number, at: Point, rest: number): Point {
  return point((axis) => (whole * at[axis] - placed.reduce((total, body) => total + body.mass * body.at[axis], 0)) / rest);
}

/** Centre of mass of bodies; undefined of none. */
export function centreOf(bodies: readonly Pick<Body, 'mass' | 'at'>[]): Point | undefined {
  const mass = sum(bodies);
  return mass > 0 ? point((axis) => bodies.reduce((total, body) => total + body.mass * body.at[axis], 0) / mass) : undefined;
}

export const sum = (bodies: readonly Pick<Body, 'mass'>[]): number => bodies.reduce((total, { mass }) => total + mass, 0);

const point = (value: (axis: 0 | 1 | 2) => number): Point => [value(0), value(1), value(2)];

const instanceTitle = ({ title, copies, instances }: Part, instance: string): string => {
  const copy = copies[instances.indexOf(instance)];
  return copy === undefined ? title : `${title} ${copy}`;
};

/** A place may stand once for all copies, or for each by its name. */
function placePath({ path, copies, instances }: Part, instance: string, { places }: Machine): EntryPath {
  const own = `${path}.at.${copies[instances.indexOf(instance)]}`;
  return places.has(own) ? own : `${path}.at`;
}
