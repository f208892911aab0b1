import type { Bag, Consumable, Hazard, HazardEvent, Limit, Material, Sensor, ServiceItem } from '../model/machine.ts';
import { joinPath } from '../read/tree.ts';
import { camel, type ReadsAs } from '../schema/field.ts';
import type { bagField, hazardField, sensorField, serviceField, WrittenEvent } from '../schema/sections/controls.ts';
import { materialFields, type consumableField, type limitField, type materialField } from '../schema/sections/machine.ts';
import { windowOf } from './drive.ts';
import { spanOf, type Expansion } from './names.ts';
import { resolve, resolveOne } from './resolve.ts';
import { compact, titleFrom } from './words.ts';

export function expandConsumable(id: string, written: ReadsAs<typeof consumableField>): Consumable | undefined {
  if (!written.kind) return undefined;
  return compact({ id, path: joinPath('consumables', id), kind: written.kind, title: written.title ?? titleFrom(id), strength: written.strength, cure: written.cure, undo: written.undo, caution: written.caution });
}

export function expandMaterial(id: string, written: ReadsAs<typeof materialField>): Material {
  const properties = Object.keys(materialFields).flatMap((name) => {
    const value = written[camel(name) as keyof typeof written];
    return typeof value === 'number' ? [[name, value] as const] : [];
  });
  return { id, path: joinPath('materials', id), properties: Object.fromEntries(properties) };
}

export function expandSensor(id: string, written: ReadsAs<typeof sensorField>, expansion: Expansion): Sensor | undefined {
  const path = joinPath('sensors', id);
  const reads = written.reads === undefined ? undefined : resolveOne(expansion, written.reads, ['shaft'], joinPath(path, 'reads'));
  const part = written.part === undefined ? undefined : resolveOne(expansion, written.part, ['part'], joinPath(path, 'part'));
  return reads === undefined ? undefined : compact({ id, path, title: written.title ?? titleFrom(id), reads, magnets: written.magnets, part, gap: windowOf(written.gap) });
}

export function expandHazard(id: string, written: ReadsAs<typeof hazardField>, expansion: Expansion): Hazard | undefined {
  const path = joinPath('hazards', id);
  const when = written.when && expandEvent(written.when, joinPath(path, 'when'), expansion);
  if (!when || !written.endsIn) return undefined;
  return compact({ id, path, title: written.title ?? titleFrom(id), endsIn: written.endsIn, when, why: written.why, caution: written.caution });
}

const eventKeys = { noTorque: 'no-torque', noMotion: 'no-motion', comesOff: 'comes-off', jams: 'jams', any: 'any', all: 'all' } as const;

function expandEvent(written: WrittenEvent, path: string, expansion: Expansion): HazardEvent | undefined {
  const given = (Object.keys(eventKeys) as (keyof typeof eventKeys)[]).filter((key) => expansion.spans.has(joinPath(path, eventKeys[key])));
  if (given.length !== 1) {
    expansion.report.add('key/one-of', path, spanOf(expansion.spans, path), { section: path, keys: Object.values(eventKeys), count: given.length === 0 ? 'none' : String(given.length) });
    return undefined;
  }
  const pair = (refs: readonly string[] | undefined, key: string, to: readonly ('shaft' | 'servo' | 'link' | 'swashplate' | 'rotor' | 'part' | 'joint')[]) => {
    const ids = (refs ?? []).map((ref, i) => resolveOne(expansion, ref, to, joinPath(joinPath(path, key), i)));
    return ids[0] !== undefined && ids[1] !== undefined ? ([ids[0], ids[1]] as const) : undefined;
  };
  const each = (ref: string, key: 'comes-off' | 'jams', to: readonly ('part' | 'joint' | 'shaft' | 'servo' | 'swashplate')[], make: (id: string) => HazardEvent) => {
    const events = (resolve(expansion, ref, to, 'each', joinPath(path, key))?.ids ?? []).map(make);
    return events.length > 1 ? { any: events } : events[0];
  };
  const several = (events: readonly WrittenEvent[], key: 'any' | 'all') => {
    const expanded = events.flatMap((event, i) => expandEvent(event, joinPath(joinPath(path, key), i), expansion) ?? []);
    return expanded.length === events.length && expanded.length > 0 ? expanded : undefined;
  };
  if (written.noTorque) {
    const noTorque = pair(written.noTorque, 'no-torque', ['shaft']);
    return noTorque && { noTorque };
  }
  if (written.noMotion) {
    const noMotion = pair(written.noMotion, 'no-motion', ['servo', 'link', 'swashplate', 'rotor', 'part', 'joint']);
    return noMotion && { noMotion };
  }
  if (written.comesOff !== undefined) return each(written.comesOff, 'comes-off', ['part'], (comesOff) => ({ comesOff }));
  if (written.jams !== undefined) return each(written.jams, 'jams', ['part', 'joint', 'shaft', 'servo', 'swashplate'], (jams) => ({ jams }));
  const any = written.any && several(written.any, 'any');
  const all = written.all && several(written.all, 'all');
  return any ? { any } : all && { all };
}

export function expandService(id: string, written: ReadsAs<typeof serviceField>, expansion: Expansion): ServiceItem | undefined {
  const path = joinPath('service', id);
  const each = written.of === undefined ? undefined : resolve(expansion, written.of, ['part', 'joint', 'module'], 'each', joinPath(path, 'of'))?.ids;
  if (written.of === undefined || !each || written.do === undefined || !written.every) return undefined;
  return compact({ id, path, title: written.title ?? titleFrom(id), of: written.of, each, do: written.do, everyTime: written.every.time, everyFlights: written.every.flights, tip: written.tip, why: written.why, caution: written.caution });
}

export function expandLimit(id: string, written: ReadsAs<typeof limitField>, expansion: Expansion): Limit | undefined {
  const path = joinPath('limits', id);
  const { atLeast, atMost, of } = written;
  if (!atLeast && !atMost) {
    const tried = ['at-least', 'at-most'].some((key) => expansion.spans.has(joinPath(path, key)));
    if (!tried) expansion.report.add('key/missing', joinPath(path, 'at-most'), spanOf(expansion.spans, path), { section: path, key: 'at-least or at-most', about: 'the bound.', example: 'at-most: 17000 rpm' });
    return undefined;
  }
  if (atLeast && atMost && atLeast.siUnit !== atMost.siUnit) {
    const at = joinPath(path, 'at-most');
    expansion.report.add('value/range', at, spanOf(expansion.spans, at), { wanted: `it is in ${atMost.unit}, at-least is in ${atLeast.unit}`, remedy: 'Give both bounds in units of one kind.' });
    return undefined;
  }
  if (atLeast?.min !== undefined && atMost?.max !== undefined && atLeast.min > atMost.max) {
    const at = joinPath(path, 'at-most');
    expansion.report.add('value/range', at, spanOf(expansion.spans, at), { wanted: 'at-most is smaller than at-least', remedy: 'Swap the two.' });
    return undefined;
  }
  if (of === undefined) return undefined;
  return compact({ id, path, of, window: compact({ min: atLeast?.min, max: atMost?.max }), unit: (atMost ?? atLeast)?.unit, source: written.source, why: written.why });
}

export function expandBag(id: string, written: ReadsAs<typeof bagField>, expansion: Expansion): Bag {
  const path = joinPath('bags', id);
  const holds = Object.entries(written.holds ?? {}).flatMap(([ref, count]) => (resolve(expansion, ref, ['part', 'joint'], 'each', joinPath(joinPath(path, 'holds'), ref)) ? [{ ref, count }] : []));
  return { id, path, title: written.title ?? titleFrom(id), holds };
}
