import { remembered, type InstanceId, type Joint, type Machine } from '@rotorwright/machine';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureInput } from '../figure.ts';
import { entry } from '../set/builder.ts';
import { reactions } from './bearing-margins.ts';
import { hardest, type MarginBench, type Side } from './bench.ts';
import { boomOf } from './boom.ts';
import { placeOfPart } from './geometry.ts';
import { shaftTorque, couplingTorque } from './shaft-torques.ts';
import { supportsOf, type Support } from './supports.ts';
import { carrierOf } from './thrust-carrier.ts';

const newton = { unit: 'N', shown: 'N' } as const;
const newtonMetre = { unit: 'N·m', shown: 'N·m' } as const;
const dryFaces: FigureInput = { constant: 0.12, unit: '-', source: 'dry faces of metal or laminate, low end: VDI 2230-1, table A6, 0.1 to 0.18 (from memory)' };

export const preloadScatters = ['Preload scatters by a third, and some of it settles away, most of all in laminate and plastic.', 'What a spigot, a dowel or a close hole holds beyond friction.'];

/** Preload of the screws that hold bearing housings to the frame, against what their shafts pull at them. */
export function addHousings(bench: MarginBench): void {
  for (const support of supportsOf(bench.machine)) {
    if (support.about !== undefined || support.bearings.length !== 2) continue;
    const { housing } = support.stack;
    const [first, second] = housing.length === 1 ? [housing[0], housing[0]] : support.bearings.map(({ instance }) => nearestOf(bench, instance, housing));
    if (first !== undefined && first === second) addHousing(bench, support, first, 'across');
    else {
      if (first !== undefined) addHousing(bench, support, first, 'first');
      if (second !== undefined) addHousing(bench, support, second, 'second');
    }
  }
}

function addHousing(bench: MarginBench, support: Support, housing: InstanceId, output: 'across' | 'first' | 'second'): void {
  const screws = screwsToFrame(bench.machine).get(housing) ?? [];
  const part = bench.partAt(housing);
  if (!part || screws.length === 0) return;
  // The case that drives the shaft hardest, as for its bearings.
  const loadCase = hardest(bench, (each) => shaftTorque(bench, support.shaft, each))?.loadCase;
  const loads = loadCase && reactions(bench, support, loadCase);
  if (!loads) return;
  const own = output === 'across' ? undefined : support.bearings[output === 'first' ? 0 : 1]!.instance;
  const carrier = own === undefined ? undefined : carrierOf(bench, support, loads);
  const along: FigureInput = carrier === undefined || carrier === own ? { figure: `${loads} thrust` } : { constant: 0, unit: 'N', source: 'the other bearing carries the push' };
  // Two shafts may stand in one housing: each pulls at its screws.
  const another = bench.builder.get(`margin grip ${housing}`) !== undefined;
  bench.add({
    kind: 'grip', of: another ? `${housing} ${support.stack.key}` : housing, module: part.module, loadCase,
    title: `${part.title}, grip of its screws${another ? ` on ${inSentence(support.stack.title)}` : ''}`,
    demand: { title: `Force on ${inSentence(part.title)}, ${loadCase.title}`, ...newton, calculation: 'resultant', output: 'force', inputs: { across: { figure: `${loads} ${output}` }, along } },
    capacity: gripOf(screws, `Force that the screws of ${inSentence(part.title)} hold by friction`, housing),
    leavesOut: [...preloadScatters, 'The moment by which a shaft that stands out beyond its housing tilts it, and what another shaft in the same housing pulls.'],
  });
}

/**
 * @param of      the part that they hold: of screws with copies those on it count
 * @param circle  on which they pass torque; they hold a force where it is left out
 */
