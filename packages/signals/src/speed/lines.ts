import { lineAmplitudes, noiseSquare } from './amplitudes.ts';
import type { LineComb, LineFamily, ReadyFamily } from './comb.ts';
import type { HeardLine, OrderSpectrum } from './hearing.ts';
import { meanPower, type Pooled } from './look.ts';
import { densityOf } from './whiten.ts';

/** A line must stand this much above what noise alone would do in one bin of a thousand. */
const clear = 2;
/** Orders nearer than this, in widths of a line, are taken for one. */
const widths = 1.5;
/** Lines told, the loudest first. */
const most = 40;
/** Turns of a shaft to either side of a line that are looked for, and multiples in a row of lines. */
const mostTurns = 3;
const mostMultiple = 8;
/** Lines that make a row. */
const leastRow = 3;

const decibel = (power: number): number => 10 * Math.log10(Math.max(power, 0.1));

/** Power over noise for each order: what a spectrum would be if the rotor turned evenly. */
export function orderSpectrum(pooled: Pooled, speed: number): OrderSpectrum {
  return { step: pooled.binWidth / speed, levels: Float32Array.from({ length: pooled.bins }, (_, bin) => decibel(meanPower(pooled, bin))) };
}

type Bare = Omit<HeardLine, 'amplitude'>;

/** Lines that stand out of the noise, the loudest first, each with the source of the machine that explains it. */
export function standingOut(pooled: Pooled, straight: Float64Array, rate: number, speed: number, families: readonly ReadyFamily[], { shafts = [] }: LineComb): readonly HeardLine[] {
  const found = peaks(pooled, speed, families).toSorted((a, b) => b.level - a.level).slice(0, most);
  // A line is nowhere nearer to another than this.
  const near = widths / pooled.span / speed;
  const told = rowsOf(besideOthers(found, shafts, near), near);
  const amplitudes = lineAmplitudes(straight, rate, told.map(({ frequency }) => ({ frequency, noise: noiseSquare(densityOf(pooled, Math.round(frequency / pooled.binWidth), rate), straight.length, rate) })));
  return told.map((line, index) => ({ ...line, amplitude: amplitudes[index]! }));
}

interface OwnLine {
  readonly family: string;
  readonly multiple: number;
  readonly order: number;
}

const multiplesOf = ({ id, order }: LineFamily, from: number, until: number): readonly OwnLine[] =>
  Array.from({ length: Math.max(0, until - from + 1) }, (_, index) => ({ family: id, multiple: from + index, order: order * (from + index) }));

/** The line of the machine that lies nearest to an order, where one is near. */
const nearestTo = (order: number, near: number, lines: readonly OwnLine[]): OwnLine | undefined =>
  lines.reduce<OwnLine | undefined>((best, each) => (Math.abs(each.order - order) < (best === undefined ? near : Math.abs(best.order - order)) ? each : best), undefined);

function peaks(pooled: Pooled, speed: number, families: readonly ReadyFamily[]): readonly Bare[] {
  const { bins, binWidth, span, independent, parts } = pooled;
  const least = clear * (1 + 7 / Math.sqrt(independent * parts.length));
  const lobe = Math.max(1, Math.round(widths / span / binWidth));
  const stands = (order: number): boolean => {
    const bin = Math.round((order * speed) / binWidth);
    return bin < bins - lobe && meanPower(pooled, bin) >= least;
  };
  // A source may be heard further up than is looked for: as far as its row goes on without a gap.
  const lastOf = ({ order, harmonics }: LineFamily): number => {
    let last = harmonics;
    while (stands(order * last) && stands(order * (last + 1))) last += 1;
    return last;
  };
  const further = families.flatMap(({ family }) => multiplesOf(family, family.harmonics + 1, lastOf(family)));
  const known = families.flatMap(({ family }) => [
    ...multiplesOf(family, 1, family.harmonics),
    ...(family.faint ?? []).map((order) => ({ family: family.id, multiple: order / family.order, order })),
  ]);
  const found: Bare[] = [];
  for (let bin = lobe; bin < bins - lobe; bin += 1) {
    const power = meanPower(pooled, bin);
    if (power < least) continue;
    let highest = true;
    for (let at = bin - lobe; at <= bin + lobe && highest; at += 1) highest = meanPower(pooled, at) <= power;
    if (!highest) continue;
    const order = (bin * binWidth) / speed;
    const near = widths / span / speed;
    const own = nearestTo(order, near, known) ?? nearestTo(order, near, further);
    found.push({ order: own?.order ?? order, frequency: bin * binWidth, level: decibel(power), ...(own === undefined ? {} : { family: own.family, multiple: own.multiple }) });
  }
  return found;
}

/** Lines that no family has, but that stand on both sides of one that a family has, whole turns of a shaft away. */
function besideOthers(lines: readonly Bare[], shafts: NonNullable<LineComb['shafts']>, near: number): readonly Bare[] {
  const has = (order: number): boolean => lines.some((line) => Math.abs(line.order - order) < near);
  return lines.map((line) => {
    if (line.family !== undefined) return line;
    for (let turns = 1; turns <= mostTurns; turns += 1) {
      for (const { shaft, order } of shafts) {
        // A shaft that turns slower than a line is wide cannot be told from its neighbour.
        if (order < 2 * near) continue;
        for (const side of [-1, 1]) {
          const middle = lines.find((each) => each.family !== undefined && Math.abs(each.order + side * turns * order - line.order) < near);
          if (middle !== undefined && has(middle.order - side * turns * order)) return { ...line, beside: { family: middle.family!, multiple: middle.multiple!, shaft, turns: side * turns } };
        }
      }
    }
    return line;
  });
}

/** Lines that nothing explains, but that are multiples of the lowest of them. */
function rowsOf(lines: readonly Bare[], near: number): readonly Bare[] {
  const open = lines.filter(({ family, beside }) => family === undefined && beside === undefined).toSorted((a, b) => a.order - b.order);
  const rows = new Map<Bare, { readonly order: number; readonly multiple: number }>();
  for (const first of open) {
    if (rows.has(first)) continue;
    const own = open.flatMap((line) => {
      const multiple = Math.round(line.order / first.order);
      return !rows.has(line) && multiple >= 1 && multiple <= mostMultiple && Math.abs(line.order - multiple * first.order) < near ? [{ line, multiple }] : [];
    });
    if (own.length >= leastRow) for (const { line, multiple } of own) rows.set(line, { order: first.order, multiple });
  }
  return lines.map((line) => (rows.has(line) ? { ...line, row: rows.get(line)! } : line));
}
