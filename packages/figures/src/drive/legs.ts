import type { Coupling, CouplingSide, EntryPath, Finding, FindingCode, Machine } from '@rotorwright/machine';
import { beltRatio, bevelMeshRatio, externalMeshRatio, internalMeshRatio, rigidRatio, type Ratio, rotateAbout } from '@rotorwright/mechanics';
import { findingAt } from './finding.ts';
import { alignment, squareTo } from './vectors.ts';
import { directionWord } from './words.ts';

/** What a coupling does to motion that passes from its driver to its driven side. */
export interface Leg {
  readonly coupling: Coupling;
  readonly driver: string;
  readonly driven: string;
  /** Speed of the driven shaft over that of the driver: `multiply / divide`, tooth counts. Undefined while a count is missing or impossible. */
  readonly multiply?: number;
  readonly divide?: number;
  /** Sense of the driven shaft about its own axis, over that of the driver. Undefined when the file does not settle it. */
  readonly sense?: 1 | -1;
  /** Entries without which ratio or sense stays unknown. */
  readonly missing: readonly EntryPath[];
  readonly missingForSense: readonly EntryPath[];
}

const toothed = new Set(['external', 'internal', 'bevel', 'belt']);

/** Meshes and belts have teeth; clutches and rigid joints pass motion on one to one. */
export const hasTeeth = (coupling: Coupling): boolean => toothed.has(coupling.kind);

/** Fewest teeth that can mesh at all with a whole tooth always in contact. Common practice, no source. */
const fewestTeeth = 4;

interface Sink {
  readonly findings: Finding[];
  readonly machine: Machine;
}

function report(sink: Sink, code: FindingCode, path: EntryPath, values: Finding['values']): void {
  sink.findings.push(findingAt(sink.machine, code, path, values));
}

function teethOf(side: CouplingSide, coupling: Coupling, sink: Sink): number | undefined {
  const teeth = side.teeth;
  if (teeth === undefined) return undefined;
  if (Number.isInteger(teeth) && teeth >= fewestTeeth) return teeth;
  report(sink, 'gear/impossible', `${side.path}.teeth`, {
    coupling: coupling.id,
    reason: Number.isInteger(teeth) ? `a gear with ${teeth} teeth cannot mesh` : `${teeth} is not a whole number of teeth`,
    right: `a whole number of ${fewestTeeth} teeth or more`,
  });
  return undefined;
}

/** Sense passed on by a coupling, or what keeps it unknown. */
function senseOf(coupling: Coupling, sink: Sink): { sense?: 1 | -1; missing: EntryPath[] } {
  const driverShaft = sink.machine.shafts.get(coupling.driver.on)!;
  const drivenShaft = sink.machine.shafts.get(coupling.driven.on)!;
  const missing: EntryPath[] = [];
  if (!driverShaft.axis) missing.push(`${driverShaft.path}.axis`);
  if (!drivenShaft.axis && driverShaft !== drivenShaft) missing.push(`${drivenShaft.path}.axis`);
  if (!driverShaft.axis || !drivenShaft.axis) return { missing };
  const from = driverShaft.axis;
  const to = drivenShaft.axis;
  const aligned = alignment(from, to);
  const axes = { coupling: coupling.id, kind: coupling.kind, driver: driverShaft.id, driven: drivenShaft.id, driverAxis: directionWord(from), drivenAxis: directionWord(to) };

  if (coupling.kind === 'bevel') return bevelSense(coupling, from, to, axes, sink);
  if (coupling.kind === 'belt') return beltSense(coupling, from, to, axes, sink);
  if (aligned === undefined) {
    const gears = hasTeeth(coupling);
    report(sink, gears ? 'gear/impossible' : 'drive/axis', coupling.path, {
      ...axes,
      shaft: drivenShaft.id,
      reason: gears ? `the axes of ${driverShaft.id} and ${drivenShaft.id} are not parallel` : `${coupling.id} joins ${driverShaft.id} and ${drivenShaft.id}, whose axes are not parallel.`,
      right: gears ? 'parallel axes, or kind: bevel' : 'Give both shafts the same axis.',
    });
    return { missing: [`${drivenShaft.path}.axis`] };
  }
  const mesh = coupling.kind === 'external' ? externalMeshRatio : internalMeshRatio;
  return { sense: signOf(hasTeeth(coupling) ? mesh({ axis: from, teeth: 1 }, { axis: to, teeth: 1 }) : rigidRatio(from, to)), missing };
}

const signOf = (ratio: Ratio): 1 | -1 => (ratio.numerator < 0n ? -1 : 1);

type Axis = NonNullable<CouplingSide['lies']>;

