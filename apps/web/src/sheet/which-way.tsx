import { titleOf, type Facing } from '@rotorwright/build';
import type { Machine } from '@rotorwright/machine';
import type { ReactNode } from 'react';
import './which-way.css';

export interface WhichWayProps {
  readonly machine: Machine;
  readonly facings: readonly Facing[];
}

/** Which way round each thing of a stack goes; why is one touch away. */
export function WhichWay({ machine, facings }: WhichWayProps): ReactNode {
  if (facings.length === 0) return undefined;
  const name = (id: string): string => {
    const part = machine.parts.get(machine.thingOf.get(id) ?? id);
    return part ? titleOf(part) : id;
  };
  return (
    <section className="which-way" aria-label="Which way round">
      {facings.map(({ id, words, why, from }) => (
        <details key={`${id} ${words}`}>
          <summary><b>{name(id)}:</b> {words}. <span>{from === 'taste' ? 'A matter of taste' : 'Why this way round?'}</span></summary>
          <p>{why}</p>
        </details>
      ))}
    </section>
  );
}
