import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { bench } from './plover.ts';
import { shell } from './shell.ts';

const whimbrel = fileURLToPath(new URL('../../../examples/whimbrel/machine.yaml', import.meta.url));

describe('reach', () => {
  it('lists what comes apart to have the pinion out, why, and every step of the way back, in 80 columns', async () => {
    const { status, out } = await shell(['reach', whimbrel, 'pinion'], bench());
    expect(status).toBe(0);
    expect(out).toMatch(/^The way in to clutch\/pinion: 8 to undo/);
    expect(out.indexOf('clutch/preload-nut')).toBeLessThan(out.indexOf('clutch/pinion-thread'));
    expect(out).toMatch(/Heat: clutch\/pinion-thread/);
    expect(out).toMatch(/No cheaper way exists/);
    expect(out).not.toMatch(/Not every other way/);
    const back = out.slice(out.indexOf('The way back'));
    for (const id of ['clutch/pinion-thread', 'clutch/main', 'clutch/preload-nut', 'clutch/backlash', 'clutch/coast', 'clutch/gap']) expect(back).toMatch(new RegExp(`^${id}\\b`, 'm'));
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('says when it did not look at every other way', async () => {
    const { status, out } = await shell(['reach', whimbrel, 'head/spindle'], bench());
    expect({ status, out }).toMatchObject({ status: 0, out: expect.stringMatching(/No cheaper way exists: .*\nNot every other way was looked at: there may be more of them\./u) });
    const asJson = await shell(['reach', whimbrel, 'head/spindle', '--json'], bench());
    expect(JSON.parse(asJson.out)).toMatchObject({ proven: true, cut: true });
  });

  it('enters the opening into the book, and what rests on it is undone', async () => {
    const world = bench();
    await shell(['sign', 'plover.yaml', 'head/post-screw', '--by', 'Maren'], world);
    const { status, err } = await shell(['reach', 'plover.yaml', 'head/post', '--open', '--by', 'Oda', '--reason', 'new post'], world);
    expect({ status, err }).toMatchObject({ status: 0, err: expect.stringMatching(/Opened as entry 2 of plover, by Oda/) as string });
    expect(await shell(['log', 'plover.yaml'], world)).toMatchObject({ status: 1, out: expect.stringMatching(/undone head\/post-screw: opened by Oda on 2026-03-01 \(entry 2\): new post/) as string });
  });

  it('answers in JSON, with the bound', async () => {
    const { out } = await shell(['reach', 'plover.yaml', 'post', '--json'], bench());
    expect(JSON.parse(out)).toMatchObject({ id: 'plover', proven: true, ways: [{ undo: [{ id: 'head/post-screw', reason: { why: 'goal' } }], out: ['head/post'] }], back: [{ step: 'head/post-screw', fall: { why: 'opened' } }] });
  });

  it.each([
    ['a part that is not there', ['poste'], /no part, joint, stack or module “poste”.*post/],
    ['an opening by nobody', ['post', '--open', '--reason', 'x'], /--open: say who/],
  ])('%s is refused in words', async (_, more, words) => {
    const { status, out, err } = await shell(['reach', 'plover.yaml', ...more], bench());
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(words);
  });
});
