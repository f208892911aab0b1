import { hasTeeth } from '@rotorwright/figures';
import type { Coupling, Machine } from '@rotorwright/machine';
import { matingPhase } from '@rotorwright/mechanics';
import { lieOf, onPaper, viewOf, type View } from './view.ts';
import { distanceOf, wheelOf, type Wheel } from './wheels.ts';

/** A point on the paper, mm, y up. */
export type Spot = readonly [x: number, y: number];

/** Coaxial shafts seen end-on. */
export interface Station {
  readonly id: string;
  readonly shafts: readonly string[];
  readonly at: Spot;
  /** Largest first: it lies lowest, so that all are seen. */
  readonly wheels: readonly (Wheel & { /** Rotation at which all meshes fit, rad, anticlockwise. */ readonly phase: number })[];
  /** Outermost circle of all wheels. */
  readonly outer: number;
}

/** Coaxial shafts that lie in the paper. How far a shaft reaches is not to scale. */
export interface SideShaft {
  readonly id: string;
  readonly shafts: readonly string[];
  /** Along the axis, away from where the motion comes. */
  readonly along: readonly [number, number];
  /** Of the axis itself. */
  readonly axis: readonly [number, number];
  /** Where the motion comes from: the id of a station or another side shaft. */
  readonly from: string;
  readonly by: Coupling;
  /** The wheel by which it is turned, and its mate on the shaft that turns it. */
  readonly wheel: Wheel;
  readonly mate: Wheel;
  /** Which way its wheel lies from the crossing point. */
  readonly lies: readonly [number, number];
  readonly mateLies: readonly [number, number];
  /** Rotors that sit on it. */
  readonly rotors: readonly string[];
}

/** Two stations that mesh or share a belt, for dimensions and pitch points. */
export interface Tie {
  readonly coupling: Coupling;
  readonly from: string;
  readonly to: string;
  /** mm; absent where the file does not settle it. */
  readonly distance?: number;
  /** Belts: drawn shorter than it is. */
  readonly shortened: boolean;
}

export interface PlacedTrain {
  readonly view: View;
  readonly stations: readonly Station[];
  readonly sides: readonly SideShaft[];
  readonly ties: readonly Tie[];
  /** Shafts that nothing connects to the rest. */
  readonly loose: readonly string[];
  /** Some sizes are nominal, because module, pitch or counts are missing: the picture has no scale. */
  readonly nominal: boolean;
  /** Axes that the file does not give. */
  readonly axesUnknown: readonly string[];
}

interface Draft {
  at: Spot;
  readonly wheels: (Wheel & { phase: number })[];
}

/** Directions in which a further mesh goes off, rad: to the right first. */
const ways = [0, Math.PI, -Math.PI / 3, Math.PI / 3, (-2 * Math.PI) / 3, (2 * Math.PI) / 3, -Math.PI / 2, Math.PI / 2];

/**
 * Lays the train out on paper: coaxial shafts share a place, meshes stand at their centre distance, teeth in gaps.
 * The motion goes from left to right; shafts that lie in the paper go on from where their bevels or belts are.
 *
 * @param source  shaft from which the motion comes
 */
export function placeTrain(machine: Machine, source: string | undefined): PlacedTrain {
  const view = viewOf(machine);
  const couplings = [...machine.couplings.values()].filter(({ driver, driven }) => machine.shafts.has(driver.on) && machine.shafts.has(driven.on));
  const lie = (shaft: string) => lieOf(machine.shafts.get(shaft)!, view);
  const group = coaxial(machine, couplings, (a, b) => lie(a).kind === lie(b).kind);
  const members = (id: string): readonly string[] => [...machine.shafts.keys()].filter((shaft) => group(shaft) === id);
  const isSide = (id: string): boolean => lie(id).kind === 'side';
  const toothed = couplings.filter((coupling) => hasTeeth(coupling) && group(coupling.driver.on) !== group(coupling.driven.on));
  const start = source !== undefined && machine.shafts.has(source) ? source : (toothed[0]?.driver.on ?? [...machine.shafts.keys()][0]);
  if (start === undefined) return { view, stations: [], sides: [], ties: [], loose: [], nominal: false, axesUnknown: [] };

  const drafts = new Map<string, Draft>();
  const sides = new Map<string, SideShaft>();
  const ties: Tie[] = [];
  const first = group(start);
  // A train that begins on a shaft in the paper still needs one place end-on to begin from.
  drafts.set(first, { at: [0, 0], wheels: [] });
  const queue = [first];
  const done = new Set<Coupling>();
  while (queue.length > 0) {
    const from = queue.shift()!;
    for (const coupling of toothed) {
      if (done.has(coupling)) continue;
      const side = group(coupling.driver.on) === from ? 'driver' : group(coupling.driven.on) === from ? 'driven' : undefined;
      if (side === undefined) continue;
      done.add(coupling);
      const other = side === 'driver' ? 'driven' : 'driver';
      const to = group(coupling[other].on);
      const wheel = wheelOf(coupling, side);
      const mate = wheelOf(coupling, other);
      if (!isSide(to) && drafts.has(from)) ties.push(meshStations(drafts, coupling, from, to, wheel, mate, queue));
      else if (!sides.has(to) && !drafts.has(to)) {
        const axis = isSide(to) ? (lie(to) as { readonly along: readonly [number, number] }).along : ([1, 0] as const);
        const lies = coupling[other].lies && coupling.kind === 'bevel' ? onPaper(coupling[other].lies, view) : axis;
        const mateLies = coupling[side].lies && coupling.kind === 'bevel' ? onPaper(coupling[side].lies, view) : ([-lies[0], -lies[1]] as const);
        const runs = coupling.kind === 'belt' ? (coupling.runs ? onPaper(coupling.runs, view) : ([1, 0] as const)) : undefined;
        const rotors = [...machine.rotors.values()].filter((rotor) => group(rotor.on) === to).map(({ id }) => id);
        sides.set(to, { id: to, shafts: members(to), along: runs ?? (rotors.length > 0 ? axis : lies), axis, from, by: coupling, wheel: mate, mate: wheel, lies, mateLies, rotors });
        if (drafts.has(from) && !isSide(from)) drafts.get(from)!.wheels.push({ ...wheel, phase: 0 });
        queue.push(to);
      }
    }
  }
  const stations = [...drafts].map(([id, { at, wheels }]): Station => ({
    id, shafts: members(id), at, wheels: wheels.toSorted((a, b) => b.outer - a.outer), outer: Math.max(6, ...wheels.map(({ outer }) => outer)),
  }));
  const placed = new Set([...stations, ...sides.values()].flatMap(({ shafts }) => shafts));
  const all = [...stations.flatMap(({ wheels }) => wheels), ...[...sides.values()].map(({ wheel }) => wheel)];
  return {
    view, stations, sides: [...sides.values()], ties,
    loose: [...machine.shafts.keys()].filter((shaft) => !placed.has(shaft)),
    nominal: all.some(({ nominal }) => nominal),
    axesUnknown: [...machine.shafts.values()].filter(({ axis }) => !axis).map(({ id }) => id),
  };
}

