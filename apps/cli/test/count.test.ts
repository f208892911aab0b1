import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { shell, temporaryFolder, widest } from './shell.ts';

const whimbrel = 'examples/whimbrel/machine.yaml';

describe('rotorwright count', () => {
  it('shows what is still to be counted, within 80 columns', async () => {
    const { status, out } = await shell(['count', whimbrel]);
    expect(status).toBe(0);
    expect(out).toMatch(/bag-3 +Front tail gear case +12 +not counted/);
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('puts a bag on record, and answers 1 with what to buy while something is short', async () => {
    const home = temporaryFolder();
    const first = await shell(['count', whimbrel, 'bag-3', '--by', 'Maren', '--missing', 'tail-case/post=2', '--damaged', 'tail-case/spur', '--replaced', 'tail-case/spur'], { home });
    expect([first.status, first.err]).toEqual([1, 'Counted bag-3 of whimbrel as entry 1, by Maren.\n']);
    const list = JSON.parse((await shell(['count', whimbrel, '--shopping', '--json'], { home })).out) as { wanted: readonly { item: string; short: number }[]; tools: readonly string[] };
    expect(list.wanted.map(({ item, short }) => [item, short])).toEqual([['tail-case/post', 2]]);
    expect(list.tools.length).toBeGreaterThan(0);
    const again = await shell(['count', whimbrel, 'bag-3', '--by', 'Maren'], { home });
    expect(again.status).toBe(0);
    expect(again.out).toContain('1 of 1 bag complete.');
  });

  it.each([
    ['a bag that is not there', ['bag-33', '--by', 'Maren'], /has no bag “bag-33”/],
    ['an item of another bag', ['bag-3', '--by', 'Maren', '--missing', 'mast/tube'], /bag-3 holds no “mast\/tube”/],
    ['more than the bag holds', ['bag-3', '--by', 'Maren', '--missing', 'tail-case/post=5'], /more are missing or damaged than the 4/],
    ['a number that is none', ['bag-3', '--by', 'Maren', '--missing', 'tail-case/post=0'], /whole number from 1; given: 0/],
    ['a count by nobody', ['bag-3', '--missing', 'tail-case/post'], /Say who counts/],
    ['a list that is not there', ['--list', 'nowhere.csv'], /There is no file nowhere\.csv/],
  ])('refuses %s: status 2, nothing on standard output', async (_, args, words) => {
    const { status, out, err } = await shell(['count', whimbrel, ...args]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(words);
  });

  it('answers with the file that has the list in it', async () => {
    const folder = temporaryFolder();
    writeFileSync(path.join(folder, 'm.yaml'), 'machine: {name: Plover}\nmodules:\n  head:\n    parts: {post: {copies: 4}}\n');
    writeFileSync(path.join(folder, 'list.csv'), 'part,count,bag\nhead/post,4,Posts\n');
    const { status, out } = await shell(['count', 'm.yaml', '--list', 'list.csv'], { folder });
    expect(status).toBe(0);
    expect(out).toContain('bags:\n  posts:\n    title: "Posts"\n    holds:\n      head/post: 4\n');
  });
});
