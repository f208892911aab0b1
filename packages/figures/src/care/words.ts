import { showQuantity } from '@rotorwright/units';
import type { Figure } from '../figure.ts';
import type { BearingCare } from './bearings.ts';
import type { Care } from './care.ts';
import type { MeshCare } from './meshes.ts';

/** What there is to say of a mesh beside its numbers: what the file sets, what the slots allow. */
export function meshWords({ coupling, distance, note }: MeshCare): string {
  if (distance.value === undefined && distance.missing.length === 0) return distance.warnings.join(' ');
  const { min, max } = coupling.backlash ?? {};
  const ends = [min, ...(max === min ? [] : [max])].flatMap((end) => (end === undefined ? [] : [showQuantity(end, 'mm', { significant: 3 })]));
  return [...(ends.length === 0 ? [] : [`The file sets ${ends.join(' to ')}.`]), ...(note === undefined ? [] : [note])].join(' ');
}

/** What there is to say of a bearing beside its numbers: the limits that its warmth passes, why no rule tells when to grease it. */
export function bearingWords({ warmth, spare, interval, note }: BearingCare): string {
  return [
    ...(warmth.value === undefined ? (warmth.missing.length > 0 ? [] : warmth.warnings) : [warmLimits(warmth, spare)]),
    ...(interval && interval.value === undefined ? [`Grease ${wanting(interval)}.`] : []),
    ...(note === undefined ? [] : [note]),
  ].join(' ');
}

/** The entries without which some of the meshes, and the warmth of some bearings, stay unknown. */
export function careWants({ set, meshes, bearings }: Care): { readonly meshes?: string; readonly bearings?: string } {
  const words = (what: string, figures: readonly Figure[]): string | undefined => {
    // A figure that was refused is no entry: what refused it stands with its bearing.
    const paths = [...new Set(figures.flatMap(({ missing }) => missing))].filter((path) => set.get(path) === undefined);
    return paths.length === 0 ? undefined : `What is not known of the ${what} wants ${paths.join(', ')}.`;
  };
  const [ofMeshes, ofBearings] = [words('meshes', meshes.map(({ distance }) => distance)), words('warmth', bearings.map(({ warmth }) => warmth))];
  return { ...(ofMeshes === undefined ? {} : { meshes: ofMeshes }), ...(ofBearings === undefined ? {} : { bearings: ofBearings }) };
}

const wanting = ({ missing, warnings }: Figure): string => (missing.length > 0 ? `wants ${missing.join(', ')}` : (warnings[0] ?? 'cannot be formed').replace(/\.$/u, ''));

/** Limits by name that the warmth passes, or how far it stays below them. */
function warmLimits({ warnings }: Figure, { value = 0, shown }: Figure): string {
  const passed = warnings.flatMap((warning) => /^Limit (\w+):/u.exec(warning)?.[1] ?? []);
  const difference = showQuantity(Math.abs(value), shown, { significant: 2 });
  return passed.length > 0 ? `Too hot, by ${difference}, for ${passed.join(' and ')}.` : `${difference} below the lowest limit.`;
}

/** What the numbers of meshes stand on, and what those of bearings leave out. */
export const careNotes = {
  meshes: 'The coldest and the hottest day are those under loads, −10 and 60 °C when left out; damp, what swells is soaked. Runout is not in it: leave some more.',
  warmth: 'Warm the housing, not the bearing; gloves on, and no flame near fuel. What the maker of a seal, a grease or a compound gives goes before these figures.',
  grease: 'The grease follows a rule of thumb for machines that run long and clean: the trade does it far more often, thrust bearings above all. A sealed bearing is replaced, not greased.',
} as const;
