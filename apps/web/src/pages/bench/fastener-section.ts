import type { InstanceId, Joint, Machine } from '@rotorwright/machine';
import type { Dimension, Section } from './half-section.ts';
import { breakLine, rectangle, type Point, type Primitive } from './primitives.ts';
import { hatchNeighbours, type Cut } from './section-hatch.ts';
import { threadDiameter } from './stack-slots.ts';

interface Pieces {
  readonly cuts: readonly Cut[];
  readonly over: readonly Primitive[];
  /** Leader ends by id of what is numbered. */
  readonly anchors: Readonly<Record<string, Point>>;
  /** Where compound sits, and where the thread is entered. */
  readonly thread: Point;
  readonly head: Point;
  readonly dimensions?: readonly Dimension[];
}

interface Sizes {
  readonly joint: Joint;
  readonly seat: InstanceId;
  readonly held: readonly InstanceId[];
  /** Nominal diameter, mm. */
  readonly d: number;
  /** Length of engaged thread, mm. */
  readonly engaged: number;
  readonly thickness: (id: InstanceId) => number;
  /** Where the file gives it, mm. */
  readonly known: (id: InstanceId) => number | undefined;
}

const half = 3.2;

/**
 * Section of a joint in place, axis upright: screw in thread, nut on stud, pin across shaft, ring on shaft.
 * Screws, nuts, pins and balls are not cut. Thread size and engagement are to scale where the file gives them.
 */
export function fastenerSection(machine: Machine, joint: Joint, active: ReadonlySet<string> = new Set()): Section {
  const one = joint.each[0];
  const title = (id: InstanceId): string => {
    const thing = machine.thingOf.get(id) ?? id;
    return machine.parts.get(thing)?.title ?? machine.joints.get(thing)?.title ?? id;
  };
  const thickness = (id: InstanceId): number | undefined => machine.parts.get(machine.thingOf.get(id) ?? id)?.sizes['thickness'];
  const d = threadDiameter(joint.thread) ?? (joint.diameter === undefined ? 3 : joint.diameter * 1000);
  const sizes: Sizes = {
    joint, d, seat: one?.seat ?? `${joint.id}:seat`, held: one?.holds ?? [],
    engaged: joint.engagement === undefined ? d * 1.5 : joint.engagement * 1000,
    thickness: (id) => Math.min((thickness(id) ?? d * 0.0009) * 1000, d * 2),
    known: (id) => (thickness(id) === undefined ? undefined : thickness(id)! * 1000),
  };
  const pieces = draw(sizes);
  const marks: readonly Primitive[] = [
    ...hatchNeighbours(pieces.cuts).map((cut): Primitive => ({ shape: 'area', points: cut.points, fill: active.has(cut.part) ? 'active' : 'paper', weight: 'heavy', hatch: cut.hatch, part: cut.part })),
    ...pieces.over.map((mark) => ((mark.shape === 'area' || mark.shape === 'circle') && mark.part === joint.id && mark.fill === 'paper' ? { ...mark, fill: 'active' as const } : mark)),
  ];
  const numberedIds = [...(one?.seat === undefined ? [] : [one.seat]), ...sizes.held, joint.id];
  const numbered = numberedIds.flatMap((id, index) => {
    const anchor = pieces.anchors[id];
    return anchor ? [{ number: index + 1, id, title: title(id), anchor }] : [];
  });
  const ys = marks.flatMap((mark) => (mark.shape === 'area' || mark.shape === 'line' ? mark.points.map(([, y]) => y) : mark.shape === 'circle' ? [mark.centre[1] + mark.radius, mark.centre[1] - mark.radius] : []));
  const xs = marks.flatMap((mark) => (mark.shape === 'area' || mark.shape === 'line' ? mark.points.map(([x]) => x) : mark.shape === 'circle' ? [mark.centre[0] + mark.radius, mark.centre[0] - mark.radius] : []));
  const unknown = [
    ...(threadDiameter(joint.thread) === undefined && joint.diameter === undefined ? ['diameter'] : []),
    ...(joint.engagement === undefined && joint.thread !== undefined && joint.kind !== 'nut' ? ['engagement'] : []),
  ];
  return {
    marks, lower: [], numbered, callouts: calloutsOf(joint, pieces), dimensions: pieces.dimensions ?? [], loads: [],
    notes: [unknown.length > 0 ? `Schematic. The file does not give: ${unknown.join(', ')}.` : 'Thread and engagement are to scale; the parts around it are schematic.'],
    left: Math.min(...xs), right: Math.max(...xs), up: Math.max(...ys), down: -Math.min(...ys),
  };
}

