import type { Gate } from '@rotorwright/reliability';
import type { Body } from './assembly.ts';
import type { Holds } from './holds.ts';

/** What follows when something is left out. */
export interface Missing {
  /** Bodies that leave their place, in the order of the file. */
  readonly comesOff: readonly Body[];
  /** Hazards that are then there. */
  readonly hazards: readonly string[];
}

/**
 * What if this is missed? Everything else is taken to hold.
 *
 * @param things joints and stacks, as a whole or by copy (`clutch/cap-screw.2`); what is none of these changes nothing
 */
export function missing({ machine, hazards, events, graph: { assembly, losses } }: Holds, things: readonly string[]): Missing {
  const wanted = new Set(things);
  const happened = new Set<string>();
  for (const { id, kind, step, copy } of events.values()) {
    if (wanted.has(step) && (kind === 'undone' || kind === 'skipped' || kind === 'wrong')) happened.add(id);
    else if (copy !== undefined && wanted.has(copy) && kind === 'undone') happened.add(id);
  }
  // Gates stand in the book in the order in which they were made: each after all that it asks.
  for (const [name, gate] of Object.entries(losses.book.gates)) if (isTrue(gate, happened)) happened.add(name);
  const isLost = (loss: string | undefined): boolean => loss !== undefined && happened.has(loss);
  return {
    comesOff: [...assembly.bodies].filter((body) => isLost(losses.place(body))),
    hazards: [...hazards.values()].filter(({ tree }) => isLost(tree?.top)).map(({ hazard }) => hazard.id).filter((id) => machine.hazards.has(id)),
  };
}

function isTrue(gate: Gate, happened: ReadonlySet<string>): boolean {
  if (gate.type === 'or') return gate.inputs.some((input) => happened.has(input));
  if (gate.type === 'and') return gate.inputs.every((input) => happened.has(input));
  return gate.inputs.filter((input) => happened.has(input)).length >= gate.k;
}