/** Puts the mate beside the wheel, teeth in gaps; a mate that has its place already closes a loop. */
function meshStations(drafts: Map<string, Draft>, coupling: Coupling, from: string, to: string, wheel: Wheel, mate: Wheel, queue: string[]): Tie {
  const own = drafts.get(from)!;
  const known = drafts.get(to);
  const computed = distanceOf(coupling);
  const inside = coupling.kind === 'internal';
  const apart = computed ?? (inside ? Math.abs(mate.radius - wheel.radius) : (wheel.radius + mate.radius) * (coupling.kind === 'belt' ? 1.6 : 1));
  const longest = (wheel.outer + mate.outer) * 2.2;
  const shortened = coupling.kind === 'belt' && apart > longest;
  const drawn = shortened ? longest : apart;
  const way = known ? Math.atan2(known.at[1] - own.at[1], known.at[0] - own.at[0]) : freeWay(drafts, own, drawn, mate.outer);
  const placed = own.wheels.find((each) => each.id === wheel.id) ?? { ...wheel, phase: 0 };
  if (!own.wheels.includes(placed)) own.wheels.push(placed);
  // The line of centres starts at the ring where there is one.
  const phase = wheel.teeth === undefined || mate.teeth === undefined ? 0 : phaseOf(coupling, wheel, placed.phase, mate, way);
  const draft = known ?? { at: [own.at[0] + drawn * Math.cos(way), own.at[1] + drawn * Math.sin(way)] as Spot, wheels: [] };
  draft.wheels.push({ ...mate, phase });
  if (!known) {
    drafts.set(to, draft);
    queue.push(to);
  }
  return { coupling, from, to, ...(computed === undefined ? {} : { distance: computed }), shortened };
}

function phaseOf(coupling: Coupling, wheel: Wheel, phase: number, mate: Wheel, way: number): number {
  if (coupling.kind === 'belt') return 0;
  if (coupling.kind !== 'internal') return matingPhase(wheel.teeth!, phase, mate.teeth!, way);
  if (mate.kind === 'ring') return matingPhase(wheel.teeth!, phase, mate.teeth!, way + Math.PI, 'internal');
  // The same relation, solved for the gear inside: seen from the ring's centre it lies in the direction of the way.
  return way + ((phase - way - Math.PI / wheel.teeth!) * wheel.teeth!) / mate.teeth!;
}

/** The first direction in which the mate overlaps no station but the one that it meshes with. */
function freeWay(drafts: ReadonlyMap<string, Draft>, own: Draft, apart: number, outer: number): number {
  const clear = (way: number): boolean => {
    const at: Spot = [own.at[0] + apart * Math.cos(way), own.at[1] + apart * Math.sin(way)];
    return [...drafts.values()].every((draft) => draft === own || Math.hypot(draft.at[0] - at[0], draft.at[1] - at[1]) > outer + Math.max(0, ...draft.wheels.map((wheel) => wheel.outer)));
  };
  return ways.find(clear) ?? 0;
}

/** Shafts on one axis, found by clutches and rigid joints; each group goes by the id of its first shaft in the file. */
function coaxial(machine: Machine, couplings: readonly Coupling[], alike: (a: string, b: string) => boolean): (shaft: string) => string {
  const parent = new Map([...machine.shafts.keys()].map((id) => [id, id]));
  const order = new Map([...machine.shafts.keys()].map((id, index) => [id, index]));
  const root = (id: string): string => {
    const above = parent.get(id)!;
    return above === id ? id : root(above);
  };
  for (const coupling of couplings) {
    if (hasTeeth(coupling) || !alike(coupling.driver.on, coupling.driven.on)) continue;
    const [a, b] = [root(coupling.driver.on), root(coupling.driven.on)];
    if (a === b) continue;
    const [keep, give] = order.get(a)! < order.get(b)! ? [a, b] : [b, a];
    parent.set(give, keep);
  }
  return root;
}