const bonds = new Set(['low', 'medium', 'high', 'retaining']);

function calloutsOf(joint: Joint, pieces: Pieces): Section['callouts'] {
  const grades = joint.locks?.map((lock) => lock.grade) ?? [];
  const compound = grades.filter((grade) => bonds.has(grade));
  return [
    ...(joint.torque === undefined ? [] : [{ at: pieces.head, text: joint.torque === 'snug' ? 'snug, by feel' : `${Number(joint.torque.toPrecision(3))} N·m` }]),
    ...(joint.thread === undefined ? [] : [{ at: pieces.thread, text: joint.thread }]),
    ...(compound.length > 0 ? [{ at: [pieces.thread[0], pieces.thread[1] - 0.001] as const, text: `${compound.join(' and ')} compound` }] : []),
    ...(grades.includes('insert') ? [{ at: pieces.head, text: 'nylon insert' }] : []),
    ...(joint.locks === undefined ? [{ at: pieces.thread, text: 'lock not stated' }] : []),
  ];
}

function draw(sizes: Sizes): Pieces {
  switch (sizes.joint.kind) {
    case 'screw':
    case 'bolt': return screw(sizes);
    case 'set-screw': return setScrew(sizes);
    case 'stud':
    case 'threaded-end':
    case 'threaded-rod': return stud(sizes);
    case 'nut': return nut(sizes);
    case 'pin': return pin(sizes);
    case 'circlip':
    case 'clamp':
    case 'press':
    case 'bond': return ring(sizes);
    case 'ball-link': return ballLink(sizes);
  }
}

/** The film of compound on both flanks of a thread. */
function film({ joint, d }: Sizes, from: number, to: number): readonly Primitive[] {
  if (!joint.locks?.some((lock) => bonds.has(lock.grade))) return [];
  const thick = d * 0.14;
  return [-1, 1].map((side): Primitive => ({ shape: 'area', points: rectangle(side * (d / 2), side * (d / 2 + thick), from, to), fill: 'ink', weight: 'fine', part: joint.id }));
}

/** Shank with the minor diameter of the thread as fine lines; d3 is about 1.23 pitches below d, the pitch about d / 6. */
function shank({ joint, d }: Sizes, from: number, to: number, threadedFrom: number): readonly Primitive[] {
  const minor = d * 0.4;
  const chamfer = d * 0.12;
  return [
    { shape: 'area', points: [[-d / 2, to], [d / 2, to], [d / 2, from + chamfer], [minor, from], [-minor, from], [-d / 2, from + chamfer]], fill: 'paper', weight: 'heavy', part: joint.id },
    { shape: 'line', points: [[-minor, from], [-minor, threadedFrom]], weight: 'fine', part: joint.id },
    { shape: 'line', points: [[minor, from], [minor, threadedFrom]], weight: 'fine', part: joint.id },
  ];
}

const axisLine = (low: number, high: number, d: number): Primitive => ({ shape: 'line', points: [[0, low - d * 0.5], [0, high + d * 0.5]], weight: 'fine', dash: 'chain' });

/** A block cut through, broken off left, right and below, with a hole up to `hole`. */
function block(id: string, d: number, low: number, high: number, hole: number, floor: number): readonly Cut[] {
  const wide = half * d;
  const swing = Math.min(d * 0.22, (high - low) * 0.1);
  if (floor <= low) {
    return [-1, 1].map((side): Cut => ({ points: [[side * hole, high], ...breakLine([side * wide, high], [side * wide, low], swing), [side * hole, low]], part: id, small: false }));
  }
  return [{ points: [[-hole, high], [-hole, floor], [hole, floor], [hole, high], ...breakLine([wide, high], [wide, low], swing), ...breakLine([-wide, low], [-wide, high], swing)], part: id, small: false }];
}

