import { isOutOfBounds } from '../read/source.ts';
import { Report } from '../read/report.ts';
import { lineStarts } from '../read/lines.ts';
import { locate, parseForEdit } from './locate.ts';
import { holds, replaced, type Change } from './set-entry.ts';
import type { EntryValue } from './value-text.ts';

/** A value to be put in place of one that is there. */
export interface Replacement {
  readonly path: string;
  readonly value: EntryValue;
}

/**
 * Puts many values in place of those that are there, on one reading of the file instead of one for each.
 *
 * @returns the new text, and which of the replacements are left to be done one by one: those whose entry is new, a section,
 *          behind an alias, or named twice. All are left when the new text does not read as it should.
 */
export function replaceTogether(text: string, replacements: readonly Replacement[]): { readonly text: string; readonly left: readonly Replacement[] } {
  const untouched = { text, left: replacements };
  if (isOutOfBounds(text, new Report(lineStarts(text)))) return untouched;
  const document = parseForEdit(text);
  if (document.errors.length > 0) return untouched;
  const planned = replacements.flatMap((replacement): { readonly replacement: Replacement; readonly change: Change }[] => {
    const located = locate(document, replacement.path.split('.'));
    const change = located.kind === 'entry' ? replaced(located, replacement.value, text) : 'not there';
    return typeof change === 'string' ? [] : [{ replacement, change }];
  });
  const inOrder = planned.toSorted((a, b) => a.change.start - b.change.start);
  const apart = inOrder.filter(({ change }, at) => at === 0 || change.start >= inOrder[at - 1]!.change.end && change.start > inOrder[at - 1]!.change.start);
  let from = 0;
  const pieces: string[] = [];
  for (const { change } of apart) {
    pieces.push(text.slice(from, change.start), change.insert);
    from = change.end;
  }
  const changed = pieces.join('') + text.slice(from);
  const after = parseForEdit(changed);
  if (after.errors.length > 0 || apart.some(({ replacement: { path, value } }) => !holds(after, path.split('.'), value))) return untouched;
  const done = new Set(apart.map(({ replacement }) => replacement));
  return { text: changed, left: replacements.filter((replacement) => !done.has(replacement)) };
}
