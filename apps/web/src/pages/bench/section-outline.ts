import { breakLine, type Point } from './primitives.ts';
import { isBearing, type Slot, type StackLayout } from './stack-slots.ts';

/** The stretch of the axis that one member of the housing covers, mm. `open`: it goes on beyond the picture. */
export interface HousingRun {
  readonly id: string;
  readonly left: number;
  readonly right: number;
  readonly outer: number;
  readonly openLeft: boolean;
  readonly openRight: boolean;
}

/** Radius of the largest bearing of the stack, mm. */
export const outerBearing = (layout: StackLayout): number => Math.max(...layout.slots.filter((slot) => isBearing(slot)).map((slot) => slot.outer), layout.reference * 0.9);

/** Each member of the housing covers the places that lean on it. A member that is pushed out of the picture is broken off there. */
export function housingRuns(layout: StackLayout): readonly HousingRun[] {
  const { slots, stack, reference, loads } = layout;
  const wall = reference * 0.42;
  return stack.housing.flatMap((id, index): readonly HousingRun[] => {
    const own = slots.filter((slot) => slot.housing === index);
    if (own.length === 0) return [];
    // A ring in its groove needs some wall beyond it.
    const lip = (slot: Slot): number => (slot.kind === 'closing' ? reference * 0.18 : 0);
    const left = Math.min(...own.map((slot) => slot.left - lip(slot)));
    const right = Math.max(...own.map((slot) => slot.right + lip(slot)));
    const covered = slots.filter((slot) => slot.left >= left && slot.right <= right && slot.kind !== 'closing');
    const outer = Math.max(...covered.map((slot) => slot.outer)) + wall;
    const load = loads.find((one) => one.part === id);
    const end = slots.at(-1)?.right ?? right;
    const openRight = load?.way === 1;
    const openLeft = load?.way === -1;
    return [{ id, outer, openLeft, openRight, left: openLeft ? Math.min(left, slots[0]?.left ?? left) - reference * 0.9 : left, right: openRight ? Math.max(right, end) + reference * 0.9 : right }];
  });
}

/** Radius to which the housing comes in at each place. */
function housingBore(layout: StackLayout, slot: Slot): number {
  if (slot.kind === 'housing-shoulder') return slot.inner;
  if (isBearing(slot)) return slot.outer;
  if (slot.kind === 'closing' && slot.stops === 'housing') return outerBearing(layout);
  return Math.max(outerBearing(layout), slot.outer + layout.reference * 0.08);
}

export function housingOutline(layout: StackLayout, run: HousingRun): readonly Point[] {
  const inside = layout.slots.filter((slot) => slot.right > run.left + 1e-9 && slot.left < run.right - 1e-9);
  const first = inside[0];
  const last = inside.at(-1);
  const clear = outerBearing(layout);
  const steps: Point[] = [];
  if (first && first.left > run.left) steps.push([run.left, clear], [first.left, clear]);
  for (const slot of inside) {
    const y = housingBore(layout, slot);
    steps.push([Math.max(slot.left, run.left), y], [Math.min(slot.right, run.right), y]);
  }
  if (last && last.right < run.right) steps.push([last.right, clear], [run.right, clear]);
  const innerRight = steps.at(-1)?.[1] ?? clear;
  const innerLeft = steps[0]?.[1] ?? clear;
  const swing = layout.reference * 0.12;
  const rightEdge = run.openRight ? breakLine([run.right, innerRight], [run.right, run.outer], swing) : [[run.right, run.outer] as const];
  const leftEdge = run.openLeft ? breakLine([run.left, run.outer], [run.left, innerLeft], swing) : [[run.left, run.outer] as const];
  return [...steps, ...rightEdge, ...leftEdge];
}

/** Radius of the spindle where a place stands on it. */
function spindleRadius(slot: Slot): number | undefined {
  if (slot.kind === 'spindle-shoulder') return slot.outer;
  if (slot.stops === 'housing' || (slot.kind === 'closing' && slot.inner === 0)) return undefined;
  return slot.inner;
}

/** How far the spindle is drawn: it ends under a screw in its end, stands out a little from a nut, and is broken off elsewhere. */
export function spindleReach(layout: StackLayout, runs: readonly HousingRun[]): readonly [number, number] {
  const { slots, reference } = layout;
  const first = slots[0];
  const last = slots.at(-1);
  const end = (slot: Slot | undefined, edge: number, outward: 1 | -1): number => {
    if (!slot) return edge;
    if (slot.kind === 'closing' && slot.inner === 0) return outward === 1 ? slot.left : slot.right;
    if (slot.kind === 'closing' && slot.stops === 'spindle' && slot.joint?.kind !== 'clamp') return edge + outward * reference * 0.2;
    const farthest = outward === 1 ? Math.max(edge, ...runs.map((run) => run.right)) : Math.min(edge, ...runs.map((run) => run.left));
    return farthest + outward * reference * 0.6;
  };
  return [end(first, first?.left ?? 0, -1), end(last, last?.right ?? 0, 1)];
}

const isOpen = (slot: Slot | undefined): boolean => !(slot?.kind === 'closing' && slot.stops === 'spindle' && slot.joint?.kind !== 'clamp');

function spindleProfile(layout: StackLayout, left: number, right: number): readonly Point[] {
  const known = layout.slots.map((slot) => ({ slot, radius: spindleRadius(slot) }));
  const radii = known.map(({ radius }, index) => {
    if (radius !== undefined) return radius;
    const near = known.slice(0, index).findLast((one) => one.radius !== undefined && one.slot.kind !== 'spindle-shoulder') ?? known.slice(index).find((one) => one.radius !== undefined && one.slot.kind !== 'spindle-shoulder');
    return near?.radius ?? layout.reference * 0.45;
  });
  const points: Point[] = [];
  layout.slots.forEach((slot, index) => {
    const radius = radii[index] ?? layout.reference * 0.45;
    const x0 = index === 0 ? left : slot.left;
    const x1 = index === layout.slots.length - 1 ? right : slot.right;
    if (x1 > x0) points.push([Math.max(x0, left), radius], [Math.min(x1, right), radius]);
  });
  return points;
}

export function spindleOutline(layout: StackLayout, left: number, right: number): readonly Point[] {
  const profile = spindleProfile(layout, left, right);
  const first = profile[0];
  const last = profile.at(-1);
  if (!first || !last) return [];
  const swing = layout.reference * 0.12;
  const rightEdge = isOpen(layout.slots.at(-1)) ? breakLine(last, [right, 0], swing) : [last, [right, 0] as const];
  const leftEdge = isOpen(layout.slots[0]) ? breakLine([left, 0], first, swing) : [[left, 0] as const, first];
  return [...profile, ...rightEdge, ...leftEdge];
}

