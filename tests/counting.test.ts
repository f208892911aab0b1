import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bagsFromList, bagsOf } from '@rotorwright/build';
import { countBags, wantedOf, type CountedLine, type Entry, type EntryBody } from '@rotorwright/logbook';
import { readMachine, type Machine } from '@rotorwright/machine';
import { allThere, keepTallies, lineOf, pressed, readTallies, talliesOf, type Tally } from '../apps/web/src/pages/build/counting/tally.ts';

const machineOf = (text: string): Machine => {
  const { machine, findings } = readMachine(text);
  if (!machine || findings.some(({ severity }) => severity === 'error')) throw new Error(`fixture: ${JSON.stringify(findings)}`);
  return machine;
};

/** Invented for this test. */
const plover = `machine: {name: Plover}
modules:
  head:
    parts:
      plate: {ground: true}
      post: {copies: 4, code: PL-7, price: 3.20 EUR, spares: 1}
    joints:
      post-screw: {kind: screw, copies: 4, thread: M3, length: 8 mm, head: socket, class: "12.9", in: post, holds: plate, lock: medium}
`;
const bagged = `${plover}bags:
  bag-1: {title: Posts, holds: {head/post: 4}}
`;

const entry = (number: number, body: EntryBody): Entry => ({ id: `entry-${number}`, machine: 'plover', at: `2026-03-01T18:${String(number).padStart(2, '0')}:00Z`, by: 'Maren', body, number, received: '2026-03-01T20:00:00Z', previous: '', hash: '' });
const counted = (number: number, ...lines: readonly CountedLine[]): Entry => entry(number, { kind: 'counted', bag: 'bag-1', lines });

describe('the bags of a kit', () => {
  it('are those of the file; what stands in none is counted by its module', () => {
    expect(bagsOf(machineOf(bagged))).toEqual([
      { id: 'bag-1', title: 'Posts', lines: [{ item: 'head/post', title: 'Post', count: 4, spares: 1, code: 'PL-7', price: '3.20 EUR' }] },
      { id: 'rest/head', title: 'Head, in no bag', lines: [{ item: 'head/plate', title: 'Plate', count: 1, spares: 0 }, { item: 'head/post-screw', title: 'Post screw', size: 'M3 × 8, socket, 12.9', count: 4, spares: 0 }] },
    ]);
  });

  it('law: every part and every screw of Whimbrel stands in a bag, in the file’s or in a module’s', () => {
    const machine = machineOf(readFileSync(path.resolve(import.meta.dirname, '../examples/whimbrel/machine.yaml'), 'utf8'));
    const items = new Set(bagsOf(machine).flatMap(({ lines }) => lines.map(({ item }) => machine.thingOf.get(item) ?? item)));
    const screws = [...machine.joints.values()].filter(({ kind }) => !['press', 'bond', 'threaded-end', 'clamp'].includes(kind));
    expect([...machine.parts.values(), ...screws].filter(({ id }) => !items.has(id)).map(({ id }) => id)).toEqual([]);
  });
});

describe('what was counted', () => {
  const bags = bagsOf(machineOf(bagged));
  const posts = (...entries: readonly Entry[]) => countBags(bags, entries)[0]!;

  it('is open until each kind was looked at, then complete or short', () => {
    expect(posts().state).toBe('uncounted');
    expect(posts(counted(1, { item: 'head/post', wanted: 4, sound: 4 }))).toMatchObject({ state: 'complete', by: 'Maren' });
    // by hand: 4 wanted, 2 sound, 1 damaged: 1 missing; 1 replaced leaves 1 short, and 1 lies in the drawer
    const short = posts(counted(1, { item: 'head/post', wanted: 4, sound: 2, damaged: 1, replaced: 1 }));
    expect([short.state, short.lines[0]?.missing, short.lines[0]?.short]).toEqual(['short', 1, 1]);
    expect(wantedOf([short])).toMatchObject([{ item: 'head/post', short: 1, fromDrawer: 1, buy: 0, bag: 'Posts', code: 'PL-7' }]);
  });

  it('later takes the place of earlier; what is taken back counts no more', () => {
    const first = counted(1, { item: 'head/post', wanted: 4, sound: 3 });
    const second = counted(2, { item: 'head/post', wanted: 4, sound: 4 });
    expect(posts(second, first).state).toBe('complete');
    expect(posts(first, second, entry(3, { kind: 'corrected', entry: 2, reason: 'counted the wrong bag' })).state).toBe('short');
  });

  it('is to be counted anew when the file asks for another number', () => {
    expect(posts(counted(1, { item: 'head/post', wanted: 3, sound: 3 })).state).toBe('uncounted');
  });
});

