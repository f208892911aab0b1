import type { BearingRole, Facing } from './stacks/index.ts';
import type { EntryPath, Feel, Finding, JointKind } from '@rotorwright/machine';

export type StepKind = 'strip' | 'assemble' | 'fit' | 'measure' | 'do';

export interface StepPart {
  /** Instance id, or thing id when all its copies are meant. */
  readonly id: string;
  readonly title: string;
  readonly count: number;
}

/** Screws, nuts and their like, as one looks for them in the bags. */
export interface Fastener {
  readonly kind: JointKind;
  readonly thread?: string;
  /** m */
  readonly length?: number;
  readonly class?: string;
  readonly head?: string;
  readonly count: number;
}

/** What is read of a step when it is done. */
export interface StepWords {
  /** The one sentence that leads: command first, at most 20 words. */
  readonly action: string;
  /** What the action is made of, in order, each one sentence of at most 20 words: clean, grease, lock, tighten, mark. */
  readonly actions: readonly string[];
  readonly caution?: string | undefined;
  readonly parts: readonly StepPart[];
  /** Stacks: which way round things go, and why. */
  readonly facings?: readonly Facing[] | undefined;
  /** Stacks: what each bearing carries, and what stops its rings. */
  readonly bearings?: readonly BearingRole[] | undefined;
}

/** Where a step stands among the others. */
export interface StepPlace {
  /** Ids of steps with any of which this one has to be done again: a stack with what closes it, a measurement with what it measures. */
  readonly fallsWith?: readonly string[];
  /** Ids of steps that come first. */
  readonly after: readonly string[];
  /** Those of `after` whose compound or glue must also have cured. */
  readonly cured: readonly string[];
  /** Somebody must look at it again after it was signed: a crash or an injury hangs on it. */
  readonly secondLook?: true;
}

/** One thing to do and to sign for. Its id is the id of its thing (`tail-case/pin-screw`); stripping a module is signed under the module's id. */
export interface Step extends StepWords, StepPlace {
  readonly id: string;
  readonly kind: StepKind;
  readonly module: string;
  readonly path: EntryPath;
  /** Short title: "Set screw in input shaft". */
  readonly title: string;
  readonly why?: string;
  readonly tip?: string;
  readonly photo?: string;
  readonly tools: readonly string[];
  readonly consumables: readonly string[];
  readonly thread?: string;
  /** Lock grades as written; undefined when the file does not say. */
  readonly locks?: readonly string[];
  /** N·m or by feel. */
  readonly torque?: number | 'snug';
  /** s until the lock holds; 0 when nothing cures. */
  readonly cure: number;
  /** What is to be ticked one by one: instance ids; a single one when there are no copies. */
  readonly ticks: readonly string[];
  /** Measurements: what is wanted. */
  readonly measure?: { readonly unit?: string; readonly shown?: string; readonly min?: number; readonly max?: number; readonly ask?: string; readonly wanted?: readonly Feel[]; readonly with?: string };
  /** s of work, from the kind of work, or as the file says. */
  readonly takes: number;
  /** What is screwed in here. */
  readonly fastener?: Fastener;
  /** Former id, whose signatures it carries on. */
  readonly was?: string;
  /** Hash over what is done here: `f2:` and hex. A signature stands only while this is the same. */
  readonly fingerprint: string;
}

export interface PlannedModule {
  readonly id: string;
  readonly title: string;
  /** Modules that come first. */
  readonly after: readonly string[];
  readonly steps: readonly Step[];
}

/** Everything that is to be done to a machine. */
export interface Plan {
  /** In the order of work. */
  readonly modules: readonly PlannedModule[];
  /** By id, in the order of work; where modules lean on each other, it goes to and fro between them. */
  readonly steps: ReadonlyMap<string, Step>;
  readonly findings: readonly Finding[];
  /** Fingerprint of a step under the rule before (f1), so that what was signed under it stands. */
  readonly olderFingerprint?: (step: string) => string;
}
