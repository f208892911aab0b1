import type { ReactNode } from 'react';
import type { Machine } from '@rotorwright/machine';

export interface MissingProps {
  readonly machine: Machine;
  readonly onGo: (section: string) => void;
}

interface Section {
  readonly key: string;
  readonly has: (machine: Machine) => boolean;
  readonly unlocks: string;
}

const sections: readonly Section[] = [
  { key: 'power', has: (machine) => machine.power.engine !== undefined || machine.power.motor !== undefined, unlocks: 'speeds of every shaft, from the speed of engine or motor' },
  { key: 'shafts', has: (machine) => machine.shafts.size > 0, unlocks: 'the drive, shaft by shaft' },
  { key: 'drive', has: (machine) => machine.couplings.size > 0, unlocks: 'ratios, directions of rotation, mesh frequencies, gear choices' },
  { key: 'rotors', has: (machine) => machine.rotors.size > 0, unlocks: 'tip speeds, tip Mach, stored energy, pull of the blades' },
  { key: 'sensors', has: (machine) => machine.sensors.size > 0, unlocks: 'what the governor is told: pulses and ratio' },
  { key: 'modules', has: (machine) => machine.modules.size > 0, unlocks: 'the build plan, the bench, drawings, locks and what undoes them' },
  { key: 'consumables', has: (machine) => machine.consumables.size > 0, unlocks: 'cure times and greases in each step' },
  { key: 'controls', has: (machine) => machine.controls.servos.size > 0 || machine.controls.links.size > 0, unlocks: 'links and servos of swashplate and tail' },
  { key: 'hazards', has: (machine) => machine.hazards.size > 0, unlocks: 'which parts of the build keep somebody from harm' },
  { key: 'service', has: (machine) => machine.service.size > 0, unlocks: 'what is due, and when' },
  { key: 'limits', has: (machine) => machine.limits.size > 0, unlocks: 'margins against what a maker allows' },
];

/** Sections that the file does not have, and what each would make known. */
export function Missing({ machine, onGo }: MissingProps): ReactNode {
  const missing = sections.filter((section) => !section.has(machine));
  if (missing.length === 0) return undefined;
  return (
    <section className="area file-missing" aria-label="What the file could also say">
      <h2>Not in the file yet</h2>
      <ul>{missing.map((section) => <li key={section.key}><button type="button" className="link" onClick={() => onGo(section.key)}>{section.key}</button> would give {section.unlocks}.</li>)}</ul>
    </section>
  );
}
