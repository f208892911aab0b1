/** A text that was changed and not saved: what it was changed from is kept with it. */
export interface Draft {
  readonly text: string;
  /** Revision of the saved file that the changes began from. */
  readonly revision: string;
}

const keyOf = (machine: string): string => `rotorwright.draft.${machine}`;

/** Drafts last as long as the tab. A browser that refuses storage loses no saved text, only the safety of a reload. */
export function keepDraft(storage: Storage, machine: string, draft: Draft | undefined): boolean {
  try {
    if (draft) storage.setItem(keyOf(machine), JSON.stringify(draft));
    else storage.removeItem(keyOf(machine));
    return true;
  } catch {
    return false;
  }
}

export function readDraft(storage: Storage, machine: string): Draft | undefined {
  try {
    const json = JSON.parse(storage.getItem(keyOf(machine)) ?? 'null') as unknown;
    if (typeof json !== 'object' || json === null || !('text' in json) || !('revision' in json)) return undefined;
    return typeof json.text === 'string' && typeof json.revision === 'string' ? { text: json.text, revision: json.revision } : undefined;
  } catch {
    return undefined;
  }
}
