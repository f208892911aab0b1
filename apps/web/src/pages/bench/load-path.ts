import { isBearing, type Slot, type StackLayout } from './stack-slots.ts';

export type Column = 'spindle' | 'housing';

export interface LoadPath {
  /** The column that is pushed, and which way: 1 to the right of the drawing, -1 to the left. */
  readonly pushed: Column;
  readonly way: 1 | -1;
  /** Index of the place of the pushed column that pushes. */
  readonly from: number;
  /** Index of the bearing that carries. */
  readonly through: number;
  /** Index of the place of the other column that resists. */
  readonly to: number;
}

/** Index of the first stop from a place on, in one direction. */
function firstStop(slots: readonly Slot[], from: number, step: 1 | -1): number | undefined {
  for (let index = from + step; index >= 0 && index < slots.length; index += step) if (slots[index]?.stops) return index;
  return undefined;
}

/**
 * Index of what stops a bearing on one side for one column. Between two bearings every stop counts for both;
 * bearings that touch, or have only loose rings between them, pass the push on.
 */
function stopFor(slots: readonly Slot[], bearing: number, step: 1 | -1, column: Column): number | undefined {
  let between = false;
  for (let index = bearing + step; index >= 0 && index < slots.length; index += step) {
    const slot = slots[index];
    if (!slot || (isBearing(slot) && between)) return undefined;
    if (slot.stops === column) return index;
    if (slot.stops) between = true;
  }
  return undefined;
}

/**
 * The ways in which an axial load passes from one column to the other: a bearing carries it when the pushed column
 * backs it on the side that the push comes from, and the other column on the side that the push goes to.
 *
 * @param pushed which column is pushed
 * @param way    1 to the right of the drawing, -1 to the left
 * @returns one path for each bearing that carries; empty when none does
 */
export function loadPaths(layout: StackLayout, pushed: Column, way: 1 | -1): readonly LoadPath[] {
  const { slots } = layout;
  const other: Column = pushed === 'spindle' ? 'housing' : 'spindle';
  return slots.flatMap((slot, through): readonly LoadPath[] => {
    if (!isBearing(slot) || slot.kind === 'roller') return [];
    const from = stopFor(slots, through, way === 1 ? -1 : 1, pushed);
    const to = stopFor(slots, through, way, other);
    return from === undefined || to === undefined ? [] : [{ pushed, way, from, through, to }];
  });
}

/** Loads of the stack whose direction the file itself states. Those of couplings follow from the drive. */
export function statedLoads(layout: StackLayout): readonly { readonly pushed: Column; readonly way: 1 | -1; readonly towards: string; readonly part: string }[] {
  return layout.stack.loads.flatMap((load) => {
    if (!('pushes' in load)) return [];
    const pushed: Column = layout.stack.housing.includes(load.pushes) ? 'housing' : 'spindle';
    const way = load.towards === layout.ends[1] ? (1 as const) : (-1 as const);
    return [{ pushed, way, towards: load.towards, part: load.pushes }];
  });
}

/**
 * Which washer of a thrust bearing floats: the one that leans on the housing. It follows from the loads; without any,
 * from the nearest stops. Undefined when those belong to the same column, or one side has none: the file then does
 * not settle it.
 */
export function looseSide(layout: StackLayout, index: number): 'left' | 'right' | undefined {
  if (layout.loose) return layout.loose;
  const left = firstStop(layout.slots, index, -1);
  const right = firstStop(layout.slots, index, 1);
  const leftColumn = left === undefined ? undefined : layout.slots[left]?.stops;
  const rightColumn = right === undefined ? undefined : layout.slots[right]?.stops;
  if (leftColumn === 'housing' && rightColumn === 'spindle') return 'left';
  if (leftColumn === 'spindle' && rightColumn === 'housing') return 'right';
  return undefined;
}
