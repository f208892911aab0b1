import { severityOf, type FindingCode } from '../findings/words.ts';
import type { Finding } from '../findings/finding.ts';
import type { EntryPath } from '../model/place.ts';
import { placeAt, type Lines } from './lines.ts';
import type { TreeNode } from './tree.ts';

export type FindingValues = Finding['values'];

/** Longest piece of the file that a finding repeats. */
const longestGiven = 80;

/** Collects what is wrong with a file: each trouble once, however often its text is read. */
export class Report {
  readonly lines: Lines;
  readonly #seen = new Set<string>();
  readonly #broken = new Set<number>();
  readonly #found: { readonly at: number; readonly finding: Finding }[] = [];

  constructor(lines: Lines) {
    this.lines = lines;
  }

  add(code: FindingCode, path: EntryPath, span: { readonly start: number; readonly end: number }, values: FindingValues = {}): void {
    const start = Math.max(0, Math.min(span.start, this.lines.text.length));
    const once = `${code} ${start}`;
    // Where the text itself is broken, what it would have meant is no second trouble.
    if (this.#seen.has(once) || this.#broken.has(start)) return;
    this.#seen.add(once);
    if (code.startsWith('yaml/')) this.#broken.add(start);
    const given = shorten(this.lines.text.slice(start, span.end));
    const finding: Finding = { code, severity: severityOf(code), path, place: placeAt(this.lines, start, span.end), ...(given === '' ? {} : { given }), values };
    this.#found.push({ at: start, finding });
  }

  /** At a node of the tree. */
  at(code: FindingCode, path: EntryPath, node: TreeNode, values: FindingValues = {}): void {
    this.add(code, path, node, values);
  }

  /** In the order of the file. Behind the first break in the text itself, sections may seem to be what they are not: only further breaks are told. */
  findings(): readonly Finding[] {
    const broken = Math.min(...this.#broken);
    return this.#found.filter((one) => one.at < broken || one.finding.code.startsWith('yaml/')).toSorted((a, b) => a.at - b.at).map((one) => one.finding);
  }
}

function shorten(text: string): string {
  const line = text.split('\n', 1)[0]?.trim() ?? '';
  return line.length > longestGiven ? `${line.slice(0, longestGiven - 1)}…` : line;
}
