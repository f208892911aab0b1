import { holds, planBuild, stackFindings, type Holds, type Plan } from '@rotorwright/build';
import { driveDirections } from '@rotorwright/figures';
import { replay, type BuildState, type Entry, type MachineOnBoard } from '@rotorwright/logbook';
import { readMachine, type Finding, type Machine } from '@rotorwright/machine';

/** What the text of a machine file says. */
export interface ReadFile {
  /** Absent when the text is no YAML at all. */
  readonly machine?: Machine;
  /** Absent together with the machine. */
  readonly plan?: Plan;
  /** What holds what. Absent together with the machine. */
  readonly held?: Holds;
  /** Of the file and of its plan. */
  readonly findings: readonly Finding[];
}

/** A machine on the board with everything that follows from its file and its entries. */
export interface MachineView extends ReadFile {
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly revision: string;
  readonly demo: boolean;
  /** Those of the book. What waits on this device is none of them until the book has taken it. */
  readonly entries: readonly Entry[];
  readonly state?: BuildState;
}

export function readFile(text: string): ReadFile {
  const { machine, findings } = readMachine(text);
  if (!machine) return { findings };
  const directions = driveDirections(machine);
  const plan = planBuild(machine, { directions });
  return { machine, plan, held: holds(machine), findings: [...findings, ...plan.findings, ...stackFindings(machine, directions)] };
}

/** @param now  ms since 1970: what cures depends on it */
export function viewOf(board: MachineOnBoard, read: ReadFile, now: number): MachineView {
  return {
    ...read,
    id: board.id,
    title: read.machine?.name ?? board.id,
    text: board.text,
    revision: board.revision,
    demo: board.demo,
    entries: board.entries,
    ...(read.plan ? { state: replay(read.plan, board.entries, new Date(now)) } : {}),
  };
}
