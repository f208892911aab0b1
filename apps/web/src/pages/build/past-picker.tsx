import type { ReactNode } from 'react';

/** The moment that a link names; nothing when it names none, or nonsense. */
export function momentOf(given: string | null): Date | undefined {
  const read = given === null ? undefined : new Date(given);
  return read === undefined || Number.isNaN(read.getTime()) ? undefined : read;
}

/** Shows the build as it stood at a moment that has passed; emptied, as it stands now. */
export function PastPicker({ at, onChoose }: { readonly at: Date | undefined; readonly onChoose: (at: Date | undefined) => void }): ReactNode {
  return (
    <label className="past-picker">
      As it stood <input type="datetime-local" value={at === undefined ? '' : localTime(at)} max={localTime(new Date())} onChange={({ target }) => onChoose(momentOf(target.value === '' ? null : target.value))} />
    </label>
  );
}

/** What the field of the browser reads and writes: local time to the minute. */
function localTime(moment: Date): string {
  return new Date(moment.getTime() - moment.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
}
