import { placeOf, severityOf, type EntryPath, type Finding, type FindingCode, type Machine, type Stack, type StackPlace } from '@rotorwright/machine';
import { titleOf } from '../words/index.ts';
import type { StackAnalysis } from './analyse.ts';
import { isSeal, outwardOf } from './facings.ts';

/** What is wrong with one stack, or not settled by the file. */
export function findingsOf(machine: Machine, stack: Stack, analysis: StackAnalysis): readonly Finding[] {
  return [...loadFindings(machine, stack, analysis), ...thrustFindings(machine, stack, analysis), ...rubbing(machine, stack, analysis.places), ...seals(machine, stack, analysis.places), ...expected(machine, stack, analysis)];
}

function loadFindings(machine: Machine, stack: Stack, { loads }: StackAnalysis): readonly Finding[] {
  const at = `${stack.path}.loads`;
  const unknown = loads.unknown.map(({ trouble, reason, right, coupling }) => {
    const code = trouble === 'end' ? 'load/end' : 'stack/side-unknown';
    return finding(machine, code, at, { stack: stack.id, part: coupling ?? stack.id, ...(coupling === undefined ? {} : { coupling }), reason, right, ends: stack.ends.join(' or '), towards: coupling ?? '' });
  });
  const uncarried = loads.known.filter(({ paths }) => paths.length === 0).map((load) => {
    const values = { stack: stack.id, towards: stack.ends[load.towards], pushed: load.pushed, ...(load.coupling === undefined ? {} : { coupling: load.coupling }) };
    return load.unknown.length > 0
      ? finding(machine, 'stack/side-unknown', `${stack.path}.order`, { ...values, part: load.unknown.join(', ') })
      : finding(machine, 'stack/no-load-path', at, values);
  });
  return [...unknown, ...uncarried];
}

function thrustFindings(machine: Machine, stack: Stack, { places, loads }: StackAnalysis): readonly Finding[] {
  const through = loads.known.flatMap((load) => load.paths.map((path) => ({ load, place: places[path.through]! })));
  const thrusts = places.filter(({ kind }) => kind === 'thrust');
  const shared = loads.known.flatMap((load) => {
    const own = through.filter((each) => each.load === load);
    return own.some(({ place }) => place.kind === 'thrust') ? own.filter(({ place }) => place.kind === 'radial').map(({ place }) => place) : [];
  });
  // What nothing settles is said above; here only thrust bearings that a known load passes by.
  const idle = loads.known.length > 0 && loads.unknown.length === 0 ? thrusts.filter((place) => !through.some((each) => each.place === place)) : [];
  return [
    ...[...new Set(shared)].map((place) => finding(machine, 'stack/load-shared', `${stack.path}.order`, { stack: stack.id, part: name(machine, place.id) })),
    ...idle.map((place) => finding(machine, 'stack/thrust-idle', `${stack.path}.order`, { stack: stack.id, part: name(machine, place.id) })),
  ];
}

/** A loose ring that goes with one member must not lean on the other: it would turn against it. Rubber is meant to be squeezed. */
function rubbing(machine: Machine, stack: Stack, places: readonly StackPlace[]): readonly Finding[] {
  const soft = (place: StackPlace): boolean => ['damper', 'seal'].includes(machine.parts.get(machine.thingOf.get(place.id) ?? place.id)?.kind ?? '');
  return places.flatMap((place, index) => {
    const next = places[index + 1];
    if (next?.member === undefined || place.member === undefined || place.member === next.member || soft(place) || soft(next)) return [];
    const loose = place.kind === 'loose' ? place : next.kind === 'loose' ? next : undefined;
    if (loose === undefined) return [];
    const against = loose === place ? next : place;
    return [finding(machine, 'stack/order', `${stack.path}.order`, { stack: stack.id, part: name(machine, loose.id), member: loose.member ?? '', against: name(machine, against.id) })];
  });
}

function seals(machine: Machine, stack: Stack, places: readonly StackPlace[]): readonly Finding[] {
  return places.flatMap((place, index) => {
    const part = 'part' in place.item ? machine.parts.get(machine.thingOf.get(place.id) ?? place.id) : undefined;
    const outward = outwardOf(places, index);
    if (part === undefined || outward === undefined) return [];
    return Object.entries(part.facing).flatMap(([side, towards]) =>
      isSeal(side) && towards !== stack.ends[outward]
        ? [finding(machine, 'stack/facing', `${part.path}.facing.${side}`, { part: `the ${side.replaceAll('-', ' ')} of ${name(machine, place.id)}`, says: towards, computed: stack.ends[outward], reason: 'a seal looks away from the other bearings, to keep dirt out and grease in.' })]
        : [],
    );
  });
}

/** What a maker states of facings, under `expect` of the part or of the stack, against what follows from the loads. */
function expected(machine: Machine, stack: Stack, { places, loads, facings }: StackAnalysis): readonly Finding[] {
  const compare = (path: EntryPath, part: string, computed: string | undefined, reason: string): readonly Finding[] => {
    const says = machine.expects.get(path);
    return says === undefined || computed === undefined || String(says) === computed ? [] : [finding(machine, 'stack/facing', path, { part, says: String(says), computed, reason })];
  };
  const washers = facings.flatMap(({ id, why, washers: sides }) => {
    const part = machine.parts.get(machine.thingOf.get(id) ?? id);
    if (sides === undefined || part === undefined) return [];
    return (['tight', 'loose'] as const).flatMap((side) => [part.path, stack.path].flatMap((path) => compare(`${path}.expect.${side}-washer`, `the ${side}-bore washer of ${name(machine, id)}`, stack.ends[sides[side]], why)));
  });
  const carriers = [...new Set(loads.known.flatMap(({ paths }) => paths.map(({ through }) => places[through]!.id)))];
  const keys = carriers.map((id) => machine.parts.get(machine.thingOf.get(id) ?? id)?.key ?? id);
  const carries = carriers.length === 0 ? [] : compare(`${stack.path}.expect.carries`, `what carries in ${stack.id}`, keys.join(', '), loads.known.map(({ words }) => `${words} takes the way over it`).join('; '));
  return [...washers, ...carries];
}

/** For messages. */
const name = (machine: Machine, id: string): string => {
  const thingId = machine.thingOf.get(id) ?? id;
  const thing = machine.parts.get(thingId) ?? machine.joints.get(thingId);
  return thing === undefined ? id : `${titleOf(thing)} (${id})`;
};

function finding(machine: Machine, code: FindingCode, path: EntryPath, values: Finding['values']): Finding {
  const place = placeOf(machine, path);
  return { code, severity: severityOf(code), path, ...(place === undefined ? {} : { place }), values };
}

