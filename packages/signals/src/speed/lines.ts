import type { ReadyFamily } from './comb.ts';
import type { HeardLine, OrderSpectrum } from './hearing.ts';
import { meanPower, type Pooled } from './look.ts';

/** A line must stand this much above what noise alone would do in one bin of a thousand. */
const clear = 2;
/** Orders nearer than this, in widths of a line, are taken for one. */
const widths = 1.5;
/** Lines told, the loudest first. */
const most = 40;

const decibel = (power: number): number => 10 * Math.log10(Math.max(power, 0.1));

/** Power over noise for each order: what a spectrum would be if the rotor turned evenly. */
export function orderSpectrum(pooled: Pooled, speed: number): OrderSpectrum {
  return { step: pooled.binWidth / speed, levels: Float32Array.from({ length: pooled.bins }, (_, bin) => decibel(meanPower(pooled, bin))) };
}

/** Lines that stand out of the noise, the loudest first, each with the source of the machine that explains it. */
export function standingOut(pooled: Pooled, speed: number, families: readonly ReadyFamily[]): readonly HeardLine[] {
  const { bins, binWidth, span, independent, parts } = pooled;
  const least = clear * (1 + 7 / Math.sqrt(independent * parts.length));
  const lobe = Math.max(1, Math.round(widths / span / binWidth));
  const known = families.flatMap(({ family }) => [
    ...Array.from({ length: family.harmonics }, (_, index) => ({ family: family.id, multiple: index + 1, order: family.order * (index + 1) })),
    ...(family.faint ?? []).map((order) => ({ family: family.id, multiple: order / family.order, order })),
  ]);
  const found: HeardLine[] = [];
  for (let bin = lobe; bin < bins - lobe; bin += 1) {
    const power = meanPower(pooled, bin);
    if (power < least) continue;
    let highest = true;
    for (let at = bin - lobe; at <= bin + lobe && highest; at += 1) highest = meanPower(pooled, at) <= power;
    if (!highest) continue;
    const order = (bin * binWidth) / speed;
    const nearest = known.reduce<(typeof known)[number] | undefined>((best, each) => (best === undefined || Math.abs(each.order - order) < Math.abs(best.order - order) ? each : best), undefined);
    const near = nearest !== undefined && Math.abs(nearest.order - order) * speed < widths / span;
    found.push({ order: near ? nearest.order : order, frequency: bin * binWidth, level: decibel(power), ...(near ? { family: nearest.family, multiple: nearest.multiple } : {}) });
  }
  return found.toSorted((a, b) => b.level - a.level).slice(0, most);
}