/** Held parts one on the other, from a level upwards. */
function layers(sizes: Sizes, from: number): { readonly cuts: readonly Cut[]; readonly anchors: Readonly<Record<string, Point>>; readonly dimensions: readonly Dimension[]; readonly top: number } {
  let top = from;
  const cuts: Cut[] = [];
  const anchors: Record<string, Point> = {};
  const dimensions: Dimension[] = [];
  for (const [index, id] of sizes.held.entries()) {
    const next = top + sizes.thickness(id);
    cuts.push(...block(id, sizes.d, top, next, sizes.d * 0.56, top));
    // Side by side, so that their leaders do not cross.
    anchors[id] = [-sizes.d * (1.5 - (0.7 * index) / sizes.held.length), (top + next) / 2];
    const known = sizes.known(id);
    if (known !== undefined) dimensions.push({ from: top, to: next, text: shown(known) });
    top = next;
  }
  return { cuts, anchors, dimensions, top };
}

const shown = (millimetres: number): string => String(Number(millimetres.toPrecision(4)));

/** Thread in thread, from the face of the seat down. */
function engagementOf({ joint, engaged }: Sizes): readonly Dimension[] {
  return joint.engagement === undefined ? [] : [{ from: -engaged, to: 0, text: shown(engaged) }];
}

function screw(sizes: Sizes): Pieces {
  const { joint, d, engaged, seat } = sizes;
  const above = layers(sizes, 0);
  const headHigh = above.top + d;
  // Socket heads: about 1.8 d wide and d high, the socket half as deep. Common practice.
  const wide = d * 0.9;
  const socket = d * 0.42;
  const head: readonly Primitive[] = [
    { shape: 'area', points: rectangle(-wide, wide, above.top, headHigh), fill: 'paper', weight: 'heavy', part: joint.id },
    { shape: 'line', points: [[-socket, headHigh], [-socket, headHigh - d * 0.5], [socket, headHigh - d * 0.5], [socket, headHigh]], weight: 'fine', dash: 'hidden', part: joint.id },
  ];
  return {
    cuts: [...block(seat, d, -engaged - d * 1.4, 0, d / 2, -engaged - d * 0.5), ...above.cuts],
    over: [...film(sizes, -engaged, 0), ...shank(sizes, -engaged, above.top, 0), ...head, axisLine(-engaged - d, headHigh, d)],
    anchors: { ...above.anchors, [seat]: [-d * 2.4, -engaged * 0.7], [joint.id]: [-wide * 0.6, headHigh - d * 0.3] },
    thread: [d * 0.55, -engaged * 0.5], head: [wide, above.top + d * 0.5],
    dimensions: [...engagementOf(sizes), ...above.dimensions],
  };
}

function setScrew(sizes: Sizes): Pieces {
  const { joint, d, engaged, seat, held } = sizes;
  const length = joint.length === undefined ? engaged : Math.min(joint.length * 1000, engaged * 1.2);
  const shaft = held[0] ?? `${joint.id}:held`;
  const flat = joint.onto === 'flat';
  const wide = half * d;
  const low = -d * 2;
  const swing = d * 0.25;
  const socket = d * 0.28;
  const point: readonly Point[] = joint.onto === 'dimple' ? [[-d * 0.28, 0], [0, -d * 0.3], [d * 0.28, 0]] : [];
  const bare = flat ? d * 0.9 : wide;
  // Over a flat the bore of the hub stays round: there is a gap beside the screw.
  const bore = flat ? d * 0.25 : 0;
  return {
    cuts: block(seat, d, bore, Math.max(engaged, d * 0.8) + bore, d / 2, bore),
    over: [
      // Held: a shaft or pin, not cut; its flat, if any, lies under the screw.
      { shape: 'area', points: [[-bare, 0], ...point, [bare, 0], ...(flat ? [[d * 1.1, d * 0.25] as const, [wide, d * 0.25] as const] : []), ...breakLine([wide, flat ? d * 0.25 : 0], [wide, low], swing), ...breakLine([-wide, low], [-wide, flat ? d * 0.25 : 0], swing), ...(flat ? [[-d * 1.1, d * 0.25] as const] : [])], fill: 'paper', weight: 'heavy', part: shaft },
      ...film(sizes, bore + 0.05 * d, Math.min(length, engaged + bore)),
      ...shank(sizes, 0, length, length),
      { shape: 'line', points: [[-socket, length], [-socket, length - d * 0.5], [socket, length - d * 0.5], [socket, length]], weight: 'fine', dash: 'hidden', part: joint.id },
      ...(point.length > 0 ? [{ shape: 'area' as const, points: point, fill: 'active' as const, weight: 'fine' as const, part: joint.id }] : []),
      axisLine(low, length, d),
    ],
    anchors: { [seat]: [-d * 2.2, engaged * 0.6], [shaft]: [-d * 1.2, low * 0.5], [joint.id]: [-d * 0.2, length - d * 0.6] },
    thread: [d * 0.55, engaged * 0.5], head: [d * 0.3, length],
    ...(joint.engagement === undefined ? {} : { dimensions: [{ from: bore, to: engaged + bore, text: shown(engaged) }] }),
  };
}

