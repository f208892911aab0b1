import { planBuild, workOfChange, type ChangeWork, type Plan } from '@rotorwright/build';
import { compareFigures, compareMargins, compareWindows, driveDirections, figures, isSetting, margins, newFindings, type FigureChange, type FigureSet, type MarginCrossing, type Margins, type WindowChange } from '@rotorwright/figures';
import { applyEdits, differences, readMachine, wordFinding, type Difference, type Finding, type Machine, type Version } from '@rotorwright/machine';
import type { Idea } from './ideas.ts';

/** Today's machine, as every idea is held against it. */
interface Today {
  readonly text: string;
  readonly machine: Machine;
  readonly plan: Plan;
  readonly margins: Pick<Margins, 'all'>;
  readonly findings: readonly Finding[];
}

/** @throws Error when the text is no machine at all: a page without one asks for none */
export function readToday(text: string): Today {
  const { machine, findings } = readMachine(text);
  if (!machine) throw new Error('readToday: the text must be a machine file');
  return { text, machine, plan: plannedOf(machine), margins: margins(figures(machine)), findings };
}

/** What an idea makes of the file, and what it means at the bench: plain data, worked out beside the page. */
export interface Tried {
  /** The file, and which of its variants is meant. */
  readonly version: Version;
  readonly machine: Machine;
  readonly edits: readonly Difference[];
  readonly work: ChangeWork;
  /** Margins that cross one. */
  readonly crossings: readonly MarginCrossing[];
}

/** What would come of an idea. */
export interface Trial extends Tried {
  readonly set: FigureSet;
  readonly figures: readonly FigureChange[];
  /** Figures that are typed into something. */
  readonly settings: readonly FigureChange[];
  readonly windows: readonly WindowChange[];
  /** What is found after it, and not before. */
  readonly findings: readonly Finding[];
}

/** Why an idea cannot be tried, in sentences. */
export interface Refusal {
  readonly trouble: readonly string[];
}

/** Works an idea out from the file: a few tenths of a second for a large machine. */
export function tryOut(today: Today, idea: Idea): Tried | Refusal {
  // 1. The file as it would be.
  const edited = 'variant' in idea ? { text: today.text } : applyEdits(today.text, idea.edits);
  if ('findings' in edited) return refusal(edited.findings);
  const version = { text: edited.text, ...('variant' in idea ? { variant: idea.variant } : {}) };
  const { machine, findings } = readMachine(version.text, version);
  const known = new Set(today.findings.map(({ code, path }) => `${code} ${path}`));
  const wrong = findings.filter(({ severity, code, path }) => severity === 'error' && !known.has(`${code} ${path}`));
  if (!machine || wrong.length > 0) return refusal(wrong.length > 0 ? wrong : findings);
  // 2. What it means at the bench, and for what carries a load.
  return { version, machine, edits: differences({ text: today.text }, version), work: workOfChange(today, { machine, plan: plannedOf(machine) }), crossings: compareMargins(today.margins, margins(figures(machine))) };
}

/** How much a trial takes beyond what it keeps today: bands, limits, slots and margins. */
export const newlyExceeded = ({ windows, crossings }: Pick<Trial, 'windows' | 'crossings'>): number => newlyLeft(windows).length + crossings.filter(({ word }) => word === 'exceeded').length;

/** Windows that are kept today and would be left. */
export const newlyLeft = (windows: readonly WindowChange[]): readonly WindowChange[] => windows.filter(({ before, after }) => after?.kept === false && before?.kept !== false);

const plannedOf = (machine: Machine): Plan => planBuild(machine, { directions: driveDirections(machine) });

/** What an idea moves. */
export function withFigures(today: Machine, tried: Tried): Trial {
  const [was, set] = [figures(today), figures(tried.machine)];
  const changes = compareFigures(was, set, tried.edits.map(({ path }) => path));
  return { ...tried, set, figures: changes.filter((change) => !isSetting(change)), settings: changes.filter(isSetting), windows: compareWindows(was, set), findings: newFindings(was, set) };
}

/**
 * The file that has what was tried out as its own entries. A variant's pieces are written where they belong; the variant stays
 * beside them, and then says nothing new.
 */
export function fileOf(today: Pick<Today, 'text'>, { version, edits }: Pick<Trial, 'version' | 'edits'>): { readonly text: string } | Refusal {
  if (version.variant === undefined) return { text: version.text };
  const written = applyEdits(today.text, edits.map(({ path, after }) => (after === undefined ? { path } : { path, value: after })));
  if ('findings' in written) return refusal(written.findings);
  const wrong = differences(written, version);
  return wrong.length === 0 ? written : { trouble: [`These entries of the variant cannot be written by the app: ${wrong.slice(0, 4).map(({ path }) => path).join(', ')}. Write them into the file yourself.`] };
}

const refusal = (findings: readonly Finding[]): Refusal => ({
  trouble: findings.slice(0, 4).map((finding) => {
    const { problem, remedy } = wordFinding(finding);
    return `${problem} ${remedy}`.trim();
  }),
});

/** A difference in a few words: "Pinion 14 → 15". */
export function editWords({ couplings, parts, thingOf }: Machine, { path, before, after }: Difference): string {
  const [, id = '', side] = /^drive\.([^.]+)\.(driver|driven)\.teeth$/u.exec(path) ?? [];
  const coupling = couplings.get(id);
  const part = coupling?.[side === 'driver' ? 'driver' : 'driven'].part;
  const named = part === undefined ? undefined : parts.get(thingOf.get(part) ?? part)?.title;
  const title = named ?? (coupling === undefined ? path.split('.').slice(1).join(' ') : `${coupling.title}, ${side === 'driver' ? 'driving' : 'driven'}`);
  return before === undefined ? `${title} ${after}, new` : after === undefined ? `${title} ${before}, gone` : `${title} ${before} → ${after}`;
}