describe('presses while counting', () => {
  it('go round: one more with each press, none again after all', () => {
    const presses = (count: number) => Array.from({ length: count }).reduce<Tally>((tally) => pressed(tally, 'missing', 2), allThere).missing;
    expect([1, 2, 3].map(presses)).toEqual([1, 2, 0]);
  });

  it('law: whatever is pressed, sound, missing and damaged make the number wanted, and no more is replaced than is gone', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 6 }), fc.array(fc.constantFrom('missing', 'damaged', 'replaced'), { maxLength: 30 }), (count, presses) => {
      const tally = presses.reduce<Tally>((before, what) => pressed(before, what, count), allThere);
      const line = lineOf({ item: 'x', title: 'x', count, spares: 0 }, tally);
      expect(line.sound + tally.missing + tally.damaged).toBe(count);
      expect(line.sound).toBeGreaterThanOrEqual(0);
      expect(tally.replaced).toBeLessThanOrEqual(tally.missing + tally.damaged);
    }));
  });

  it('outlast a reload; what is damaged in the storage is counted again', () => {
    const map = new Map<string, string>();
    const storage = { getItem: (key: string) => map.get(key) ?? null, setItem: (key: string, value: string) => map.set(key, value), removeItem: (key: string) => map.delete(key) } as unknown as Storage;
    const tallies = { 'head/post': { missing: 1, damaged: 0, replaced: 0 } };
    keepTallies(storage, 'plover', 'bag-1', tallies);
    expect(readTallies(storage, 'plover', 'bag-1')).toEqual(tallies);
    map.set('rotorwright.count.plover.bag-1', '{"head/post": 3, "half":');
    expect(readTallies(storage, 'plover', 'bag-1')).toBeUndefined();
  });

  it('begin with what the book has', () => {
    const [bag] = countBags(bagsOf(machineOf(bagged)), [counted(1, { item: 'head/post', wanted: 4, sound: 2, damaged: 1, replaced: 1 })]);
    expect(talliesOf(bag!.lines)).toEqual({ 'head/post': { missing: 1, damaged: 1, replaced: 1 } });
  });
});

describe('a list of parts', () => {
  it('becomes the bags of the file, and leaves the rest of it as it is', () => {
    const read = bagsFromList(plover, 'bag,part,count\r\n"Bag 1: posts, all",head/post,4\r\nScrews,head/post-screw,4\r\n');
    if (!read.ok) throw new Error(read.problems.join('\n'));
    expect([read.bags, read.lines, read.text.startsWith(plover)]).toEqual([2, 2, true]);
    expect(bagsOf(machineOf(read.text)).slice(0, 2).map(({ id, title, lines }) => [id, title, lines[0]?.item, lines[0]?.count])).toEqual([
      ['bag-1-posts-all', 'Bag 1: posts, all', 'head/post', 4], ['screws', 'Screws', 'head/post-screw', 4],
    ]);
  });

  it.each([
    ['that names no such part', 'part,count,bag\nhead/pots,4,1', /Line 2: the file has no part or joint “head\/pots”/],
    ['with a count that is none', 'part,count,bag\nhead/post,four,1', /Line 2: the count must be a whole number.*“four”/],
    ['with a part twice in a bag', 'part,count,bag\nhead/post,2,1\nhead/post,2,1', /Line 3: head\/post stands in bag 1 twice/],
    ['without a bag', 'part,count,bag\nhead/post,2,', /Line 2: the bag has no name/],
    ['without its columns', 'post;4;1', /Line 1 must name the columns part, count, bag/],
    ['that is empty', '', /Line 1 must name/],
    ['with nothing in it', 'part,count,bag\n', /no line after its first/],
  ])('%s is refused with its line, and changes nothing', (_, list, words) => {
    const read = bagsFromList(plover, list);
    expect(read.ok ? [] : read.problems.join('\n')).toMatch(words);
  });

  it('is refused where the file has bags already, or takes no section at its end', () => {
    expect(bagsFromList(bagged, 'part,count,bag\nhead/post,4,1')).toMatchObject({ ok: false });
    expect(bagsFromList('{machine: {name: Plover}, modules: {head: {parts: {post: {}}}}}', 'part,count,bag\nhead/post,4,1')).toMatchObject({ ok: false });
  });
});
