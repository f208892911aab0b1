import type { Direction, Window } from './drive.ts';
import type { EntryPath } from './place.ts';

/**
 * Ids.
 *   module copy   `tail-grip.A` (or `clutch` when the module has no copies)
 *   thing         `tail-grip.A/stud`      a part, joint, stack, measurement or step of one module copy
 *   instance      `tail-case/post.b`      one copy of a thing; equal to the thing's id when it has no copies
 *
 * Where a reference means a thing with copies as a whole (what is undone for access, what adjusts a measurement, what
 * closes a stack), its thing id stands for all its copies.
 */
export type InstanceId = string;

/** What every thing of a module shares. Words never change what is computed. */
export interface Thing {
  readonly id: string;
  /** Id of the module copy that it belongs to. */
  readonly module: string;
  readonly key: string;
  readonly path: EntryPath;
  readonly title: string;
  /** Names of its copies ('1', '2', … for a count); empty when there is one. */
  readonly copies: readonly string[];
  readonly instances: readonly InstanceId[];
  readonly tip?: string;
  readonly why?: string;
  readonly caution?: string;
  readonly photo?: string;
  /** Former id, whose signatures it carries on. */
  readonly was?: string;
  /** Parts list: order code, price with currency, how many lie in the drawer. */
  readonly code?: string;
  readonly price?: string;
  readonly spares?: number;
}

/** What must be off or undone before a hand and a tool get there. `off` names a part, joint or module (copy). */
export type Access = { readonly off: string } | { readonly all: readonly Access[] } | { readonly any: readonly Access[] };

/** A size that was made within limits, m; without a window the three are alike. */
export interface Size {
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
}

export interface Part extends Thing {
  /** 'part', or a word of the trade: shim, washer, deep-groove, thrust-ball, one-way, threaded-rod … */
  readonly kind: string;
  readonly type?: string;
  readonly material?: string;
  /** kg */
  readonly mass?: number;
  /** Centre of each copy in the machine's axes, m. */
  readonly at?: ReadonlyMap<InstanceId, readonly [x: number, y: number, z: number]>;
  /** How its length lies. */
  readonly lies?: Direction;
  /** Nominal sizes in m by name: bore, outer, width, length, thickness, diameter, inner, housing-bore, … */
  readonly sizes: Readonly<Record<string, number>>;
  /** Those that the file gives with a window. */
  readonly limits?: Readonly<Record<string, Size>>;
  /** Shims: the thicknesses in the bag, m, and how many there are of each. */
  readonly shims?: readonly { readonly thickness: number; readonly count: number }[];
  /** Dynamic and static rating, N. */
  readonly dynamic?: number;
  readonly static?: number;
  /** One-way clutches: torque that the maker allows, N·m. */
  readonly maxTorque?: number;
  /** Bearings: number of balls. */
  readonly balls?: number;
  /** Bearings: tolerance of the hole that takes it: N7. */
  readonly housingFit?: string;
  readonly thread?: string;
  /** Id of a consumable. */
  readonly grease?: string;
  readonly turnsWith?: InstanceId;
  readonly movesOn?: InstanceId;
  readonly facing: Readonly<Record<string, string>>;
  readonly ground: boolean;
  /** Shims: id of the measurement that decides its size. */
  readonly until?: string;
  readonly behind?: Access;
}

export type JointKind =
  | 'screw' | 'set-screw' | 'bolt' | 'nut' | 'stud' | 'threaded-end' | 'threaded-rod'
  | 'pin' | 'circlip' | 'clamp' | 'press' | 'bond' | 'ball-link';

export type LockGrade = 'insert' | 'low' | 'medium' | 'high' | 'retaining' | 'wire' | 'tab' | 'press' | 'none';

/** One lock of a joint: a grade, and the consumable that gives it where the file names one. */
export interface Lock {
  readonly grade: LockGrade;
  readonly consumable?: string;
}

export interface JointInstance {
  readonly id: InstanceId;
  /** The part that has the thread, hole or seat. */
  readonly seat?: InstanceId;
  /** Parts or joints that it keeps in place. */
  readonly holds: readonly InstanceId[];
}

