import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { machineSchema, newMachine, readMachine, type JsonSchema } from '../src/index.ts';
import { broken, fixture } from './fixture.ts';

/**
 * Independent route: the few keywords of JSON Schema 2020-12 that the schema uses, judged by the rules of the
 * specification (sections 6 and 10 of its validation and core documents, from memory).
 */
function errorsIn(value: unknown, schema: JsonSchema, root: JsonSchema, path = ''): string[] {
  const keys = new Set(['$schema', '$defs', 'title', 'description', 'examples', '$ref', 'type', 'enum', 'pattern', 'minimum', 'maximum', 'exclusiveMinimum', 'properties', 'required', 'additionalProperties', 'propertyNames', 'items', 'minItems', 'maxItems', 'anyOf']);
  for (const key of Object.keys(schema)) if (!keys.has(key)) throw new Error(`the test does not know the keyword ${key}`);
  const s = schema as { $ref?: string; type?: string | string[]; enum?: unknown[]; pattern?: string; minimum?: number; maximum?: number; exclusiveMinimum?: number; properties?: Record<string, JsonSchema>; required?: string[]; additionalProperties?: JsonSchema | false; propertyNames?: JsonSchema; items?: JsonSchema; minItems?: number; maxItems?: number; anyOf?: JsonSchema[] };
  const errors: string[] = [];
  const fail = (why: string) => errors.push(`${path}: ${why}`);
  if (s.$ref !== undefined) {
    const name = s.$ref.replace('#/$defs/', '');
    const target = (root as { $defs: Record<string, JsonSchema> }).$defs[name];
    if (!target) throw new Error(`no definition ${name}`);
    errors.push(...errorsIn(value, target, root, path));
  }
  const kind = value === null ? 'null' : Array.isArray(value) ? 'array' : Number.isInteger(value) ? 'integer' : typeof value;
  if (s.type !== undefined && ![s.type].flat().some((type) => type === kind || (type === 'number' && kind === 'integer'))) fail(`is ${kind}, not ${[s.type].flat().join(' or ')}`);
  if (s.enum && !s.enum.includes(value)) fail('is none of the words');
  if (s.pattern !== undefined && typeof value === 'string' && !new RegExp(s.pattern, 'u').test(value)) fail(`“${value}” does not match`);
  if (typeof value === 'number' && ((s.minimum !== undefined && value < s.minimum) || (s.maximum !== undefined && value > s.maximum) || (s.exclusiveMinimum !== undefined && value <= s.exclusiveMinimum))) fail('out of range');
  if (Array.isArray(value)) {
    if ((s.minItems !== undefined && value.length < s.minItems) || (s.maxItems !== undefined && value.length > s.maxItems)) fail('wrong length');
    if (s.items) for (const [i, item] of value.entries()) errors.push(...errorsIn(item, s.items, root, `${path}.${i}`));
  } else if (typeof value === 'object' && value !== null) {
    for (const key of s.required ?? []) if (!(key in value)) fail(`wants ${key}`);
    for (const [key, one] of Object.entries(value)) {
      if (s.propertyNames) errors.push(...errorsIn(key, s.propertyNames, root, `${path}.${key}`));
      const own = s.properties && Object.hasOwn(s.properties, key) ? s.properties[key] : s.additionalProperties;
      if (own === false) fail(`has no key ${key}`);
      else if (own) errors.push(...errorsIn(one, own, root, `${path}.${key}`));
    }
  }
  if (s.anyOf && !s.anyOf.some((one) => errorsIn(value, one, root, path).length === 0)) fail('fits no alternative');
  return errors;
}

const schema = machineSchema();
const check = (text: string) => errorsIn(parse(text, { logLevel: 'silent' }), schema, schema);

