/** Size of a link of a chain, px. */
export const linkHeight = 36;

/** Width of a link, px: letters of that size are 6.7 px wide on average, and a crack runs behind the words. */
export function linkWidth(words: string, cracked = false): number {
  return Math.round(words.length * 6.7) + 53 + (cracked ? 36 : 0);
}

/**
 * Outlines of a link: two capsules, one in the other; a cracked one falls into two pieces that stand apart.
 *
 * @param width px
 * @returns     paths in a box of `width` by `linkHeight`
 */
export function linkPaths(width: number, cracked: boolean): readonly string[] {
  const bottom = linkHeight - 1;
  if (!cracked) return [capsule(width, 1), capsule(width, 5)];
  const radius = bottom / 2;
  const crack = width - radius - 14;
  const left = `M${crack + 3} 1H${radius}A${radius - 1} ${radius - 1} 0 0 0 ${radius} ${bottom}H${crack - 6}L${crack + 2} 22L${crack - 3} 16Z`;
  const right = `M${crack + 12} 1H${width - radius}A${radius - 1} ${radius - 1} 0 0 1 ${width - radius} ${bottom}H${crack + 3}L${crack + 11} 22L${crack + 6} 16Z`;
  return [left, right];
}

function capsule(width: number, inset: number): string {
  const [bottom, radius] = [linkHeight - inset, (linkHeight - 2 * inset) / 2];
  const [left, right] = [inset + radius, width - inset - radius];
  return `M${left} ${inset}H${right}A${radius} ${radius} 0 0 1 ${right} ${bottom}H${left}A${radius} ${radius} 0 0 1 ${left} ${inset}Z`;
}
