import { editDistance } from '@rotorwright/units';

/** Longest list that a finding repeats. */
const mostListed = 12;

/**
 * The known word that somebody most likely meant; undefined when none is near.
 *
 * A third of the letters may differ, at least one; a word that begins with the other counts as near.
 */
export function nearestWord(written: string, known: Iterable<string>): string | undefined {
  const lower = written.toLowerCase().slice(0, 60);
  let nearest: string | undefined;
  let least = Infinity;
  for (const candidate of known) {
    const distance = distanceTo(lower, candidate.toLowerCase());
    if (distance < least && distance <= Math.max(1, Math.floor(Math.max(lower.length, candidate.length) / 3))) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

function distanceTo(written: string, candidate: string): number {
  if (written === candidate) return 0;
  if (written.length >= 3 && (candidate.startsWith(written) || written.startsWith(candidate))) return 0.5;
  // Plural or singular, one word for two, an underscore for a hyphen.
  if (written.replaceAll(/[-_ ]/gu, '') === candidate.replaceAll('-', '')) return 0.25;
  return editDistance(written, candidate);
}

/** At most a dozen names, then how many more. */
export function listed(names: readonly string[]): readonly string[] {
  return names.length <= mostListed ? names : [...names.slice(0, mostListed - 1), `${names.length - mostListed + 1} more`];
}
