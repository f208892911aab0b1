import type { Place } from '../model/place.ts';

/** From offsets in a text to lines and columns. */
export interface Lines {
  readonly text: string;
  readonly starts: readonly number[];
}

export function lineStarts(text: string): Lines {
  const starts = [0];
  for (let at = text.indexOf('\n'); at !== -1; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  return { text, starts };
}

/** @returns the place of `start` to `end`, held within the text */
export function placeAt(lines: Lines, start: number, end: number): Place {
  const [line, column] = position(lines, start);
  const [endLine, endColumn] = position(lines, Math.max(start, end));
  return { line, column, endLine, endColumn };
}

function position({ text, starts }: Lines, offset: number): readonly [line: number, column: number] {
  const held = Math.max(0, Math.min(offset, text.length));
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] as number) <= held) low = middle;
    else high = middle - 1;
  }
  return [low + 1, held - (starts[low] as number) + 1];
}
