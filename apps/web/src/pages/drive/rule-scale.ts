import { niceStep } from '../../sheet/nice-step.ts';

/** One division of a scale. */
export interface Tick {
  /** In the scale's own unit. */
  readonly value: number;
  /** px */
  readonly at: number;
  readonly size: 'small' | 'middle' | 'labelled';
}

/**
 * Divisions of a scale that runs from `from` to `to` over a width: labelled ones far enough apart to be read.
 *
 * @param labelRoom  px that a label needs
 */
export function ticksOf(from: number, to: number, width: number, labelRoom: number): readonly Tick[] {
  if (!(to > from) || !(width > 0)) return [];
  const labelled = niceStep(((to - from) * labelRoom) / width);
  const leading = Math.round(labelled / 10 ** Math.floor(Math.log10(labelled) + 1e-9));
  const parts = [leading === 2 ? 4 : 10, leading === 2 ? 4 : 5, 2, 1].find((count) => (labelled / count / (to - from)) * width >= 5) ?? 1;
  const small = labelled / parts;
  const ticks: Tick[] = [];
  for (let index = Math.ceil(from / small - 1e-9); index * small <= to * (1 + 1e-12); index += 1) {
    const value = index * small;
    const size = index % parts === 0 ? 'labelled' : parts % 2 === 0 && index % (parts / 2) === 0 ? 'middle' : 'small';
    ticks.push({ value, at: ((value - from) / (to - from)) * width, size });
  }
  return ticks;
}

/** Range of the source speed that holds all that matters, and some room on both sides. */
export function rangeAround(speed: number, points: readonly number[], room = 0.14): { readonly min: number; readonly max: number } {
  const known = [speed, ...points].filter((value) => Number.isFinite(value) && value > 0);
  // Bands that lie beyond half as much again would squeeze the scale.
  const near = known.filter((value) => value > speed * 0.62 && value < speed * 1.5);
  return { min: Math.min(...near) * (1 - room), max: Math.max(...near) * (1 + room) };
}