export interface Joint extends Thing {
  readonly kind: JointKind;
  readonly type?: string;
  readonly each: readonly JointInstance[];
  readonly thread?: string;
  /** Hand of the thread. */
  readonly hand: 'right' | 'left';
  readonly class?: string;
  readonly head?: string;
  readonly material?: string;
  /** m */
  readonly engagement?: number;
  readonly length?: number;
  /** Diameter of the circle on which its copies stand, m. */
  readonly circle?: number;
  readonly diameter?: number;
  readonly onto?: 'flat' | 'dimple';
  readonly fit?: string;
  /** Undefined: the file does not say. Empty never; `[{grade: 'none'}]` says none. */
  readonly locks?: readonly Lock[];
  /** N·m, or by feel. Undefined: to be computed. */
  readonly torque?: number | 'snug';
  readonly goesIn?: Direction;
  readonly enough?: number;
  readonly group?: string;
  readonly backup: boolean;
  readonly carries?: readonly ('torque' | 'place' | 'motion')[];
  readonly tool?: string;
  readonly mark: boolean;
  readonly behind?: Access;
}

export type StackItem = { readonly part: InstanceId } | { readonly shoulder: InstanceId } | { readonly joint: InstanceId };

/** `towards` is one of the stack's two ends. A coupling's direction is derived. */
export type StackLoad = { readonly coupling: string } | { readonly pushes: InstanceId; readonly towards: string };

/** The two columns of a stack: what goes with its spindle, what goes with its housing. */
export type Member = 'spindle' | 'housing';

export interface Stack extends Thing {
  readonly spindle: InstanceId;
  readonly housing: readonly InstanceId[];
  readonly ends: readonly [string, string];
  readonly order: readonly StackItem[];
  readonly loads: readonly StackLoad[];
  /** Lengths between the two faces of each column that stop the rings, m. */
  readonly room?: Readonly<Partial<Record<Member, Size>>>;
  /** How far the rings are to be pressed together, m. */
  readonly preload?: Window;
}

/** How something moves under the hand, from the tightest to the loosest. */
export type Feel = 'binds' | 'snug' | 'free' | 'loose';

export interface Measurement extends Thing {
  /** end-play, drag, backlash, gap, length, mass, runout, pull, count, or a figure's name. */
  readonly quantity: string;
  /** What it is of: a thing of the module, a coupling, a sensor. */
  readonly of?: string;
  readonly with?: string;
  /** SI. Undefined with no `ask` and no `wanted`: comes from the figure of that name. */
  readonly window?: Window;
  /** SI unit of the window, and the unit that the builder wrote. */
  readonly unit?: string;
  readonly shown?: string;
  readonly ask?: string;
  /** Answers in four words with which it is good; never beside a window. */
  readonly wanted?: readonly Feel[];
  readonly setBy: readonly InstanceId[];
}

export interface WrittenStep extends Thing {
  readonly do: string;
  readonly after: readonly string[];
  readonly before: readonly string[];
  /** s */
  readonly takes?: number;
}

/** One copy of a module. */
export interface Module {
  readonly id: string;
  /** Key in the file, shared by all copies. */
  readonly key: string;
  readonly copy?: string;
  readonly path: EntryPath;
  readonly title: string;
  readonly comes: 'assembled' | 'loose';
  /** The whole copy as weighed, kg. */
  readonly mass?: number;
  /** Centre of the whole copy in the machine's axes, m. */
  readonly at?: readonly [x: number, y: number, z: number];
  readonly behind?: Access;
  readonly openings: Readonly<Record<string, Access>>;
  readonly keep?: string;
  readonly tip?: string;
  readonly why?: string;
  readonly caution?: string;
  readonly photo?: string;
  readonly was?: string;
  /** Thing ids in the order of the file. */
  readonly parts: readonly string[];
  readonly joints: readonly string[];
  readonly stacks: readonly string[];
  readonly measurements: readonly string[];
  readonly steps: readonly string[];
}
