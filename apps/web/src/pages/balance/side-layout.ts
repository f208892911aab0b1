import { hubOf, type BalanceSummary, type Body } from '@rotorwright/figures';
import type { Machine, Point } from '@rotorwright/machine';

/** Where the hub is in a drawing with forward to the left, px, and px for each metre. */
export interface Paper {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

export interface DrawnBody {
  readonly body: Body;
  readonly x: number;
  readonly y: number;
  /** px; the area of the circle goes with the mass. */
  readonly r: number;
}

export interface Label {
  readonly body: DrawnBody;
  readonly text: string;
  /** Left edge of the text, and its base line, px. */
  readonly x: number;
  readonly y: number;
}

export interface SideLayout {
  readonly paper: Paper;
  readonly bodies: readonly DrawnBody[];
  readonly labels: readonly Label[];
  /** Ends of shafts that lie in the plane of the drawing, px. */
  readonly shafts: readonly (readonly [number, number, number, number])[];
  /** Runs of belts, px. */
  readonly belts: readonly (readonly [number, number, number, number])[];
  readonly tail?: { readonly x: number; readonly y: number; readonly r: number };
  /** Half of the main rotor, px. */
  readonly mainRadius?: number;
}

const edge = 14;
const labelRow = 17;
const letter = 6.6;
const largest = 17;

/**
 * The machine from the left, to scale: what has mass as circles, shafts and rotors as lines.
 *
 * @param width  of the paper, px
 * @returns undefined when no hub is known, from which places are said
 */
export function sideLayout(machine: Machine, { hub, whole }: BalanceSummary, width: number): SideLayout | undefined {
  if (!hub || whole.length === 0) return undefined;
  const placeOf = (part: string | undefined): Point | undefined => (part === undefined ? undefined : machine.parts.get(machine.thingOf.get(part) ?? '')?.at?.get(part));
  const tailRotor = machine.rotors.get('tail');
  const tailAt = hubOf(machine, 'tail');
  const tailRadius = (tailRotor?.diameter ?? 0) / 2;
  const [front, back] = [Math.max(...whole.map(({ at }) => at[0])) + 0.05, Math.min(...whole.map(({ at }) => at[0]), (tailAt?.[0] ?? 0) - tailRadius) - 0.02];
  const [top, bottom] = [Math.max(hub[2], ...whole.map(({ at }) => at[2]), (tailAt?.[2] ?? -Infinity) + tailRadius), Math.min(...whole.map(({ at }) => at[2]), (tailAt?.[2] ?? Infinity) - tailRadius)];
  const scale = (width - 2 * edge) / (front - back);
  const down = edge + 12 + (top - hub[2]) * scale;
  const floor = down + (hub[2] - bottom) * scale + largest;
  const onPaper = (at: Point): readonly [number, number] => [edge + (front - at[0]) * scale, down + (hub[2] - at[2]) * scale];
  const heaviest = Math.max(...whole.map(({ mass }) => mass));
  const bodies = whole.map((body): DrawnBody => {
    const [x, y] = onPaper(body.at);
    return { body, x, y, r: Math.max(1.5, largest * Math.sqrt(body.mass / heaviest)) };
  });
  const { labels, height } = labelsOf(bodies, onPaper(hub)[0], floor, width);
  const mainDiameter = machine.rotors.get('main')?.diameter;
  return {
    paper: { x: onPaper(hub)[0], y: down, scale, width, height },
    // The light ones lie on the heavy ones.
    bodies: bodies.toSorted((a, b) => b.r - a.r),
    labels,
    shafts: [...machine.shafts.values()].flatMap(({ part, axis }) => {
      const at = placeOf(part);
      const length = part === undefined ? undefined : machine.parts.get(machine.thingOf.get(part) ?? '')?.sizes['length'];
      if (!at || !axis || length === undefined || Math.abs(axis[1]) > 0.5) return [];
      const end = (way: number): readonly [number, number] => onPaper([at[0] + (way * axis[0] * length) / 2, at[1], at[2] + (way * axis[2] * length) / 2]);
      return [[...end(1), ...end(-1)] as const];
    }),
    belts: [...machine.couplings.values()].flatMap(({ kind, driver, driven }) => {
      const [from, to] = [placeOf(driver.part), placeOf(driven.part)];
      return kind === 'belt' && from && to ? [[...onPaper(from), ...onPaper(to)] as const] : [];
    }),
    ...(tailAt && tailRadius > 0 ? { tail: { x: onPaper(tailAt)[0], y: onPaper(tailAt)[1], r: tailRadius * scale } } : {}),
    ...(mainDiameter === undefined ? {} : { mainRadius: (mainDiameter / 2) * scale }),
  };
}

/** What pulls most at the centre by name, in rows under the drawing, each in the first row in which it has room. */
function labelsOf(bodies: readonly DrawnBody[], hub: number, floor: number, width: number): { readonly labels: readonly Label[]; readonly height: number } {
  const most = width < 560 ? 5 : 8;
  const pull = ({ body, x }: DrawnBody): number => body.mass * Math.abs(x - hub);
  // Twins on either side lie over each other: one name for both.
  const named = new Map(bodies.toSorted((a, b) => pull(a) - pull(b)).map((drawn) => [`${drawn.body.title} ${Math.round(drawn.x)}`, drawn]));
  const chosen = [...named.values()].toSorted((a, b) => pull(b) - pull(a)).slice(0, most).toSorted((a, b) => a.x - b.x);
  const rowEnds: number[] = [];
  const labels = chosen.map((body): Label => {
    const text = body.body.title;
    const wide = text.length * letter;
    const x = Math.min(Math.max(2, body.x - wide / 2), width - wide - 2);
    const free = rowEnds.findIndex((end) => x > end + 10);
    const row = free === -1 ? rowEnds.length : free;
    rowEnds[row] = x + wide;
    return { body, text, x, y: floor + 16 + row * labelRow };
  });
  return { labels, height: floor + 8 + Math.max(1, rowEnds.length) * labelRow };
}