describe('the JSON Schema', () => {
  it('accepts what the reader accepts', () => {
    expect(check(fixture)).toEqual([]);
  });

  it('compiles every pattern, and every example of a quantity or window fits its own', () => {
    let tested = 0;
    const walk = (node: unknown): void => {
      if (Array.isArray(node)) node.forEach(walk);
      if (typeof node !== 'object' || node === null) return;
      const { pattern, description } = node as { pattern?: string; description?: string };
      const example = description?.match(/Example: (.*)$/u)?.[1];
      if (pattern !== undefined && example !== undefined) {
        expect(example).toMatch(new RegExp(pattern, 'u'));
        tested += 1;
      }
      Object.values(node).forEach(walk);
    };
    walk(schema);
    expect(tested).toBeGreaterThan(80);
  });

  it('describes every key with a sentence and an example', () => {
    const walk = (node: unknown): void => {
      if (typeof node !== 'object' || node === null) return;
      const { properties } = node as { properties?: Record<string, { description?: string; anyOf?: { description?: string }[]; $ref?: string }> };
      for (const [key, one] of Object.entries(properties ?? {})) expect(one.description ?? one.anyOf?.at(-1)?.description ?? one.$ref, key).toMatch(/Example: .+|#\//u);
      Object.values(node).forEach(walk);
    };
    walk(schema);
  });

  // Each is a mistake that needs no knowledge of other entries, so an editor can see it.
  it.each([
    ['rotorwright: 1', 'rotorwright: 2'], ['chord: 54 mm', 'chord: 54'], ['diameter: 1400 mm', 'diameter: 1400 g'], ['teeth: 14,', 'teeth: 14.5,'], ['kind: belt', 'kind: bellt'], ['comes: assembled', 'colour: red'],
    ['tail: {axis: left}', 'tail: {axis: sideways}'], ['helix: 12 ° left', 'helix: 12 °'], ['clutch: {kind: centrifugal-clutch, driver: {on: crank}, driven', 'clutch: {kind: centrifugal-clutch, driven'],
    ['diameter: 1250 mm', 'diamter: 1250 mm'], ['every: 60 h', 'every: 60 flighs'],
  ])('refuses %s written as %s', (from, to) => {
    expect(check(broken(from, to)).length).toBeGreaterThan(0);
  });

  it('lets a variant state pieces and remove with null', () => {
    expect(check('variants: {a: {drive: {m: {driver: {teeth: 12}}, n: null}, rotors: {main: {wanted: null}}, modules: {b: {joints: {c: {lock: high}}}}}}')).toEqual([]);
  });
});

describe('a first file', () => {
  const facts = { name: 'Plover: two', power: 'engine', speed: (14_600 * Math.PI) / 30, turns: 'counter-clockwise from above', pinionTeeth: 14, mainGearTeeth: 116, mainRotor: { blades: 2, diameter: 1.55 }, tail: { kind: 'belt', driverTeeth: 46, drivenTeeth: 10, rotor: { blades: 2, diameter: 0.272 } } } as const;

  it('is about fifteen lines, without a finding, and says what was given', () => {
    const text = newMachine(facts);
    expect(text.split('\n').length).toBeLessThan(20);
    const { machine, findings } = readMachine(text);
    expect(findings).toEqual([]);
    expect(machine).toMatchObject({ id: 'plover-two', name: 'Plover: two' });
    expect(machine?.power.engine?.speed).toBeCloseTo(facts.speed, 6);
    expect(machine?.power.engine?.turns).toEqual([0, 0, 1]);
    expect(machine?.couplings.get('main-mesh')).toMatchObject({ driver: { on: 'crank', teeth: 14 }, driven: { on: 'mast', teeth: 116 } });
    expect(machine?.couplings.get('tail-drive')).toMatchObject({ kind: 'belt', runs: [-1, 0, 0], driver: { teeth: 46 }, driven: { teeth: 10 } });
    expect(machine?.rotors.get('tail')?.diameter).toBeCloseTo(0.272, 12);
    expect(check(text)).toEqual([]);
  });

  it('does without a tail, and with a motor', () => {
    const { machine, findings } = readMachine(newMachine({ name: 'Plover', power: 'motor', speed: 2000, pinionTeeth: 12, mainGearTeeth: 130, mainRotor: { blades: 3, diameter: 1.2 } }));
    expect(findings).toEqual([]);
    expect(machine?.power.motor?.on).toBe('motor');
    expect([...(machine?.rotors.keys() ?? [])]).toEqual(['main']);
  });

  it('throws for numbers that are none', () => {
    expect(() => newMachine({ ...facts, speed: Number.NaN })).toThrow(/speed/);
    expect(() => newMachine({ ...facts, pinionTeeth: 14.5 })).toThrow(/pinionTeeth/);
    expect(() => newMachine({ ...facts, mainRotor: { blades: 2, diameter: 0 } })).toThrow(/diameter/);
  });
});
