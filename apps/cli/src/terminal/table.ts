import { stripVTControlCharacters } from 'node:util';

export interface Column {
  readonly title: string;
  /** Numbers stand right. */
  readonly right?: boolean;
  /** Narrowed by breaking its text when the table is too wide. */
  readonly breaks?: boolean;
}

const gap = 2;

/** Characters as a terminal shows them; colour takes no room. */
export const widthOf = (text: string): number => [...stripVTControlCharacters(text)].filter((character) => !/\p{Mn}/u.test(character)).length;

/**
 * Sets rows under their titles, within a width. Texts that break do so at spaces; a word longer than its column is cut into pieces.
 *
 * @param width columns of the terminal
 */
export function table(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string {
  const natural = columns.map((column, at) => Math.max(widthOf(column.title), ...rows.map((row) => widthOf(row[at] ?? ''))));
  const widths = narrowed(columns, natural, width - gap * (columns.length - 1));
  const line = (cells: readonly string[]): string => {
    const broken = cells.map((cell, at) => wrap(cell, widths[at] ?? 1));
    const height = Math.max(...broken.map((lines) => lines.length));
    return Array.from({ length: height }, (_, row) => broken.map((lines, at) => pad(lines[row] ?? '', widths[at] ?? 1, columns[at]?.right === true)).join(' '.repeat(gap)).trimEnd()).join('\n');
  };
  return [line(columns.map(({ title }) => title)), line(widths.map((each) => '-'.repeat(each))), ...rows.map(line)].join('\n');
}

function narrowed(columns: readonly Column[], natural: readonly number[], room: number): readonly number[] {
  const widths = [...natural];
  for (let over = widths.reduce((a, b) => a + b, 0) - room; over > 0; over -= 1) {
    const candidates = columns.map((column, at) => ({ at, width: column.breaks === true ? (widths[at] ?? 0) : 0 }));
    const widest = candidates.reduce((a, b) => (b.width > a.width ? b : a));
    if (widest.width <= 8) break;
    widths[widest.at] = widest.width - 1;
  }
  return widths;
}

const pad = (text: string, width: number, right: boolean): string => {
  const space = ' '.repeat(Math.max(0, width - widthOf(text)));
  return right ? space + text : text + space;
};

/** Breaks a text at spaces into lines of at most `width` characters. */
export function wrap(text: string, width: number): readonly string[] {
  if (widthOf(text) <= width) return [text];
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((each) => pieces(each, width))) {
    if (line === '') line = word;
    else if (widthOf(line) + 1 + widthOf(word) <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

function pieces(word: string, width: number): readonly string[] {
  if (widthOf(word) <= width) return [word];
  const characters = [...stripVTControlCharacters(word)];
  return Array.from({ length: Math.ceil(characters.length / width) }, (_, at) => characters.slice(at * width, (at + 1) * width).join(''));
}

/** A paragraph, broken to the width, each line after the first indented. */
export const paragraph = (text: string, width: number, indent = ''): string => wrap(text, width - indent.length).map((line, at) => (at === 0 ? line : indent + line)).join('\n');
