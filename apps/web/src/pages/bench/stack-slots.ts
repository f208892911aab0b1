import type { StackAnalysis } from '@rotorwright/build';
import { lengthAlong, type Joint, type Machine, type Member, type Part, type Stack, type StackItem } from '@rotorwright/machine';

export type SlotKind = 'radial-bearing' | 'roller' | 'thrust-bearing' | 'shim' | 'ring' | 'gear' | 'body' | 'spindle-shoulder' | 'housing-shoulder' | 'closing';

/** One place along the axis of a stack. All lengths in mm; radii from the axis. */
export interface Slot {
  readonly kind: SlotKind;
  /** The part or joint that stands here; for a shoulder the part that has it. */
  readonly id: string;
  readonly title: string;
  readonly left: number;
  readonly right: number;
  /** Radius of the bore or of the spindle here. */
  readonly inner: number;
  readonly outer: number;
  /** Gears: radii of root and pitch circle. */
  readonly root?: number;
  readonly pitch?: number;
  /** Thrust bearings: radius of the bore of the washer that floats, and the end at which it lies, when that is settled. */
  readonly looseBore?: number;
  readonly loose?: string;
  /** Which way round it goes, and what it does. */
  readonly remark?: string;
  /** Which column stops what leans on it: spindle or housing; bearings and loose rings stop nothing. */
  readonly stops?: Member;
  /** Index into `housing` of the stack for whatever leans on the housing. */
  readonly housing?: number;
  /** Some length here is not given by the file and was chosen to be seen. */
  readonly schematic: boolean;
  /** Drawn shorter than it is. */
  readonly shortened: boolean;
  readonly joint?: Joint;
  readonly part?: Part;
}

export interface StackLayout {
  readonly stack: Stack;
  readonly slots: readonly Slot[];
  /** Left and right end as named by the file. */
  readonly ends: readonly [left: string, right: string];
  /** True when the file's order was turned round so that outboard and aft lie right. */
  readonly turned: boolean;
  readonly loads: readonly DrawnLoad[];
  /** Titles of bevel gears in the stack. */
  readonly bevels: readonly string[];
  /** Radius of the largest bearing: what all chosen lengths are measured by, mm. */
  readonly reference: number;
}

/** True where balls or rollers stand between spindle and housing. */
export const isBearing = (slot: Slot): boolean => slot.kind === 'radial-bearing' || slot.kind === 'thrust-bearing' || slot.kind === 'roller';

const millimetres = (metres: number | undefined): number | undefined => (metres === undefined ? undefined : metres * 1000);

const radialKinds = new Set(['deep-groove', 'angular-contact', 'self-aligning']);
const rollerKinds = new Set(['needle', 'one-way', 'roller']);
/** Words for an end that belongs on the left of a drawing. */
const leftEnds = new Set(['inboard', 'fore', 'forward', 'front', 'down', 'low', 'lower', 'left', 'bottom', 'inner']);

const idOf = (item: StackItem): string => ('part' in item ? item.part : 'shoulder' in item ? item.shoulder : item.joint);

function partOf(machine: Machine, id: string): Part | undefined {
  return machine.parts.get(machine.thingOf.get(id) ?? id);
}

function jointOf(machine: Machine, id: string): Joint | undefined {
  return machine.joints.get(machine.thingOf.get(id) ?? id);
}

/** Nominal diameter of a metric thread, mm, as its name says: M4x0.5 → 4. */
export function threadDiameter(thread: string | undefined): number | undefined {
  const found = /^M(\d+(?:\.\d+)?)/.exec(thread ?? '');
  return found ? Number(found[1]) : undefined;
}

/** Pitch radius and half tooth heights of a gear, where a mesh of the drive gives its teeth. */
function gearOf(machine: Machine, id: string): { readonly pitch: number; readonly module: number; readonly width?: number } | undefined {
  for (const coupling of machine.couplings.values()) {
    if (coupling.module === undefined) continue;
    for (const side of [coupling.driver, coupling.driven]) {
      if (side.part !== id || side.teeth === undefined) continue;
      const module = coupling.module * 1000;
      const pitch = (module * side.teeth) / 2 / Math.cos(coupling.helix?.angle ?? 0);
      const width = millimetres(coupling.width);
      return width === undefined ? { pitch, module } : { pitch, module, width };
    }
  }
  return undefined;
}

