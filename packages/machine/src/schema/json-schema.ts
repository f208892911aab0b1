import { isUnit, listedUnits, sameDimension, unit } from '@rotorwright/units';
import type { Field, Spec } from './field.ts';
import { rootField } from './root.ts';

/** JSON Schema 2020-12, as far as it is used here. */
export type JsonSchema = { readonly [key: string]: unknown };

const numberPattern = String.raw`[+\-−]?(\d+\.?\d*|\.\d+)([eE][+\-−]?\d+)?(?![\d.])`;
const idPattern = '^[A-Za-z0-9][A-Za-z0-9-]*$';

/**
 * The schema of machine files for editors, made from the same descriptions that files are read by. It is a help while
 * typing: whatever it accepts is still read by `readMachine`, and whatever that accepts passes here.
 */
export function machineSchema(): JsonSchema {
  const definitions = new Map<string, JsonSchema>();
  const body = toSchema(rootField, definitions);
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: 'Machine file',
    ...body,
    $defs: Object.fromEntries(definitions),
  };
}

type Definitions = Map<string, JsonSchema>;

function toSchema(field: Field<unknown>, definitions: Definitions): JsonSchema {
  return { description: `${field.about} Example: ${field.example}`, ...bodyOf(field, definitions) };
}

function bodyOf(spec: Spec, definitions: Definitions): JsonSchema {
  switch (spec.kind) {
    case 'text':
      return { type: ['string', 'number'], examples: [spec.example] };
    case 'reference':
      return { type: ['string', 'number'], examples: [spec.example, ...Object.keys(spec.words ?? {})] };
    case 'word':
      return { enum: Object.keys(spec.words) };
    case 'count':
      return { type: 'integer', minimum: spec.min, maximum: spec.max };
    case 'number':
      return { type: 'number', ...(spec.min === undefined ? {} : { minimum: spec.min }), ...(spec.max === undefined ? {} : { maximum: spec.max }), ...(spec.above === undefined ? {} : { exclusiveMinimum: spec.above }) };
    case 'flag':
      return { type: 'boolean' };
    case 'quantity':
      return spec.words ? { anyOf: [{ enum: Object.keys(spec.words) }, quantityOf(spec.unit)] } : quantityOf(spec.unit);
    case 'size':
      return sizeOf(spec.unit);
    case 'window':
      return windowOf(spec.unit);
    case 'fact':
      return { type: ['string', 'number'] };
    case 'direction':
      return { anyOf: [{ enum: ['up', 'down', 'fore', 'aft', 'left', 'right'] }, { type: 'array', items: { type: 'number' }, minItems: 3, maxItems: 3 }] };
    case 'turns':
      return { type: 'string', pattern: String.raw`^\s*(counter-?clockwise|anti-?clockwise|clockwise)\s+from\s+(the\s+)?(above|below|front|behind|left|right)\s*$` };
    case 'helix':
      return { type: 'string', pattern: String.raw`^\s*${numberPattern}\s*\S+\s+(left|right)\s*$` };
    case 'interval':
      return { type: 'string', pattern: String.raw`^\s*(\d+\s+flights?|${numberPattern}\s*${unitPattern('h')})\s*$` };
    case 'copies':
      return { anyOf: [{ type: 'integer', minimum: 1 }, { type: 'array', items: { type: ['string', 'number'], pattern: idPattern }, minItems: 1 }] };
    case 'record':
      return recordOf(spec, definitions);
    case 'map':
      return { type: ['object', 'null'], additionalProperties: toSchema(spec.of, definitions), ...(spec.keys === 'id' ? { propertyNames: { pattern: idPattern } } : {}) };
    case 'list':
      return { type: 'array', items: toSchema(spec.of, definitions), ...(spec.min === undefined ? {} : { minItems: spec.min }), ...(spec.max === undefined ? {} : { maxItems: spec.max }) };
    case 'some':
      return { anyOf: [toSchema(spec.of, definitions), { type: 'array', items: toSchema(spec.of, definitions) }] };
    case 'per-copy':
      return { anyOf: [toSchema(spec.of, definitions), { type: 'object', additionalProperties: toSchema(spec.of, definitions) }] };
    case 'by-shape':
      return { anyOf: [spec.scalar, spec.list, spec.map].flatMap((shape) => (shape ? [toSchema(shape, definitions)] : [])) };
    case 'again':
      return againOf(spec, definitions);
  }
}

