import { niceStep } from './nice-step.ts';

/** Labelled places of an axis, at most about `most` of them. */
export function axisTicks(from: number, to: number, most: number): readonly number[] {
  if (!(to > from)) return [from];
  const step = niceStep((to - from) / most);
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, index) => Number(((first + index) * step).toPrecision(12)));
}