interface Rough {
  readonly item: StackItem;
  readonly kind: SlotKind;
  readonly id: string;
  readonly title: string;
  readonly bore?: number;
  readonly outer?: number;
  readonly part?: Part;
  readonly joint?: Joint;
}

function rough(machine: Machine, stack: Stack, item: StackItem): Rough {
  const id = idOf(item);
  if ('shoulder' in item) {
    const part = partOf(machine, id);
    const base = { item, id, title: `shoulder of ${part?.title ?? id}`, kind: stack.housing.includes(id) ? ('housing-shoulder' as const) : ('spindle-shoulder' as const) };
    return part ? { ...base, part } : base;
  }
  if ('joint' in item) {
    const joint = jointOf(machine, id);
    return joint ? { item, id, title: joint.title, kind: 'closing', joint } : { item, id, title: id, kind: 'closing' };
  }
  const part = partOf(machine, id);
  if (!part) return { item, id, title: id, kind: 'body' };
  const bore = millimetres(part.sizes['bore'] ?? part.sizes['inner']);
  const outer = millimetres(part.sizes['outer'] ?? part.sizes['diameter']);
  const kind: SlotKind = radialKinds.has(part.kind)
    ? 'radial-bearing'
    : rollerKinds.has(part.kind)
      ? 'roller'
      : part.kind === 'thrust-ball'
        ? 'thrust-bearing'
        : part.kind === 'shim'
          ? 'shim'
          : ['washer', 'spacer', 'ring', 'collar'].includes(part.kind)
            ? 'ring'
            : gearOf(machine, id)
              ? 'gear'
              : 'body';
  return { item, kind, id, title: part.title, part, ...(bore === undefined ? {} : { bore: bore / 2 }), ...(outer === undefined ? {} : { outer: outer / 2 }) };
}

