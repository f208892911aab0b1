import { isFilledBackwards } from '@rotorwright/build';
import { breakLine, rectangle, type Fill, type Point, type Primitive } from './primitives.ts';
import { hatchNeighbours } from './section-hatch.ts';
import { housingOutline, housingRuns, outerBearing, spindleOutline, spindleReach, type HousingRun } from './section-outline.ts';
import { drawSlot, screwInSpindle } from './section-parts.ts';
import { isBearing, type DrawnLoad, type Slot, type StackLayout } from './stack-slots.ts';

/** A numbered thing of the drawing: what a balloon points at and what the list beside it names. */
export interface Numbered {
  readonly number: number;
  readonly id: string;
  readonly title: string;
  /** What distinguishes it here: "tight bore outboard". */
  readonly remark?: string;
  /** Where a leader ends, mm. */
  readonly anchor: Point;
}

/** A size that the file gives, between two places along the axis of a stack or of a fastener, mm. */
export interface Dimension {
  readonly from: number;
  readonly to: number;
  /** In mm, without the unit: "0.05 / 0.1", "23.56 to 23.6". */
  readonly text: string;
}

export interface Section {
  /** In mm; y grows away from the axis upwards and is negative below it. */
  readonly marks: readonly Primitive[];
  /** What is seen below the axis, when the drawing is a half-section: it may be left out where room is short. */
  readonly lower: readonly Primitive[];
  readonly numbered: readonly Numbered[];
  /** Names of left and right, where the drawing has them. */
  readonly ends?: readonly [left: string, right: string];
  /** Words with a leader: thread, compound, torque. */
  readonly callouts: readonly { readonly at: Point; readonly text: string }[];
  /** Along the axis: in rows under a stack, innermost first; beside a fastener, whose axis stands upright. */
  readonly dimensions: readonly Dimension[];
  /** Sentences: what is not to scale. */
  readonly notes: readonly string[];
  readonly loads: readonly { readonly at: Point; readonly way: 1 | -1; readonly towards: string; readonly words: string }[];
  readonly left: number;
  readonly right: number;
  /** Largest distances from the axis, mm: upwards and downwards. */
  readonly up: number;
  readonly down: number;
}

/**
 * Half-section of a stack: upper half cut, lower half seen, axis level. Shafts, screws, nuts and balls are not cut;
 * shims are blackened; neighbours are hatched in opposite directions.
 *
 * @param layout the stack along its axis
 * @param active ids of the things that the step handles; drawn filled
 */
export function halfSection(layout: StackLayout, active: ReadonlySet<string> = new Set(), dimensions: readonly Dimension[] = []): Section {
  const { slots, loads } = layout;
  const runs = housingRuns(layout);
  const { spindle } = layout.stack;
  const drawn = slots.map((_, index) => drawSlot(layout, index));
  const cuts = [...runs.map((run) => ({ points: housingOutline(layout, run), part: run.id, small: false })), ...drawn.flatMap((one) => one.cuts)];
  const [spindleLeft, spindleRight] = spindleReach(layout, runs);
  const upper: readonly Primitive[] = [
    ...hatchNeighbours(cuts).map((cut): Primitive => ({ shape: 'area', points: cut.points, fill: 'paper', weight: 'heavy', hatch: cut.hatch, part: cut.part })),
    { shape: 'area', points: spindleOutline(layout, spindleLeft, spindleRight), fill: 'paper', weight: 'heavy', part: spindle },
    ...drawn.flatMap((one) => one.over),
    ...slots.flatMap((_, index) => screwInSpindle(layout, index)),
  ];
  const left = Math.min(spindleLeft, ...runs.map((run) => run.left), slots[0]?.left ?? 0);
  const right = Math.max(spindleRight, ...runs.map((run) => run.right), slots.at(-1)?.right ?? 0);
  const overhang = layout.reference * 0.5;
  const reach = Math.max(...runs.map((run) => run.outer), ...slots.map((slot) => slot.outer), layout.reference);
  return {
    marks: [
      ...upper.map((mark) => filled(mark, active)),
      { shape: 'line', points: [[left - overhang, 0], [right + overhang, 0]], weight: 'fine', dash: 'chain' },
      ...loads.flatMap((load) => load.paths.flatMap((path) => loadLine(layout, runs, { ...load, ...path }, left, right))),
    ],
    lower: lowerHalf(layout, runs, spindleLeft, spindleRight).map((mark) => filled(mark, active)),
    numbered: numberParts(layout),
    ends: layout.ends,
    callouts: [],
    dimensions,
    notes: notesOf(layout),
    loads: loads.map((load) => {
      const run = runs.find((one) => one.id === load.part);
      const y = load.pushed === 'housing' ? ((run?.outer ?? layout.reference) + outerBearing(layout)) / 2 : 0;
      return { at: [load.way === 1 ? right : left, y] as const, way: load.way, towards: load.towards, words: load.pushed === 'housing' ? 'pull' : 'load' };
    }),
    left: left - overhang,
    right: right + overhang,
    up: reach,
    down: reach,
  };
}

/** The things that the step handles stand out: paper becomes the active fill. */
const filled = (mark: Primitive, active: ReadonlySet<string>): Primitive =>
  (mark.shape === 'area' || mark.shape === 'circle') && mark.part !== undefined && active.has(mark.part) && mark.fill === 'paper' ? { ...mark, fill: 'active' } : mark;