function bevelSense(coupling: Coupling, from: Axis, to: Axis, axes: Finding['values'], sink: Sink): { sense?: 1 | -1; missing: EntryPath[] } {
  if (alignment(from, to) !== undefined) {
    report(sink, 'gear/impossible', coupling.path, { ...axes, reason: `the axes of ${coupling.driver.on} and ${coupling.driven.on} are parallel`, right: 'crossing axes, or kind: external' });
    return { missing: [`${coupling.driven.path}.on`] };
  }
  const senses: (1 | -1)[] = [];
  const missing: EntryPath[] = [];
  for (const [side, axis] of [[coupling.driver, from], [coupling.driven, to]] as const) {
    const lies = side.lies && alignment(side.lies, axis);
    if (lies !== undefined) {
      senses.push(lies);
      continue;
    }
    missing.push(`${side.path}.lies`);
    const along = `${directionWord(axis)} or ${directionWord([-axis[0], -axis[1], -axis[2]])}`;
    report(sink, 'drive/side', `${side.path}.lies`, {
      ...axes,
      shaft: side.on,
      ...(side.lies ? { reason: `The gear on ${side.on} is said to lie ${directionWord(side.lies)} from the crossing point, off its own axis.`, right: `Write lies: ${along}.` } : {}),
    });
  }
  const [first, second] = senses;
  if (!first || !second) return { missing };
  return { sense: signOf(bevelMeshRatio({ axis: from, teeth: 1, side: first }, { axis: to, teeth: 1, side: second })), missing };
}

function beltSense(coupling: Coupling, from: Axis, to: Axis, axes: Finding['values'], sink: Sink): { sense?: 1 | -1; missing: EntryPath[] } {
  const parallel = alignment(from, to);
  const twist = coupling.twist ?? (parallel === undefined ? undefined : 0);
  if (twist === undefined) {
    report(sink, 'drive/twist', `${coupling.path}.twist`, { ...axes, right: 'Add twist: 90 ° or -90 °, right-handed about runs.' });
    return { missing: [`${coupling.path}.twist`] };
  }
  // A half turn comes out the same about any direction across the shaft.
  const halfTurns = Math.abs(twist / Math.PI - Math.round(twist / Math.PI)) < 1e-9;
  const runs = coupling.runs ?? (halfTurns ? squareTo(from) : undefined);
  if (!runs) {
    report(sink, 'drive/twist', `${coupling.path}.runs`, { ...axes, right: 'Add runs: aft, or another direction.' });
    return { missing: [`${coupling.path}.runs`] };
  }
  if (alignment(rotateAbout(from, runs, twist), to) === undefined) {
    report(sink, 'drive/twist', `${coupling.path}.twist`, {
      ...axes,
      reason: `A twist of ${Math.round((twist * 180) / Math.PI)}° about ${directionWord(runs)} does not bring the axis of ${coupling.driver.on} in line with that of ${coupling.driven.on}.`,
      right: 'Give the twist that turns one axis into the other.',
    });
    return { missing: [`${coupling.path}.twist`] };
  }
  return { sense: signOf(beltRatio({ axis: from, teeth: 1 }, { axis: to, teeth: 1 }, { runs, angle: twist })), missing: [] };
}

/** Turns the couplings of a machine into legs. A coupling on an unknown shaft is left out: the reader has reported it. */
export function legsOf(machine: Machine): { readonly legs: ReadonlyMap<string, Leg>; readonly findings: readonly Finding[] } {
  const sink: Sink = { findings: [], machine };
  const legs = new Map<string, Leg>();
  // A file that says nothing of axes asks for no directions; one that begins to is told what is left.
  const shafts = [...machine.shafts.values()];
  if (shafts.some((shaft) => shaft.axis)) for (const shaft of shafts) if (!shaft.axis) report(sink, 'drive/axis', shaft.path, { shaft: shaft.id });
  for (const coupling of machine.couplings.values()) {
    if (!machine.shafts.has(coupling.driver.on) || !machine.shafts.has(coupling.driven.on)) continue;
    const { sense, missing: missingForSense } = senseOf(coupling, sink);
    const missing: EntryPath[] = [];
    let multiply: number | undefined = 1;
    let divide: number | undefined = 1;
    if (hasTeeth(coupling)) {
      multiply = teethOf(coupling.driver, coupling, sink);
      divide = teethOf(coupling.driven, coupling, sink);
      if (multiply === undefined) missing.push(`${coupling.driver.path}.teeth`);
      if (divide === undefined) missing.push(`${coupling.driven.path}.teeth`);
      if (coupling.kind === 'internal' && multiply !== undefined && divide === multiply) {
        report(sink, 'gear/impossible', coupling.path, { coupling: coupling.id, reason: 'a ring gear needs more teeth than the gear inside it', right: 'different tooth counts' });
      }
    }
    legs.set(coupling.id, {
      coupling,
      driver: coupling.driver.on,
      driven: coupling.driven.on,
      ...(multiply === undefined ? {} : { multiply }),
      ...(divide === undefined ? {} : { divide }),
      ...(sense === undefined ? {} : { sense }),
      missing,
      missingForSense,
    });
  }
  return { legs, findings: sink.findings };
}
