import { isBearing, type Joint, type Machine } from '@rotorwright/machine';
import { isPushFit } from './by-hand.ts';
import { consumableOf, hasGrade, isGlued, wantsHeat, wetLocks } from './locks.ts';
import { isPolycarbonate, touchedParts } from './touched.ts';

interface Caution {
  readonly words: string;
  readonly source: string;
  readonly applies: (machine: Machine, joint: Joint) => boolean;
}

/** What can hurt somebody, or spoil the part, while a joint is made. In the order in which it is said. */
const fitting: readonly Caution[] = [
  {
    words: 'Keep the compound off the polycarbonate: it cracks.',
    source: 'makers of anaerobic compounds: can crack some thermoplastics, polycarbonate by name (read)',
    applies: (machine, joint) => wetLocks(joint).length > 0 && touchedParts(machine, joint).some(isPolycarbonate),
  },
  {
    words: 'Compound and degreaser harm skin and lungs: wear gloves, open a window, no flame; keep both off polycarbonate.',
    source: 'safety data sheet of an anaerobic compound: skin sensitiser (read); solvents: common practice, no source',
    applies: (machine, joint) => wetLocks(joint).length > 0 && bottleCautions(machine, joint).length === 0,
  },
  {
    words: 'Keep compound off polycarbonate; use degreaser in fresh air, away from flames.',
    source: 'as above, where the file itself says how the compound harms',
    applies: (machine, joint) => bottleCautions(machine, joint).length > 0,
  },
  {
    words: 'Glue and sanding dust harm skin and lungs: wear gloves and a mask, open a window.',
    source: 'common practice, no source',
    applies: (_, joint) => joint.kind === 'bond',
  },
  {
    words: 'Never test a cured bond with a wrench: that breaks it.',
    source: 'Transport Canada TP185 3/05: a witness mark instead of a check of torque (read)',
    applies: (_, joint) => isGlued(joint),
  },
  {
    words: 'No compound on an insert: it spoils the insert.',
    source: 'common practice, no source',
    applies: (_, joint) => hasGrade(joint, 'insert'),
  },
  {
    words: 'A circlip flies: wear eye protection.',
    source: 'common practice, no source',
    applies: (_, joint) => joint.kind === 'circlip',
  },
  {
    words: 'A hardened pin splinters when it is struck: wear eye protection.',
    source: 'common practice, no source',
    applies: (_, joint) => joint.kind === 'pin' && (joint.fit === undefined || !/slide|loose/iu.test(joint.fit)),
  },
  {
    words: 'Press only through the ring that has the interference, never through the balls.',
    source: 'makers of rolling bearings, mounting instructions (read)',
    applies: (machine, joint) => joint.kind === 'press' && !isPushFit(machine, joint) && touchedParts(machine, joint).some(isBearing),
  },
  {
    words: 'Keep fingers out of the press, and wear eye protection.',
    source: 'common practice, no source',
    applies: (machine, joint) => joint.kind === 'press' && !isPushFit(machine, joint),
  },
];

const heat = 'Heat burns, and warm compound gives off fumes: wear gloves, open a window, take fuel and lithium packs away.';

/** What the file says of the compounds that a joint takes. */
function bottleCautions(machine: Machine, joint: Joint): readonly string[] {
  return [...new Set(wetLocks(joint).flatMap((lock) => consumableOf(machine, lock)?.caution ?? []))];
}

/** What the file itself says comes first: it knows the part. */
export function cautionsOf(machine: Machine, joint: Joint): readonly string[] {
  return [...(joint.caution === undefined ? [] : [joint.caution]), ...bottleCautions(machine, joint), ...fitting.filter(({ applies }) => applies(machine, joint)).map(({ words }) => words)];
}

/**
 * What can hurt somebody while a module is stripped.
 *
 * @source heat: safety data sheet of an anaerobic compound (read); 80 °C for sealed and greased bearings (from memory); circlips: common practice, no source
 */
export function strippingCautions(machine: Machine, joints: readonly Joint[]): readonly string[] {
  const warm = joints.some((joint) => wantsHeat(machine, joint) || joint.kind === 'press');
  return [
    ...new Set([
      ...(warm ? [heat, 'Greased and sealed bearings stand 80 °C at most: take them away before more heat.'] : []),
      ...(joints.some((joint) => joint.kind === 'circlip') ? ['A circlip flies: wear eye protection.'] : []),
      ...joints.flatMap((joint) => (joint.caution === undefined ? [] : [joint.caution])),
    ]),
  ];
}
