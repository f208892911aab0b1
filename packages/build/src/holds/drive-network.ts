import type { Machine } from '@rotorwright/machine';
import { carries, type Assembly, type Body } from './assembly.ts';
import type { Loss } from './gate-book.ts';
import { only } from './grouping.ts';
import type { Losses } from './losses.ts';
import { networkOf, type Leg, type Network } from './ways-between.ts';

/** Couplings that pass torque one way only. */
const oneWay: ReadonlySet<string> = new Set(['one-way', 'centrifugal-clutch']);

/** What lets one part turn in another, and so passes no torque on. */
const turnsIn: ReadonlySet<string> = new Set(['deep-groove', 'thrust-ball', 'angular-contact', 'needle', 'bush', 'one-way']);

function isBearing(machine: Machine, part: Body): boolean {
  return turnsIn.has(machine.parts.get(machine.thingOf.get(part) ?? part)?.kind ?? '');
}

/** How torque goes from part to part: through joints that carry it, and through couplings. Neither the frame nor a bearing passes it on. */
export function torqueNetwork(assembly: Assembly, losses: Losses): Network {
  const { machine } = assembly;
  const stays = (body: Body): boolean => assembly.ground.has(body) || isBearing(machine, body);
  const oneWayParts = new Set([...machine.couplings.values()].filter(({ kind }) => kind === 'one-way').flatMap(({ driver, driven }) => [driver.part, driven.part]));
  const joints = jointLegs(assembly, losses, 'torque', (body) => !stays(body) || oneWayParts.has(body));
  const couplings = [...machine.couplings.values()].flatMap(({ kind, driver, driven }) => {
    if (driver.part === undefined || driven.part === undefined) return [];
    const belts = kind === 'belt' ? beltsOn(assembly, [driver.part, driven.part]) : [];
    const leg = { from: driver.part, to: driven.part, cut: losses.book.any(belts.map(losses.place)) };
    return oneWay.has(kind) ? [leg] : [leg, { ...leg, from: driven.part, to: driver.part }];
  });
  return networkOf([...joints, ...couplings], losses.place);
}

function beltsOn({ machine, ties }: Assembly, pulleys: readonly Body[]): readonly Body[] {
  const beside = new Set(pulleys.flatMap((pulley) => (ties.get(pulley) ?? []).flatMap(({ between }) => between)));
  return [...beside].filter((body) => machine.parts.get(machine.thingOf.get(body) ?? body)?.kind === 'belt');
}

/**
 * How motion of the controls goes from part to part: through joints that carry it, and through stacks whose spindle and
 * housing both move. What is fixed to the frame or turns with a shaft passes none on, and a servo gives its own only.
 *
 * @returns the network between some ends, which may themselves be fixed
 */
export function motionNetworks(assembly: Assembly, losses: Losses): (ends: ReadonlySet<Body>) => Network {
  const { machine } = assembly;
  const servos = new Set([...machine.controls.servos.values()].flatMap(({ part }) => part ?? []));
  const turning = [...[...machine.shafts.values()].flatMap(({ part }) => part ?? []), ...[...machine.rotors.keys()].flatMap((rotor) => [...spindlesOf(machine, rotor)])];
  const still = rigidWith(assembly, [...assembly.ground, ...turning], servos);
  const moves = (body: Body): boolean => !still.has(body) && !servos.has(body);
  const stacks = [...machine.stacks.values()].flatMap((stack) =>
    stack.housing.filter((housing) => moves(stack.spindle) && moves(housing)).flatMap((housing) => bothWays(stack.spindle, housing, losses.stack(stack))));
  const network = networkOf([...jointLegs(assembly, losses, 'motion', () => true), ...stacks], losses.place);
  return (ends) => ({ ...network, passes: (body) => ends.has(body) || moves(body) });
}

/** Bodies that joints without play for turning keep as one piece with some others; through a servo nothing is followed. */
function rigidWith(assembly: Assembly, from: readonly Body[], servos: ReadonlySet<Body>): ReadonlySet<Body> {
  const found = new Set(from);
  for (const body of found) {
    if (servos.has(body)) continue;
    for (const { joint, between } of assembly.ties.get(body) ?? []) if (carries(joint, 'place') && carries(joint, 'torque')) for (const other of between) found.add(other);
  }
  return found;
}

function jointLegs(assembly: Assembly, losses: Losses, what: 'torque' | 'motion', passes: (body: Body) => boolean): readonly Leg[] {
  return assembly.bundles.flatMap((bundle) => {
    const [a, b] = bundle[0]!.between;
    if (!passes(a) || !passes(b)) return [];
    const ties = only(bundle, ({ joint }) => carries(joint, what));
    return ties.length === 0 ? [] : bothWays(a, b, losses.copies(ties));
  });
}

function bothWays(a: Body, b: Body, cut: Loss): readonly Leg[] {
  return [{ from: a, to: b, cut }, { from: b, to: a, cut }];
}

/** Where torque comes from on a shaft, and where it is wanted: a rotor on it, else its body, else what drives it. */
export function shaftEnds(machine: Machine, shaft: string, as: 'source' | 'target'): readonly Body[] {
  const rotors = [...machine.rotors.values()].flatMap(({ on, part }) => (on === shaft && part !== undefined ? [part] : []));
  const body = machine.shafts.get(shaft)?.part;
  const driven = [...machine.couplings.values()].flatMap((coupling) => (coupling.driven.on === shaft ? coupling.driven.part ?? [] : []));
  const driving = [...machine.couplings.values()].flatMap((coupling) => (coupling.driver.on === shaft ? coupling.driver.part ?? [] : []));
  if (as === 'target' && rotors.length > 0) return rotors;
  if (body !== undefined) return [body];
  return driven.length > 0 ? driven.slice(0, 1) : driving.slice(0, 1);
}

/** Blade grips of a rotor: what is stacked on its hub, or on a spindle that its hub carries. */
export function gripsOf(machine: Machine, rotor: string): readonly Body[] {
  const spindles = spindlesOf(machine, rotor);
  return [...new Set([...machine.stacks.values()].filter(({ spindle }) => spindles.has(spindle)).flatMap(({ housing }) => housing))].filter((body) => !spindles.has(body));
}

function spindlesOf(machine: Machine, rotor: string): ReadonlySet<Body> {
  const hub = machine.rotors.get(rotor)?.part;
  if (hub === undefined) return new Set();
  return new Set([hub, ...[...machine.stacks.values()].filter(({ housing }) => housing.includes(hub)).map(({ spindle }) => spindle)]);
}
