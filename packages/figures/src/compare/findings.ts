import type { Finding } from '@rotorwright/machine';
import type { FigureSet } from '../set/figure-set.ts';

/** What the figures find after a change, and did not find before it, or not with the same values. Limits are left out: `compareWindows` tells them. */
export function newFindings(before: Pick<FigureSet, 'findings'>, after: Pick<FigureSet, 'findings'>): readonly Finding[] {
  const known = new Set(before.findings.map(keyOf));
  return after.findings.filter((finding) => finding.code !== 'limit/exceeded' && !known.has(keyOf(finding)));
}

/** Its place is no part of it: an edit above moves every line. */
const keyOf = ({ code, path, values }: Finding): string => JSON.stringify([code, path, values]);
