export interface LineChange {
  readonly kind: 'same' | 'theirs' | 'mine';
  readonly text: string;
}

/**
 * Two texts side by side, line by line: lines of both, lines only of theirs, lines only of mine.
 * Longest common subsequence after the common head and tail, O(n·m) in what is left; beyond a million cells the
 * middle is shown as replaced whole.
 */
export function compareLines(theirs: string, mine: string): readonly LineChange[] {
  const a = theirs.split('\n');
  const b = mine.split('\n');
  let head = 0;
  while (head < a.length && head < b.length && a[head] === b[head]) head += 1;
  let tail = 0;
  while (tail < a.length - head && tail < b.length - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail += 1;
  const left = a.slice(head, a.length - tail);
  const right = b.slice(head, b.length - tail);
  const same = (text: string): LineChange => ({ kind: 'same', text });
  return [...a.slice(0, head).map(same), ...middle(left, right), ...a.slice(a.length - tail).map(same)];
}

function middle(left: readonly string[], right: readonly string[]): readonly LineChange[] {
  const replaced: readonly LineChange[] = [...left.map((text): LineChange => ({ kind: 'theirs', text })), ...right.map((text): LineChange => ({ kind: 'mine', text }))];
  if (left.length * right.length > 1_000_000) return replaced;
  const width = right.length + 1;
  const longest = new Uint32Array((left.length + 1) * width);
  for (let i = left.length - 1; i >= 0; i -= 1) {
    for (let j = right.length - 1; j >= 0; j -= 1) {
      longest[i * width + j] = left[i] === right[j] ? (longest[(i + 1) * width + j + 1] ?? 0) + 1 : Math.max(longest[(i + 1) * width + j] ?? 0, longest[i * width + j + 1] ?? 0);
    }
  }
  const changes: LineChange[] = [];
  let i = 0;
  let j = 0;
  while (i < left.length || j < right.length) {
    if (i < left.length && j < right.length && left[i] === right[j]) {
      changes.push({ kind: 'same', text: left[i] ?? '' });
      i += 1;
      j += 1;
    } else if (i < left.length && (j >= right.length || (longest[(i + 1) * width + j] ?? 0) >= (longest[i * width + j + 1] ?? 0))) {
      changes.push({ kind: 'theirs', text: left[i] ?? '' });
      i += 1;
    } else {
      changes.push({ kind: 'mine', text: right[j] ?? '' });
      j += 1;
    }
  }
  return changes;
}