function stud(sizes: Sizes): Pieces {
  const { joint, d, engaged, seat } = sizes;
  const above = layers(sizes, 0);
  const top = above.top + d * 1.6;
  return {
    cuts: [...block(seat, d, -engaged - d * 1.4, 0, d / 2, -engaged - d * 0.5), ...above.cuts],
    over: [...film(sizes, -engaged, 0), ...shank(sizes, -engaged, top, 0), axisLine(-engaged - d, top, d)],
    anchors: { ...above.anchors, [seat]: [-d * 2.4, -engaged * 0.7], [joint.id]: [-d * 0.2, top - d * 0.4] },
    thread: [d * 0.55, -engaged * 0.5], head: [d / 2, top - d * 0.4],
    dimensions: [...engagementOf(sizes), ...above.dimensions],
  };
}

function nut(sizes: Sizes): Pieces {
  const { joint, d, seat } = sizes;
  const above = layers(sizes, 0);
  // Hexagon nuts: about 0.8 d high, 1.8 d over corners; an insert adds its ring. Common practice.
  const high = d * 0.8;
  const wide = d * 0.92;
  const insert = joint.locks?.some((lock) => lock.grade === 'insert') ?? false;
  const top = above.top + high + (insert ? d * 0.28 : 0);
  const end = top + d * 0.5;
  const low = -d * 1.8;
  return {
    cuts: above.cuts,
    over: [
      { shape: 'area', points: [[-d / 2, end], [d / 2, end], ...breakLine([d / 2, low], [-d / 2, low], d * 0.15)], fill: 'paper', weight: 'heavy', part: seat },
      { shape: 'line', points: [[-d * 0.4, above.top], [-d * 0.4, end]], weight: 'fine', part: seat },
      { shape: 'line', points: [[d * 0.4, above.top], [d * 0.4, end]], weight: 'fine', part: seat },
      ...[-1, 1].map((side): Primitive => ({ shape: 'area', points: rectangle(side * (d / 2), side * wide, above.top, above.top + high), fill: 'paper', weight: 'heavy', part: joint.id })),
      ...(insert ? [-1, 1].map((side): Primitive => ({ shape: 'area', points: rectangle(side * d * 0.46, side * d * 0.8, above.top + high, top), fill: 'ink', weight: 'fine', part: joint.id })) : []),
      ...film(sizes, above.top, above.top + high),
      axisLine(low, end, d),
    ],
    anchors: { ...above.anchors, [seat]: [0, low * 0.6], [joint.id]: [-d * 0.75, above.top + high * 0.5] },
    thread: [d * 0.55, above.top + high * 0.4], head: [wide, above.top + high * 0.7],
    dimensions: above.dimensions,
  };
}

const arc = (radius: number, from: number, to: number): readonly Point[] => Array.from({ length: 97 }, (_, index) => {
  const angle = from + ((to - from) * index) / 96;
  return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
});

