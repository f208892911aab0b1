import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keepDraft, readDraft } from '../apps/web/src/pages/file/draft.ts';
import { compareLines } from '../apps/web/src/pages/file/line-changes.ts';

function memory(): Storage {
  const items = new Map<string, string>();
  return {
    get length() { return items.size; },
    clear: () => items.clear(),
    key: (index) => [...items.keys()][index] ?? null,
    getItem: (key) => items.get(key) ?? null,
    removeItem: (key) => { items.delete(key); },
    setItem: (key, value) => { items.set(key, value); },
  };
}

describe('drafts', () => {
  it('come back as they were, one for each machine', () => {
    const storage = memory();
    keepDraft(storage, 'whimbrel', { text: 'a: 1\n', revision: 'r1' });
    keepDraft(storage, 'turnstone', { text: 'b: 2\n', revision: 'r2' });
    expect(readDraft(storage, 'whimbrel')).toEqual({ text: 'a: 1\n', revision: 'r1' });
    keepDraft(storage, 'whimbrel', undefined);
    expect(readDraft(storage, 'whimbrel')).toBeUndefined();
    expect(readDraft(storage, 'turnstone')?.revision).toBe('r2');
  });

  it('a spoilt draft is no draft, and full storage is no crash', () => {
    const storage = memory();
    storage.setItem('rotorwright.draft.whimbrel', '{"text":');
    expect(readDraft(storage, 'whimbrel')).toBeUndefined();
    const full = { ...memory(), setItem: () => { throw new Error('full'); } } as Storage;
    expect(keepDraft(full, 'whimbrel', { text: '', revision: '' })).toBe(false);
  });
});

describe('two texts side by side', () => {
  const lines = fc.array(fc.constantFrom('a', 'b', 'c'), { maxLength: 30 }).map((list) => list.join('\n'));

  it('without the lines of the one stand the lines of the other', () => {
    // Law: a comparison loses and adds no line of either side.
    fc.assert(
      fc.property(lines, lines, (theirs, mine) => {
        const changes = compareLines(theirs, mine);
        expect(changes.filter((line) => line.kind !== 'mine').map((line) => line.text).join('\n')).toBe(theirs);
        expect(changes.filter((line) => line.kind !== 'theirs').map((line) => line.text).join('\n')).toBe(mine);
      }),
    );
  });

  it('equal texts have no differences', () => {
    fc.assert(
      fc.property(lines, (text) => {
        expect(compareLines(text, text).every((line) => line.kind === 'same')).toBe(true);
      }),
    );
  });

  it('one changed line is one line of theirs and one of mine', () => {
    expect(compareLines('a\nb\nc', 'a\nx\nc').map((line) => line.kind)).toEqual(['same', 'theirs', 'mine', 'same']);
  });
});
