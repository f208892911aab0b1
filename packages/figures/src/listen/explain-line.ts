import type { MachineSound } from './machine-sound.ts';

/** A line as the ear found it: its order, and the family that explains it. */
export interface LineToExplain {
  readonly order: number;
  readonly family?: string;
  /** Of the family's first line. */
  readonly multiple?: number;
}

/** What a line speaks of. Causes and checks are common practice, no source: they say where to look, not what is wrong. */
export interface LineExplained {
  readonly title: string;
  /** "2 × main rotor" */
  readonly seenAt: string;
  /** Any sound machine has it. */
  readonly expected: boolean;
  readonly cause: string;
  readonly confirm: string;
  readonly inspect: string;
}

/** How near a line's order must come to a whole multiple of a shaft's turns, as a part of it. */
const nearShaft = 0.004;

const times = (multiple: number): string => `${Number(multiple.toFixed(2))} ×`;

/** What a line of a recording speaks of, by its order: order, not frequency, names the shaft. */
export function explainLine({ families, shafts }: MachineSound, line: LineToExplain): LineExplained {
  const family = families.find(({ id }) => id === line.family);
  if (family !== undefined && line.multiple !== undefined) {
    const seenAt = `${times(line.multiple)} ${family.id === 'firing' ? 'firing' : family.title}`;
    const faint = !Number.isInteger(Number(line.multiple.toFixed(6)));
    switch (family.group) {
      case 'main':
        return faint
          ? { title: 'Main rotor out of balance or track', seenAt: `${times(line.order)} main rotor`, expected: false, cause: 'One blade heavier, or flying higher, than the other.', confirm: 'Look at the tips from the side in hover; put tape on one tip.', inspect: 'Weigh blades and grips; feel the spindle bearings.' }
          : { title: 'Main blades passing', seenAt, expected: true, cause: 'Any rotor makes it.', confirm: 'Nothing to confirm.', inspect: 'Nothing, unless it has grown.' };
      case 'tail':
        return faint
          ? { title: 'Tail rotor out of balance', seenAt: '1 × tail rotor', expected: false, cause: 'Blades or grips of unlike weight, or a bent shaft.', confirm: 'Take the tail blades off, run again, and compare.', inspect: 'Weigh the blades; turn the shaft against a dial gauge.' }
          : { title: 'Tail blades passing', seenAt, expected: true, cause: 'Any rotor makes it.', confirm: 'Nothing to confirm.', inspect: 'Nothing, unless it has grown.' };
      case 'engine':
        return faint
          ? { title: 'Firing not the same from turn to turn', seenAt: `${times(line.multiple)} firing`, expected: false, cause: 'Rich mixture or weak spark.', confirm: 'Change the mixture by a little and listen again.', inspect: 'Plug, its gap, the fuel line.' }
          : { title: family.id === 'firing' ? 'Engine firing' : 'Motor turning', seenAt, expected: true, cause: 'Any engine or motor makes it.', confirm: 'Nothing to confirm.', inspect: 'Nothing, unless it has grown.' };
      case 'mesh':
        return { title: `Teeth: ${family.title.replace(/^teeth of /u, '')}`, seenAt, expected: false, cause: 'Backlash, run-out, dry or worn teeth.', confirm: 'Mark a tooth, turn by hand, feel for tight places.', inspect: 'Backlash all round, contact marks, grease.' };
    }
  }
  for (const { shaft, title, order } of shafts) {
    const multiple = Math.round(line.order / order);
    if (multiple < 1 || multiple > 3 || Math.abs(line.order / (multiple * order) - 1) > nearShaft) continue;
    return { title: `${title} out of true`, seenAt: `${multiple} × ${shaft}`, expected: false, cause: multiple === 1 ? 'Out of balance, or bent.' : 'Bent, or a coupling out of line.', confirm: 'Take off what can be taken off that shaft, and run again.', inspect: 'Run-out of the shaft; its bearings by feel.' };
  }
  return { title: 'Nothing of the machine explains it', seenAt: `order ${line.order.toFixed(3)}`, expected: false, cause: 'A bearing, a loose part, or somebody else’s machine.', confirm: 'Record again at another rotor speed: what keeps its order is yours.', inspect: 'Feel the bearings; press on covers and links.' };
}
