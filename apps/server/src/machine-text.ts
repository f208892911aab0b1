import { planBuild, type Step } from '@rotorwright/build';
import { formatFinding, readMachine, type Finding, type Machine } from '@rotorwright/machine';

/** Largest machine file that is taken, bytes of UTF-8. */
export const largestMachineFile = 2_000_000;

export interface ReadText {
  readonly machine: Machine | undefined;
  readonly findings: readonly Finding[];
}

/** A file whose text is no YAML at all cannot be kept: nothing could be said about it, or edited in it, but the text itself. */
const unreadable = new Set(['yaml/syntax', 'yaml/too-large', 'yaml/too-deep', 'yaml/alias']);

export const unreadableFindings = (findings: readonly Finding[]): readonly Finding[] => findings.filter((finding) => unreadable.has(finding.code));

export const worded = (findings: readonly Finding[], file = 'machine.yaml'): readonly string[] => findings.map((finding) => formatFinding(finding, file));

/** Steps of the machine's plan by id; empty where the file does not say enough to plan. */
export function stepsOf(machine: Machine): ReadonlyMap<string, Step> {
  return new Map(planBuild(machine).modules.flatMap((module) => module.steps.map((step) => [step.id, step] as const)));
}

export { readMachine };
