/** 1, 2 or 5 times a power of ten, at least as large as asked. */
export function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return [1, 2, 5, 10].map((step) => step * power).find((step) => step >= least * (1 - 1e-9))!;
}
