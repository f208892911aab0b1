import data from '../data/gears.json' with { type: 'json' };
import type { Check, Source } from './check.ts';

interface Quantity {
  readonly value: number;
  readonly unit: string;
}

interface GearCase {
  readonly id: string;
  readonly title: string;
  readonly inputs: Readonly<Record<string, Quantity>>;
  readonly outputs: Readonly<Record<string, Quantity>>;
  readonly tolerance: { readonly default: { readonly type: string; readonly value: number } };
  readonly source: string;
  readonly provenance: string;
}

// The cases name different quantities; each is read by the key that it is known to have, and a missing one throws.
const cases = data.cases as unknown as readonly GearCase[];

const SI: Readonly<Record<string, number>> = { mm: 1e-3, deg: Math.PI / 180, '-': 1 };

export function gearCase(id: string): GearCase {
  const found = cases.find((one) => one.id === id);
  if (found === undefined) throw new RangeError(`gearCase: there is no case ${id}`);
  return found;
}

export function si(quantities: Readonly<Record<string, Quantity>>, name: string): number {
  const quantity = quantities[name];
  const factor = quantity === undefined ? undefined : SI[quantity.unit];
  if (quantity === undefined || factor === undefined) throw new RangeError(`si: there is no ${name} in mm, deg or -`);
  return quantity.value * factor;
}

const kinds: Readonly<Record<string, Source['kind']>> = { read: 'published', memory: 'published', derived: 'independent route' };

/** A check of one printed value; the tolerance of the case is in the printed unit. */
export function gearCheck(id: string, calculation: string, printed: string, output: string, inputs: Readonly<Record<string, unknown>>): Check {
  const { title, outputs, source, provenance, tolerance } = gearCase(id);
  const unit = SI[outputs[printed]!.unit]!;
  const relative = tolerance.default.type === 'rel';
  return {
    calculation,
    title: `${title}: ${output}`,
    source: { document: provenance === 'memory' ? `${source} (from memory)` : source, place: `printed there as ${printed}`, kind: kinds[provenance]! },
    inputs,
    output,
    expected: si(outputs, printed),
    tolerance: relative ? tolerance.default.value : tolerance.default.value * unit,
    mode: relative ? 'relative' : 'absolute',
  };
}