export function gripOf(screws: readonly Joint[], title: string, of?: InstanceId, circle?: readonly [input: FigureInput | undefined, wanted: string]): Exclude<Side, string> {
  const on = ({ each }: Joint) => (of === undefined ? each : each.filter(({ seat, holds }) => seat === of || holds.includes(of)));
  const rows = screws.map((joint) => ({ preload: { figure: `preload ${joint.id}` }, count: { entry: joint.path, value: on(joint).length, unit: '-', as: 'screws of' } }) satisfies Readonly<Record<string, FigureInput>>);
  return { title, ...(circle ? newtonMetre : newton), calculation: 'clamp-grip', output: circle ? 'torque' : 'force', inputs: { screws: { list: rows, names: screws.map((joint) => joint.title) }, friction: dryFaces, ...(circle?.[0] ? { circle: circle[0] } : {}) }, missing: circle && !circle[0] ? [circle[1]] : [] };
}

/** Of several housings the one that a bearing stands in: the nearest by its place. */
function nearestOf(bench: MarginBench, bearing: InstanceId, housings: readonly InstanceId[]): InstanceId | undefined {
  const [at] = placeOfPart(bench, bearing);
  const known = housings.flatMap((id) => {
    const [place] = placeOfPart(bench, id);
    return at && place ? [{ id, distance: Math.hypot(place[0] - at[0], place[1] - at[1], place[2] - at[2]) }] : [];
  });
  return known.toSorted((a, b) => a.distance - b.distance)[0]?.id;
}

/** Of each part that is not fixed itself: the screws by which it holds to something that leads to what is fixed without it. */
export const screwsToFrame = remembered((machine: Machine): ReadonlyMap<InstanceId, readonly Joint[]> => {
  const neighbours = new Map<InstanceId, { readonly other: InstanceId; readonly joint: Joint }[]>();
  const meet = (one: InstanceId, other: InstanceId, joint: Joint): void => void neighbours.set(one, [...(neighbours.get(one) ?? []), { other, joint }]);
  for (const joint of machine.joints.values()) {
    for (const { seat, holds } of joint.each) {
      for (const held of holds) {
        if (seat === undefined) continue;
        meet(seat, held, joint);
        meet(held, seat, joint);
      }
    }
  }
  const grounded = (from: InstanceId, without: InstanceId): boolean => {
    const seen = new Set([from]);
    for (const each of seen) {
      if (machine.parts.get(machine.thingOf.get(each) ?? '')?.ground === true) return true;
      for (const { other } of neighbours.get(each) ?? []) if (other !== without) seen.add(other);
    }
    return false;
  };
  const housings = new Set([...[...machine.stacks.values()].flatMap(({ housing }) => housing), ...(boomOf(machine)?.clamps ?? []).flatMap(({ instances }) => instances)]);
  return new Map([...housings].map((id) => [id, [...new Set((neighbours.get(id) ?? []).filter(({ joint, other }) => (joint.kind === 'screw' || joint.kind === 'bolt') && !housings.has(other) && grounded(other, id)).map(({ joint }) => joint))]]));
});

/** Screws that press a gear on its hub: their friction passes the torque. */
export function addFlange(bench: MarginBench, joint: Joint, held: readonly InstanceId[], shaft: string): void {
  const coupling = [...bench.machine.couplings.values()].find(({ driver, driven }) => [driver, driven].some(({ part }) => part !== undefined && held.includes(part)));
  const drives = coupling?.driver.part !== undefined && held.includes(coupling.driver.part);
  const load = hardest(bench, (each) => (coupling && drives ? couplingTorque(bench, coupling, each) : shaftTorque(bench, shaft, each)));
  if (!load || !bench.builder.get(`preload ${joint.id}`)) return;
  const circle = `${joint.path}.circle`;
  bench.add({
    kind: 'grip', of: joint.id, module: joint.module, title: `${joint.title}, grip on the gear`, loadCase: load.loadCase, demand: load.name,
    capacity: gripOf([joint], `Torque that ${inSentence(joint.title)} holds by friction`, undefined, [entry(circle, joint.circle, 'm'), circle]),
    leavesOut: preloadScatters,
  });
}
