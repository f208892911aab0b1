import type { BallastPlace, Limit, Movable, Point, Spun } from '@rotorwright/machine';
import type { Figure } from '../figure.ts';
import type { FigureSet } from '../set/figure-set.ts';
import { bodiesOf, centreOf, fuelBody, hubOf, sum, type Bodies, type Body } from './bodies.ts';

/** How a centre stands to its limits. */
export type CentreWord = 'holds' | 'exceeded' | 'unknown';

/** The centre with the tank filled in one way. */
export interface Filling {
  readonly title: string;
  readonly figure: Figure;
  readonly word: CentreWord;
  /** Which end it is too heavy at, where it leaves its limits. */
  readonly heavy?: 'tail' | 'nose';
}

/** Whether a centre keeps its limits, in words. */
export const verdictOf = ({ word, heavy }: Filling): string => (word === 'unknown' ? 'not assessed' : word === 'holds' ? 'holds' : `too ${heavy}-heavy`);

/** What one module weighs, where its centre is, and what the machine's centre would do without it. */
export interface ModuleMass {
  /** Module id; `fuel`. */
  readonly id: string;
  readonly title: string;
  /** kg */
  readonly mass: number;
  /** m, from the hub */
  readonly centre: Point;
  /** m, how far the centre of the machine would move forward without it */
  readonly without: number;
}

export interface Move {
  readonly movable: Movable;
  readonly figure: Figure;
  /** Where its centre is now and would have to be, along x of the file, m. */
  readonly now?: number;
  readonly to?: number;
  /** Where it stops, and the centre of the machine that this gives, m ahead of the mast: where it cannot go as far as it should. */
  readonly stop?: { readonly at: number; readonly centre: number };
}

export interface SpunBalance {
  readonly spun: Spun;
  readonly mass: Figure;
  readonly unbalance: Figure;
  readonly force: Figure;
  readonly atRadius: Figure;
}

export interface BalanceSummary {
  readonly hub?: Point;
  readonly bodies: Bodies;
  /** With its fuel as in the mass of the machine. */
  readonly whole: readonly Body[];
  readonly fillings: readonly Filling[];
  /** What the file allows the centre. */
  readonly limit?: Limit;
  readonly modules: readonly ModuleMass[];
  readonly moves: readonly Move[];
  readonly ballast: readonly { readonly place: BallastPlace; readonly figure: Figure }[];
  readonly spun: readonly SpunBalance[];
  /** Mass of the machine that is nowhere in the file, kg; below 0 where the parts are heavier. */
  readonly unaccounted?: number;
  /** The centre, were that at the tail or at the nose; none where it is next to nothing. */
  readonly range?: { readonly aft: Figure; readonly fore: Figure };
}

/** Everything that the Balance sheet and command say, out of figures that are there already. */
export function balanceOf(set: FigureSet): BalanceSummary {
  const { machine } = set;
  const bodies = bodiesOf(machine);
  const { tank } = machine.power;
  const fuel = fuelBody(machine, tank?.filled ?? 1);
  const whole = fuel ? [...bodies.dry, fuel] : bodies.dry;
  const hub = hubOf(machine);
  const limit = [...machine.limits.values()].find(({ of }) => of === 'centre-ahead');
  const figure = (name: string): Figure => set.get(name)!;
  const filled = tank === undefined ? 'As weighed' : `Tank ${Math.round((tank.filled ?? 1) * 100)} % full, as weighed`;
  const fillings = ([['centre-ahead', filled], ['centre-ahead full', 'Tank full'], ['centre-ahead empty', 'Tank empty']] as const).flatMap(([name, title]): Filling[] => {
    const found = set.get(name);
    return found ? [{ title, figure: found, ...wordOf(found, limit) }] : [];
  });
  const [aft, fore] = [set.get('centre-ahead rest-aft'), set.get('centre-ahead rest-fore')];
  return {
    ...(hub ? { hub } : {}),
    bodies, whole, fillings,
    ...(limit ? { limit } : {}),
    modules: modulesOf(set, whole, hub),
    moves: [...machine.balance.movable.values()].map((movable) => moveOf(set, movable, figure(`shift ${movable.id}`))),
    ballast: [...machine.balance.ballast.values()].map((place) => ({ place, figure: figure(`ballast ${place.id}`) })),
    spun: [...machine.balance.spun.values()].map((spun) => ({ spun, mass: figure(`spun-mass ${spun.id}`), unbalance: figure(`unbalance ${spun.id}`), force: figure(`unbalance-force ${spun.id}`), atRadius: figure(`unbalance-mass ${spun.id}`) })),
    ...(machine.mass === undefined || whole.length === 0 ? {} : { unaccounted: machine.mass - sum(whole) }),
    ...(aft && fore ? { range: { aft, fore } } : {}),
  };
}

function wordOf({ value }: Figure, limit: Limit | undefined): Pick<Filling, 'word' | 'heavy'> {
  if (value === undefined || limit === undefined) return { word: 'unknown' };
  const { min = -Infinity, max = Infinity } = limit.window;
  return value < min ? { word: 'exceeded', heavy: 'tail' } : value > max ? { word: 'exceeded', heavy: 'nose' } : { word: 'holds' };
}

function modulesOf({ machine }: FigureSet, whole: readonly Body[], hub: Point = [0, 0, 0]): readonly ModuleMass[] {
  const mass = sum(whole);
  const centre = centreOf(whole);
  const groups = new Map<string, Body[]>();
  for (const body of whole) groups.set(body.module ?? body.id, [...(groups.get(body.module ?? body.id) ?? []), body]);
  return [...groups].map(([id, each]) => {
    const own = sum(each);
    const at = centreOf(each)!;
    return { id, title: machine.modules.get(id)?.title ?? 'Fuel', mass: own, centre: [at[0] - hub[0], at[1] - hub[1], at[2] - hub[2]], without: own < mass ? (own * (centre![0] - at[0])) / (mass - own) : 0 };
  });
}

function moveOf(set: FigureSet, movable: Movable, figure: Figure): Move {
  const part = set.machine.parts.get(set.machine.thingOf.get(movable.part) ?? '');
  const now = part?.at?.get(movable.part)?.[0];
  const [mass, centre] = [set.get('mass-known')?.value, set.get('centre-ahead')?.value];
  if (now === undefined || figure.value === undefined || part?.mass === undefined || mass === undefined || centre === undefined) return { movable, figure };
  const to = now + figure.value;
  const at = Math.min(movable.along.max ?? Infinity, Math.max(movable.along.min ?? -Infinity, to));
  return { movable, figure, now, to, ...(at === to ? {} : { stop: { at, centre: centre + (part.mass * (at - now)) / mass } }) };
}