/** Named once under `$defs`; it is entered before it is described, because it contains itself. */
function againOf(spec: Extract<Spec, { kind: 'again' }>, definitions: Definitions): JsonSchema {
  if (!definitions.has(spec.name)) {
    definitions.set(spec.name, {});
    definitions.set(spec.name, spec.name === 'variant' ? loose(toSchema(spec.get(), definitions)) : toSchema(spec.get(), definitions));
  }
  return { $ref: `#/$defs/${spec.name}` };
}

/** A variant states pieces: nothing is required in it, and null removes. */
function loose(schema: unknown): JsonSchema {
  const relaxed = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(relaxed);
    if (typeof value !== 'object' || value === null) return value;
    const { required: _required, anyOf, properties, additionalProperties, ...rest } = value as Record<string, unknown>;
    const choices = Array.isArray(anyOf) ? anyOf.filter((one: Record<string, unknown>) => !isRequirement(one)).map(relaxed) : [];
    return {
      ...rest,
      ...(choices.length > 0 ? { anyOf: choices } : {}),
      ...(properties === undefined ? {} : { properties: Object.fromEntries(Object.entries(properties as object).map(([key, one]) => [key, { anyOf: [{ type: 'null' }, relaxed(one)] }])) }),
      ...(typeof additionalProperties === 'object' ? { additionalProperties: { anyOf: [{ type: 'null' }, relaxed(additionalProperties)] } } : { additionalProperties }),
    };
  };
  return relaxed(schema) as JsonSchema;
}

function isRequirement(schema: Record<string, unknown>): boolean {
  return Object.keys(schema).length === 1 && 'required' in schema;
}

function recordOf(spec: Extract<Spec, { kind: 'record' }>, definitions: Definitions): JsonSchema {
  const { needed } = spec;
  const requirement = needed.length === 0 ? {} : spec.alternative === undefined ? { required: needed } : { anyOf: [{ required: needed }, { required: [spec.alternative] }] };
  return {
    type: needed.length === 0 ? ['object', 'null'] : 'object',
    properties: Object.fromEntries(Object.entries(spec.fields).map(([key, field]) => [key, toSchema(field, definitions)])),
    additionalProperties: false,
    ...requirement,
  };
}

function quantityOf(sample: string): JsonSchema {
  return { type: 'string', pattern: String.raw`^\s*${numberPattern}\s*${unitPattern(sample)}\s*$` };
}

function sizeOf(sample: string): JsonSchema {
  return { type: 'string', pattern: String.raw`^\s*${numberPattern}(\s*[^\s±]*(\s+to\s+|\s*±\s*)${numberPattern})?\s*${unitPattern(sample)}\s*$` };
}

function windowOf(sample: string | undefined): JsonSchema {
  const unitText = sample === undefined ? String.raw`\S.*` : unitPattern(sample);
  const pattern = String.raw`^\s*(at (least|most)\s+)?${numberPattern}(\s*\S*\s+to\s+${numberPattern})?\s*${unitText}\s*$`;
  return sample === undefined ? { anyOf: [{ type: 'number' }, { type: 'string', pattern }] } : { type: 'string', pattern };
}

/** The listed units of the sample's kind, and products and quotients, which are too many to list. */
function unitPattern(sample: string): string {
  const wanted = unit(sample);
  if (!isUnit(wanted)) throw new Error(`schema: the sample unit ${sample} is not known`);
  const spellings = listedUnits.filter((one) => sameDimension(one.dimension, wanted.dimension)).flatMap((one) => [one.symbol, ...(one.spellings ?? [])]);
  const alternatives = [...spellings.map((spelling) => spelling.replaceAll(/[.*+?^${}()|[\]\\]/gu, String.raw`\$&`)), String.raw`1?/.+`, String.raw`[^\d\s].*[·⋅*/^⁻¹²³⁴⁵⁶\d ].*`];
  return `(${alternatives.join('|')})`;
}
