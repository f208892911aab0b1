import type { Machine } from './model/machine.ts';
import type { EntryPath, Place } from './model/place.ts';

/**
 * Where an entry stands, or where it would have to be written: the nearest entry above it that exists.
 *
 * @example placeOf(machine, 'rotors.main.blade-mass') // place of `rotors.main` when the file gives no blade mass
 */
export function placeOf(machine: Pick<Machine, 'places'>, path: EntryPath): Place | undefined {
  for (let at = path; at !== ''; at = at.slice(0, Math.max(0, at.lastIndexOf('.')))) {
    const place = machine.places.get(at);
    if (place) return place;
  }
  return machine.places.get('');
}
