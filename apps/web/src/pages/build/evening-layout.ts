import type { Evenings, Step } from '@rotorwright/build';

export interface EveningBar {
  readonly kind: 'planned' | 'curing';
  /** px from the left. */
  readonly x: number;
  readonly width: number;
}

export interface EveningLayout {
  readonly width: number;
  readonly columns: readonly { readonly from: string; readonly x: number; readonly work: number; readonly hours: readonly { readonly x: number; readonly hour: number }[] }[];
  /** A row for each module in which something is done, in the order of the first work. */
  readonly rows: readonly { readonly module: string; readonly bars: readonly EveningBar[] }[];
}

export interface EveningMetrics {
  /** Width of an evening and of the night after it, px. */
  readonly evening: number;
  readonly night: number;
}

type Span = readonly [from: number, to: number];

const DAY = 86_400;

/**
 * Where evenings, work and curing stand on the sheet. Evenings are drawn to scale, nights short: a cure runs through the dark.
 *
 * @param found   with one evening at least
 * @param first   when the first evening begins, ISO 8601
 * @param length  of an evening, s
 * @param curing  what cures already
 */
export function layEvenings(found: Evenings, first: string, length: number, curing: readonly { readonly step: Step; readonly until: string }[], metrics: EveningMetrics): EveningLayout {
  const origin = Date.parse(first);
  const seconds = (iso: string): number => (Date.parse(iso) - origin) / 1000;
  const pitch = metrics.evening + metrics.night;
  const width = found.count * pitch;
  const x = (time: number): number => {
    const day = Math.floor(time / DAY);
    const within = time - day * DAY;
    const across = within <= length ? (within / length) * metrics.evening : metrics.evening + ((within - length) / (DAY - length)) * metrics.night;
    return Math.min(width, Math.max(0, day * pitch + across));
  };
  const work = new Map<string, Span[]>();
  const cures = new Map<string, Span[]>();
  const add = (spans: Map<string, Span[]>, module: string, span: Span): void => void spans.set(module, [...(spans.get(module) ?? []), span]);
  for (const { steps } of found.evenings) {
    for (const { step, starts, ends, curesUntil } of steps) {
      add(work, step.module, [seconds(starts), seconds(ends)]);
      if (curesUntil !== undefined) add(cures, step.module, [seconds(ends), seconds(curesUntil)]);
    }
  }
  for (const { step, until } of curing) if (seconds(until) > 0) add(cures, step.module, [0, seconds(until)]);
  const bars = (kind: EveningBar['kind'], spans: readonly Span[] = []): EveningBar[] => joined(spans).map(([from, to]) => ({ kind, x: x(from), width: x(to) - x(from) }));
  const worked = new Map(found.evenings.map((evening) => [Math.floor(seconds(evening.from) / DAY + 0.5), evening.work]));
  return {
    width,
    columns: Array.from({ length: found.count }, (_, day) => {
      const from = new Date(origin + day * DAY * 1000);
      return { from: from.toISOString(), x: day * pitch, work: worked.get(day) ?? 0, hours: hoursOf(from, length, day * pitch, metrics.evening) };
    }),
    rows: [...new Set([...work.keys(), ...cures.keys()])].map((module) => ({ module, bars: [...bars('curing', cures.get(module)), ...bars('planned', work.get(module))] })),
  };
}

/** Spans that touch or overlap are one. */
function joined(spans: readonly Span[]): readonly Span[] {
  const made: [number, number][] = [];
  for (const [from, to] of spans.toSorted((a, b) => a[0] - b[0])) {
    const last = made.at(-1);
    if (last !== undefined && from <= last[1] + 1) last[1] = Math.max(last[1], to);
    else made.push([from, to]);
  }
  return made;
}

/** Full hours by the clock on the wall. */
function hoursOf(from: Date, length: number, left: number, width: number): readonly { readonly x: number; readonly hour: number }[] {
  const past = from.getMinutes() * 60 + from.getSeconds();
  const first = past === 0 ? 0 : 3600 - past;
  const count = Math.max(0, Math.floor((length - first) / 3600) + 1);
  return Array.from({ length: count }, (_, k) => {
    const time = first + k * 3600;
    return { x: left + (time / length) * width, hour: new Date(from.getTime() + time * 1000).getHours() };
  });
}