/** What is seen from outside below the axis: the outermost surface at each place. */
function lowerHalf(layout: StackLayout, runs: readonly HousingRun[], left: number, right: number): readonly Primitive[] {
  const mirror = (points: readonly Point[]): readonly Point[] => points.map(([x, y]) => [x, -y] as const);
  const fill: Fill = 'paper';
  const seen: Primitive[] = [{ shape: 'area', points: mirror(spindleOutline(layout, left, right)), fill, weight: 'heavy', part: layout.stack.spindle }];
  for (const slot of layout.slots) {
    if (slot.kind === 'housing-shoulder' || slot.kind === 'spindle-shoulder') continue;
    const covered = runs.some((run) => slot.left >= run.left - 1e-6 && slot.right <= run.right + 1e-6 && slot.outer < run.outer);
    if (covered) continue;
    seen.push({ shape: 'area', points: rectangle(slot.left, slot.right, -slot.outer, 0), fill, weight: 'heavy', part: slot.id });
    if (slot.kind === 'gear' && slot.pitch !== undefined && slot.root !== undefined) {
      for (let tooth = 1; tooth <= 7; tooth += 1) {
        const y = -slot.outer * Math.cos((tooth / 8) * (Math.PI / 2));
        seen.push({ shape: 'line', points: [[slot.left, y], [slot.right, y]], weight: 'fine', part: slot.id });
      }
    }
    if (slot.kind === 'closing' && slot.joint?.kind === 'nut') seen.push({ shape: 'line', points: [[slot.left, -slot.outer * 0.5], [slot.right, -slot.outer * 0.5]], weight: 'fine', part: slot.id });
  }
  for (const run of runs) {
    const swing = layout.reference * 0.12;
    const rightEdge = run.openRight ? breakLine([run.right, 0], [run.right, -run.outer], swing) : [[run.right, 0] as const, [run.right, -run.outer] as const];
    const leftEdge = run.openLeft ? breakLine([run.left, -run.outer], [run.left, 0], swing) : [[run.left, -run.outer] as const, [run.left, 0] as const];
    seen.push({ shape: 'area', points: [...rightEdge, ...leftEdge], fill, weight: 'heavy', part: run.id });
  }
  return seen;
}

/** From the push through the carrying bearing into what resists it, as one dashed line. */
function loadLine(layout: StackLayout, runs: readonly HousingRun[], path: DrawnLoad & DrawnLoad['paths'][number], left: number, right: number): readonly Primitive[] {
  const from = layout.slots[path.from];
  const through = layout.slots[path.through];
  const to = layout.slots[path.to];
  if (!from || !through || !to) return [];
  const run = runs.find((one) => one.id === layout.stack.housing[through.housing ?? 0]);
  const high = ((run?.outer ?? layout.reference * 1.3) + through.outer) / 2;
  const middle = (through.inner + through.outer) / 2;
  const low = Math.min(through.inner * 0.5, layout.reference * 0.25);
  const [near, far] = path.way === 1 ? [right, left] : [left, right];
  const source = path.pushed === 'housing' ? high : low;
  const sink = path.pushed === 'housing' ? low : high;
  const pushes = path.way === 1 ? from.right - layout.reference * 0.15 : from.left + layout.reference * 0.15;
  const resists = path.way === 1 ? to.left + layout.reference * 0.15 : to.right - layout.reference * 0.15;
  const start = path.pushed === 'housing' ? near : far;
  const finish = path.pushed === 'housing' ? resists - path.way * layout.reference * 0.8 : resists + path.way * layout.reference * 0.4;
  return [{
    shape: 'line', weight: 'heavy', dash: 'load', arrow: 'end', act: true,
    points: [[start, source], [pushes, source], [pushes, middle], [resists, middle], [resists, sink], [finish, sink]],
  }];
}

/** Numbers follow the order in which the stack goes together, shoulders included: they are the numbers of the step's own words, wherever the drawing puts its left end. */
function numberParts(layout: StackLayout): readonly Numbered[] {
  const ordered = layout.turned === isFilledBackwards(layout.stack) ? layout.slots : layout.slots.toReversed();
  return ordered.map((slot, at) => {
    const { remark } = slot;
    const numbered = { number: at + 1, id: slot.id, title: slot.title, anchor: [(slot.left + slot.right) / 2, anchorHeight(slot)] as const };
    return remark === undefined ? numbered : { ...numbered, remark };
  });
}

function anchorHeight(slot: Slot): number {
  const height = slot.outer - slot.inner;
  return isBearing(slot) ? slot.outer - height * 0.14 : slot.inner + height * (slot.kind === 'shim' ? 0.6 : 0.7);
}

function notesOf(layout: StackLayout): readonly string[] {
  const chosen = layout.slots.filter((slot) => slot.schematic && slot.kind !== 'spindle-shoulder' && slot.kind !== 'housing-shoulder').map((slot) => slot.title);
  const short = layout.slots.filter((slot) => slot.shortened).map((slot) => slot.title);
  return [
    'Bearings are to scale where the file gives their sizes. Shoulders, housing walls and shaft ends are schematic.',
    ...(chosen.length > 0 ? [`Not to scale, sizes not all given: ${[...new Set(chosen)].join(', ')}.`] : []),
    ...(layout.bevels.length > 0 ? [`Drawn as cylinders of their pitch circles: ${layout.bevels.join(', ')}.`] : []),
    ...(short.length > 0 ? [`Drawn short: ${[...new Set(short)].join(', ')}.`] : []),
  ];
}
