import type { Report } from '../read/report.ts';
import type { Span } from '../read/fields.ts';
import type { ReferenceKind } from '../schema/field.ts';

/** One thing of a module, before it is copied. */
export interface NamedThing {
  readonly kind: ReferenceKind;
  readonly copies: readonly string[];
}

export interface NamedModule {
  readonly copies: readonly string[];
  readonly things: ReadonlyMap<string, NamedThing>;
  readonly openings: ReadonlySet<string>;
}

/** Everything in the file that a reference can mean. */
export interface Names {
  readonly modules: ReadonlyMap<string, NamedModule>;
  /** Shafts, couplings, rotors, sensors, consumables, types, servos, levers, links, the swashplate, the slider. */
  readonly others: ReadonlyMap<ReferenceKind, ReadonlyMap<string, readonly string[]>>;
}

/** Copies that whoever refers is one of: the copy of his module, and his own. */
export interface Sibling {
  readonly names: readonly string[];
  readonly current: string;
}

/** Who refers, and from where. */
export interface Referrer {
  readonly module?: string;
  readonly siblings: readonly Sibling[];
}

/** What the expanding rooms share. */
export interface Expansion {
  readonly report: Report;
  readonly spans: ReadonlyMap<string, Span>;
  readonly names: Names;
}

/** Place of an entry, or of the nearest one above it. */
export function spanOf(spans: ReadonlyMap<string, Span>, path: string): Span {
  for (let at = path; at !== ''; at = at.slice(0, Math.max(0, at.lastIndexOf('.')))) {
    const span = spans.get(at);
    if (span) return span;
  }
  return { start: 0, end: 0 };
}
