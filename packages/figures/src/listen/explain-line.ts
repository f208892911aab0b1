import type { MachineSound, SoundFamily } from './machine-sound.ts';

/** A line as the ear found it: its order, and the family that explains it. */
export interface LineToExplain {
  readonly order: number;
  readonly family?: string;
  /** Of the family's first line. */
  readonly multiple?: number;
  /** Where it lies whole turns of a shaft beside a line that a family has. */
  readonly beside?: { readonly family: string; readonly multiple: number; readonly shaft: string; readonly turns: number };
  /** Where nothing explains it, but it is a multiple of a lower line that nothing explains. */
  readonly row?: { readonly order: number; readonly multiple: number };
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
  /** Couplings and parts of the file whose steps are worth a look, the likeliest first. */
  readonly things: readonly string[];
}

/** A flaw as the ear found it. */
export interface FlawToExplain {
  readonly order: number;
  readonly candidates: readonly { readonly bearing: string; readonly place: string; readonly order: number }[];
}

/** How near a line's order must come to a whole multiple of a shaft's turns, as a part of it. */
const nearShaft = 0.004;

const times = (multiple: number): string => `${Number(multiple.toFixed(2))} ×`;

type Said = Omit<LineExplained, 'seenAt' | 'things'>;

const nothing = { confirm: 'Nothing to confirm.', inspect: 'Nothing, unless it has grown.' } as const;

/** What each group says by its own lines, and by the faint ones between. */
const ofGroup: Readonly<Record<SoundFamily['group'], (family: SoundFamily, faint: boolean) => Said>> = {
  main: (_, faint) => (faint
    ? { title: 'Main rotor out of balance or track', expected: false, cause: 'One blade heavier, or flying higher, than the other.', confirm: 'Look at the tips from the side in hover; put tape on one tip.', inspect: 'Weigh blades and grips; feel the spindle bearings.' }
    : { title: 'Main blades passing', expected: true, cause: 'Any rotor makes it.', ...nothing }),
  tail: (_, faint) => (faint
    ? { title: 'Tail rotor out of balance', expected: false, cause: 'Blades or grips of unlike weight, or a bent shaft.', confirm: 'Take the tail blades off, run again, and compare.', inspect: 'Weigh the blades; turn the shaft against a dial gauge.' }
    : { title: 'Tail blades passing', expected: true, cause: 'Any rotor makes it.', ...nothing }),
  engine: ({ id }, faint) => (faint
    ? { title: 'Firing not the same from turn to turn', expected: false, cause: 'Rich mixture or weak spark.', confirm: 'Change the mixture by a little and listen again.', inspect: 'Plug, its gap, the fuel line.' }
    : { title: id === 'firing' ? 'Engine firing' : 'Motor turning', expected: true, cause: 'Any engine or motor makes it.', ...nothing }),
  mesh: ({ title }) => ({ title: `Teeth: ${title.replace(/^teeth of /u, '')}`, expected: false, cause: 'Backlash, run-out, dry or worn teeth.', confirm: 'Mark a tooth, turn by hand, feel for tight places.', inspect: 'Backlash all round, contact marks, grease.' }),
};

/** What a line of a recording speaks of, by its order: order, not frequency, names the shaft. */
export function explainLine(sound: MachineSound, line: LineToExplain): LineExplained {
  const { families, shafts } = sound;
  const family = families.find(({ id }) => id === line.family);
  if (family !== undefined && line.multiple !== undefined) {
    const faint = !Number.isInteger(Number(line.multiple.toFixed(6)));
    const named = family.id === 'firing' ? 'firing' : family.title;
    const seenAt = faint && family.group === 'main' ? `${times(line.order)} main rotor` : faint && family.group === 'tail' ? '1 × tail rotor' : `${times(line.multiple)} ${named}`;
    return { ...ofGroup[family.group](family, faint), seenAt, things: family.things };
  }
  if (line.beside !== undefined) return besideLine(sound, line.beside);
  for (const { shaft, title, order, things } of shafts) {
    const multiple = Math.round(line.order / order);
    if (multiple < 1 || multiple > 3 || Math.abs(line.order / (multiple * order) - 1) > nearShaft) continue;
    return { title: `${title} out of true`, seenAt: `${multiple} × ${shaft}`, expected: false, cause: multiple === 1 ? 'Out of balance, or bent.' : 'Bent, or a coupling out of line.', confirm: 'Take off what can be taken off that shaft, and run again.', inspect: 'Run-out of the shaft; its bearings by feel.', things };
  }
  const row = line.row === undefined ? '' : `, ${times(line.row.multiple)} order ${line.row.order.toFixed(3)}`;
  return { title: 'Nothing of the machine explains it', seenAt: `order ${line.order.toFixed(3)}${row}`, expected: false, cause: 'A bearing, a loose part, or somebody else’s machine.', confirm: 'Record again at another rotor speed: what keeps its order is yours.', inspect: 'Feel the bearings; press on covers and links.', things: [] };
}

/** A line that swells once a turn of a shaft has others beside it. */
function besideLine({ families, shafts }: MachineSound, { family: id, multiple, shaft, turns }: NonNullable<LineToExplain['beside']>): LineExplained {
  const family = families.find((each) => each.id === id);
  const turning = shafts.find((each) => each.shaft === shaft);
  return {
    title: `${turning?.title ?? shaft} makes ${family?.title ?? id} swell`,
    seenAt: `${times(multiple)} ${family?.title ?? id} ${turns < 0 ? '−' : '+'} ${Math.abs(turns)} × ${shaft}`,
    expected: false,
    cause: 'A wheel out of true, a bent shaft, or one bad tooth: it comes round once a turn.',
    confirm: 'Turn that shaft by hand; look for one tight or loose place in each turn.',
    inspect: 'Run-out of wheel and shaft, each tooth, the fit of the wheel.',
    things: [...(turning?.things ?? []), ...(family?.things ?? [])],
  };
}

/** What strikes of a bearing speak of. */
export function explainFlaw({ bearings }: MachineSound, { order, candidates }: FlawToExplain): LineExplained {
  const named = candidates.flatMap(({ bearing, place, order: expected }) => {
    const known = bearings.find(({ id }) => id === bearing);
    return known === undefined ? [] : [{ ...known, place, expected }];
  });
  const titles = [...new Set(named.map(({ title, place, id }) => `${title} (${id}), ${place}`))];
  const first = named[0];
  return {
    title: `Bearing strikes: ${titles.join('; or ')}`,
    seenAt: `order ${order.toFixed(3)}${first === undefined ? '' : `, ${(100 * (order / first.expected - 1)).toFixed(1).replace('-', '−')} % from the file`}`,
    expected: false,
    cause: 'A worn race or ball, dirt, or dried grease.',
    confirm: 'Turn the shaft slowly by hand, loaded from the side; feel for grit.',
    inspect: 'Replace it when it feels rough: grease does not mend it.',
    things: named.map(({ id }) => id),
  };
}

/** A line as it was kept, in words: "2 × teeth of main gear", "order 5.61". */
export function lineTitle({ families, bearings }: MachineSound, { source, multiple, order }: { readonly source?: string; readonly multiple?: number; readonly order: number }): string {
  const family = families.find(({ id }) => id === source);
  if (family !== undefined) return `${times(multiple ?? 1)} ${family.title}`;
  const bearing = bearings.find(({ id }) => source?.startsWith(`${id} `));
  if (bearing !== undefined) return `${bearing.title} (${bearing.id}), ${source!.slice(bearing.id.length + 1)}`;
  return source ?? `order ${order.toFixed(2)}`;
}
