import { describe, expect, it } from 'vitest';
import { shell, widest } from './shell.ts';

const whimbrel = 'examples/whimbrel/machine.yaml';

describe('which way round a part goes', () => {
  it('is told with its reason, asked for by the part', async () => {
    const { status, out } = await shell(['plan', whimbrel, '--step', 'main-grip.A/thrust']);
    const text = out.replaceAll(/\s+/g, ' ');
    expect(status).toBe(0);
    expect(widest(out)).toBeLessThanOrEqual(80);
    expect(text).toContain('Which way round, main-grip.A/thrust: loose-bore washer inboard, tight-bore washer outboard. The pull of the blade grip outboard goes through it.');
    expect(text).toContain('A matter of taste');
    expect(text).toContain('Bearing, main-grip.A/thrust: Carries the pull of the blade grip outboard.');
    expect(text).toContain('Bearing, main-grip.A/bearing-out: Guides only: no load along the axis.');
  });

  it('of a one-way clutch comes from the drive, with a test for the hand', async () => {
    const { out } = await shell(['plan', whimbrel, '--step', 'mast/one-way']);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/Which way round, mast\/one-way: so that it locks when the .* To prove it: Hold the /);
  });
});

describe('shims from the bag', () => {
  it('are chosen by the play that was measured', async () => {
    const { status, out } = await shell(['shims', whimbrel, 'main-grip.A/play', '--measured', '0.17 mm']);
    expect(status).toBe(0);
    expect(out).toMatch(/^1 × 0\.1 mm and 1 × 0\.05 mm +0\.15 mm +0\.02 mm$/m);
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('count what was in place, and may be asked for by the shim', async () => {
    const { out } = await shell(['shims', whimbrel, 'main-grip.A/shim', '--measured', '0.07 mm', '--fitted', '0.1 mm']);
    expect(out).toContain('1 × 0.1 mm and 1 × 0.05 mm');
  });

  it('that do not suffice answer with status 1 and the nearest miss', async () => {
    const { status, out } = await shell(['shims', whimbrel, 'main-grip.A/play', '--measured', '0.6 mm']);
    expect(status).toBe(1);
    expect(out).toContain('too loose by 0.21 mm');
  });

  it('may be had ready before anything is measured: what the sizes of the file let expect, and what the bag cannot do', async () => {
    const { status, out } = await shell(['shims', whimbrel, 'main-grip.A/play']);
    expect(status).toBe(1);
    expect(widest(out)).toBeLessThanOrEqual(80);
    // By hand: 23.56 − 6 − 5 − 5.5 − 5 − 2 = 0.06 mm; at the most 23.6 − 5.97 − 4.96 − 5.46 − 4.96 − 1.97 = 0.28 mm.
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/0\.06 mm to 0\.28 mm at the worst\. 0 mm to 0\.04 mm is wanted/);
    expect(out).toMatch(/^1 × 0\.1 mm and 1 × 0\.05 mm +0\.15 mm +0\.15 mm to 0\.19 mm$/m);
    expect(out).toContain('Nothing in the bag does for 0.14 mm to 0.15 mm.');
    const { expected, gaps } = JSON.parse((await shell(['shims', whimbrel, 'main-grip.A/play', '--json'])).out);
    expect(expected).toMatchObject({ least: expect.closeTo(0.00006, 9), most: expect.closeTo(0.00028, 9) });
    expect(gaps).not.toEqual([]);
  });

  it.each([
    [['tail-case/play', '--measured', '0.1 mm'], 'no shim is chosen by tail-case/play'],
    [['main-grip.A/ply', '--measured', '0.1 mm'], 'main-grip.A/play'],
    [['main-grip.A/play', '--measured', '5 N'], 'unit of a force'],
    [['main-grip.A/play', '--measured', '50 mm'], 'from 0 to 20 mm'],
  ])('%j is refused with words', async (args, words) => {
    const { status, out, err } = await shell(['shims', whimbrel, ...args]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(words);
  });
});