function nearest<T>(list: readonly Rough[], index: number, pick: (item: Rough) => T | undefined): T | undefined {
  for (let step = 0; step < list.length; step += 1) {
    for (const at of step === 0 ? [index] : [index - step, index + step]) {
      const item = list[at];
      const found = item === undefined ? undefined : pick(item);
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

/** Which member of the housing each place leans on: the one whose shoulder is nearest in the order. */
function housingOf(stack: Stack, list: readonly Rough[], index: number): number {
  const id = nearest(list, index, (item) => (item.kind === 'housing-shoulder' ? item.id : undefined));
  return Math.max(0, id === undefined ? 0 : stack.housing.indexOf(id));
}

/**
 * Lays a stack out along its axis, in mm. What the file gives is to scale; what it leaves out is chosen so that
 * it can be seen, in proportion to the largest bearing, and marked `schematic`.
 */
export function layStack(machine: Machine, stack: Stack, analysis: StackAnalysis): StackLayout {
  const turned = leftEnds.has(stack.ends[1]) && !leftEnds.has(stack.ends[0]);
  const order = turned ? stack.order.toReversed() : stack.order;
  const list = order.map((item) => rough(machine, stack, item));
  const places = turned ? analysis.places.toReversed() : analysis.places;
  const reference = Math.max(...list.map((item) => item.outer ?? 0)) || 8;
  const boreDefault = reference * 0.45;
  let along = 0;
  const slots = list.map((item, index): Slot => {
    const bore = item.bore ?? nearest(list, index, (other) => other.bore) ?? boreDefault;
    const neighbourOuter = nearest(list, index, (other) => (other.kind === 'radial-bearing' || other.kind === 'thrust-bearing' || other.kind === 'roller' ? other.outer : undefined)) ?? reference;
    const height = Math.max(neighbourOuter - bore, reference * 0.2);
    const size = item.part && lengthAlong(item.part);
    const given = size === undefined ? undefined : millimetres(item.part?.sizes[size]);
    const shape = slotShape(machine, item, { bore, height, reference, given, neighbourOuter });
    const before = list[index - 1];
    // Two members of the housing stand apart.
    if (item.kind === 'housing-shoulder' && before?.kind === 'housing-shoulder' && before.id !== item.id) along += reference * 1.1;
    const left = along;
    along += shape.width;
    const place = places[index];
    const stops = place?.kind === 'stop' ? place.member : undefined;
    const radii = stops === 'housing' && item.kind !== 'housing-shoulder' ? closingInHousing(item, shape, { bore, height, reference, given, neighbourOuter }) : { inner: shape.inner ?? bore, outer: shape.outer };
    const leansOnHousing = item.kind === 'radial-bearing' || item.kind === 'thrust-bearing' || item.kind === 'roller' || item.kind === 'housing-shoulder';
    return {
      kind: item.kind, id: item.id, title: item.title, left, right: along,
      inner: radii.inner, outer: radii.outer, schematic: shape.schematic, shortened: shape.shortened ?? false,
      ...(shape.root === undefined ? {} : { root: shape.root }), ...(shape.pitch === undefined ? {} : { pitch: shape.pitch }),
      ...(shape.looseBore === undefined ? {} : { looseBore: shape.looseBore }),
      ...remarksOf(analysis, stack, item.id),
      ...(stops ? { stops } : {}),
      ...(leansOnHousing || (item.joint?.kind === 'circlip' && stops === 'housing') ? { housing: housingOf(stack, list, index) } : {}),
      ...(item.joint ? { joint: item.joint } : {}), ...(item.part ? { part: item.part } : {}),
    };
  });
  const ends: readonly [string, string] = turned ? [stack.ends[1], stack.ends[0]] : stack.ends;
  const bevelParts = new Set([...machine.couplings.values()].flatMap((one) => (one.kind === 'bevel' ? [one.driver.part, one.driven.part] : [])));
  const bevels = slots.flatMap((slot) => (slot.kind === 'gear' && bevelParts.has(slot.id) ? [slot.title] : []));
  return { stack, slots, ends, turned, reference, bevels, loads: drawnLoads(analysis, stack, turned) };
}

/** What the list beside the drawing says of a place besides its name. */
function remarksOf({ facings, roles }: StackAnalysis, stack: Stack, id: string): Pick<Slot, 'loose' | 'remark'> {
  const own = facings.filter((facing) => facing.id === id);
  const washers = own.find((facing) => facing.washers !== undefined)?.washers;
  const said = [...own.map(({ words }) => words), ...roles.filter((role) => role.id === id && role.carries).map(({ does }) => does)];
  return { ...(washers ? { loose: stack.ends[washers.loose] } : {}), ...(said.length > 0 ? { remark: said.join('; ') } : {}) };
}

/** A load as it is drawn: to the right or to the left, with the indices of the slots that it passes. */
export interface DrawnLoad {
  readonly pushed: Member;
  readonly way: 1 | -1;
  readonly towards: string;
  /** The part that the file names as pushing. */
  readonly part?: string;
  readonly paths: readonly { readonly from: number; readonly through: number; readonly to: number }[];
}

function drawnLoads({ loads, places }: StackAnalysis, stack: Stack, turned: boolean): readonly DrawnLoad[] {
  const drawn = (index: number): number => (turned ? places.length - 1 - index : index);
  return loads.known.map(({ pushed, towards, part, paths }) => ({
    pushed, towards: stack.ends[towards], way: (towards === 1) === turned ? -1 : 1,
    ...(part === undefined ? {} : { part }),
    paths: paths.map(({ from, through, to }) => ({ from: drawn(from), through: drawn(through), to: drawn(to) })),
  }));
}

/** What closes a stack from the housing's side reaches inwards from the bore instead of outwards from the spindle. */
function closingInHousing(item: Rough, shape: Shape, { bore, height, reference, neighbourOuter }: Around): { readonly inner: number; readonly outer: number } {
  if (item.joint?.kind === 'circlip') return { inner: neighbourOuter - height * 0.35, outer: neighbourOuter + reference * 0.08 };
  if (item.joint) return { inner: neighbourOuter - height * 0.3, outer: neighbourOuter + reference * 0.25 };
  return { inner: bore + height * 0.2, outer: Math.max(shape.outer, neighbourOuter + reference * 0.42) };
}

interface Shape {
  readonly width: number;
  readonly outer: number;
  readonly inner?: number;
  readonly root?: number;
  readonly pitch?: number;
  readonly looseBore?: number;
  readonly schematic: boolean;
  readonly shortened?: boolean;
}

interface Around {
  readonly bore: number;
  /** Radial height of the bearing next to it. */
  readonly height: number;
  readonly reference: number;
  readonly given: number | undefined;
  readonly neighbourOuter: number;
}

function slotShape(machine: Machine, item: Rough, around: Around): Shape {
  const { bore, height, reference, given, neighbourOuter } = around;
  const longest = reference * 2.2;
  switch (item.kind) {
    case 'radial-bearing':
    case 'roller':
      return { width: given ?? height, outer: item.outer ?? bore + height, schematic: given === undefined || item.outer === undefined || item.bore === undefined };
    case 'thrust-bearing': {
      const stated = millimetres(item.part?.sizes['housing-bore']);
      // The true gap is too narrow to be seen: drawn at least an eighth of the section's height.
      const looseBore = Math.max(stated === undefined ? 0 : stated / 2, bore + height * 0.125);
      return { width: given ?? height * 1.2, outer: item.outer ?? bore + height, looseBore, schematic: given === undefined || item.outer === undefined || item.bore === undefined };
    }
    case 'shim': {
      const thickness = given ?? millimetres(item.part?.shims?.[0]?.thickness) ?? 0;
      return { width: Math.max(thickness, reference * 0.06), outer: item.outer ?? bore + height * 0.38, schematic: thickness < reference * 0.06 };
    }
    case 'ring': {
      const outer = item.outer ?? bore + height * 0.45;
      const width = Math.min(given ?? reference * 0.14, longest);
      return { width, outer, schematic: given === undefined || item.outer === undefined, shortened: (given ?? 0) > longest };
    }
    case 'gear': {
      const gear = gearOf(machine, item.id);
      const pitch = gear?.pitch ?? reference;
      const module = gear?.module ?? 1;
      const width = Math.min(given ?? gear?.width ?? reference * 0.9, longest);
      // General practice: tips one module above, roots one and a quarter below the pitch circle.
      return { width, outer: pitch + module, pitch, root: Math.max(pitch - 1.25 * module, bore), schematic: given === undefined && gear?.width === undefined };
    }
    case 'body':
      return { width: Math.min(given ?? reference * 0.9, longest), outer: item.outer ?? bore + height * 0.8, schematic: given === undefined || item.outer === undefined, shortened: (given ?? 0) > longest };
    case 'spindle-shoulder':
      return { width: reference * 0.45, outer: bore + height * 0.4, inner: 0, schematic: true };
    case 'housing-shoulder':
      return { width: reference * 0.4, inner: neighbourOuter - height * 0.38, outer: neighbourOuter, schematic: true };
    case 'closing':
      return closingShape(item.joint, around);
  }
}

function closingShape(joint: Joint | undefined, { bore, height, reference }: Around): Shape {
  const diameter = threadDiameter(joint?.thread) ?? bore * 2;
  switch (joint?.kind) {
    // A hexagon nut is about 0.8 d high and 1.8 d over corners; a socket head d high and 1.75 d wide. Common practice.
    case 'nut':
      return { width: diameter * 0.6, outer: Math.max(diameter * 0.85, bore * 1.25), schematic: true };
    case 'screw':
    case 'bolt':
    case 'set-screw':
      return { width: diameter, outer: Math.max(diameter * 0.9, bore + height * 0.2), inner: 0, schematic: true };
    case 'circlip':
      return { width: Math.max(reference * 0.09, 0.6), outer: bore + height * 0.35, schematic: true };
    default:
      return { width: reference * 0.6, outer: bore + height * 0.8, schematic: true };
  }
}