function pin(sizes: Sizes): Pieces {
  const { joint, d, seat, held } = sizes;
  const long = joint.length === undefined ? d * 6 : Math.min(joint.length * 1000, d * 9);
  const shaft = long * 0.3;
  const hub = long * 0.52;
  const hubId = held[0] ?? `${joint.id}:held`;
  return {
    cuts: [
      // The shaft lies over the middle of the hub.
      { points: arc(hub, 0, 2 * Math.PI), part: hubId, small: false },
      { points: arc(shaft, 0, 2 * Math.PI), part: seat, small: true },
    ],
    over: [
      { shape: 'area', points: rectangle(-d / 2, d / 2, -long / 2, long / 2), fill: 'paper', weight: 'heavy', part: joint.id },
      axisLine(-long / 2, long / 2, d),
      { shape: 'line', points: [[-hub - d * 0.5, 0], [hub + d * 0.5, 0]], weight: 'fine', dash: 'chain' },
    ],
    anchors: { [seat]: [-shaft * 0.6, -shaft * 0.3], [hubId]: [-(shaft + hub) / 2, 0.2 * hub], [joint.id]: [0, long * 0.42] },
    thread: [d / 2, -long * 0.3], head: [d / 2, long * 0.4],
  };
}

/** Across the shaft: a ring that is pressed, bonded, clamped or sprung round it. */
function ring(sizes: Sizes): Pieces {
  const { joint, d, seat, held } = sizes;
  const shaft = d * 1.6;
  const outer = shaft + d * (joint.kind === 'circlip' ? 0.5 : 1.1);
  const ringId = held[0] ?? joint.id;
  const slit = joint.kind === 'clamp' || joint.kind === 'circlip' ? 0.12 : 0;
  const gap = Math.PI / 2;
  const ringPoints = slit === 0 ? arc(outer, 0, 2 * Math.PI) : [...arc(outer, gap + slit, gap + 2 * Math.PI - slit), ...arc(shaft, gap + 2 * Math.PI - slit, gap + slit)];
  const bonded = joint.kind === 'bond' || joint.locks?.some((lock) => bonds.has(lock.grade));
  const clampScrew: readonly Primitive[] = joint.kind !== 'clamp' ? [] : [
    { shape: 'area', points: rectangle(-d * 1.3, d * 1.1, outer - d * 0.75, outer - d * 0.25), fill: 'paper', weight: 'heavy', part: joint.id },
    { shape: 'area', points: rectangle(d * 1.1, d * 1.6, outer - d * 0.95, outer - d * 0.05), fill: 'paper', weight: 'heavy', part: joint.id },
  ];
  return {
    cuts: [{ points: ringPoints, part: ringId, small: joint.kind === 'circlip' }, { points: arc(shaft, 0, 2 * Math.PI), part: seat, small: false }],
    over: [
      ...(bonded ? [{ shape: 'line' as const, points: arc(shaft, gap + slit, gap + 2 * Math.PI - slit), weight: 'heavy' as const, act: true, part: joint.id }] : []),
      ...clampScrew,
      { shape: 'line', points: [[-outer - d * 0.5, 0], [outer + d * 0.5, 0]], weight: 'fine', dash: 'chain' },
      axisLine(-outer, outer, d),
    ],
    anchors: { [seat]: [-shaft * 0.4, -shaft * 0.4], [ringId]: [-(shaft + outer) / 2, 0], [joint.id]: [joint.kind === 'clamp' ? d * 1.35 : 0, joint.kind === 'clamp' ? outer - d * 0.5 : -(shaft + outer) / 2] },
    thread: [shaft, 0], head: [outer * 0.7, outer * 0.7],
  };
}

function ballLink(sizes: Sizes): Pieces {
  const { joint, seat, held } = sizes;
  const ball = 2.5;
  const rim = ball * 1.75;
  const rod = held[0] ?? `${joint.id}:held`;
  return {
    cuts: [{ points: [...arc(rim, -2.6, 2.6), ...arc(ball * 1.04, 2.6, -2.6)], part: rod, small: false }],
    over: [
      { shape: 'circle', centre: [0, 0], radius: ball, fill: 'paper', weight: 'heavy', part: seat },
      { shape: 'area', points: rectangle(-ball * 2.6, -ball * 0.9, -ball * 0.35, ball * 0.35), fill: 'paper', weight: 'heavy', part: seat },
      { shape: 'line', points: [[-ball * 3, 0], [rim + ball * 0.5, 0]], weight: 'fine', dash: 'chain' },
    ],
    anchors: { [seat]: [-ball * 1.8, 0], [rod]: [rim * 0.5, -rim * 0.62], [joint.id]: [rim * 0.62, rim * 0.5] },
    thread: [0, ball], head: [rim, 0],
  };
}
