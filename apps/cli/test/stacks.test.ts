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
  });

  it('of a one-way clutch comes from the drive, with a test for the hand', async () => {
    const { out } = await shell(['plan', whimbrel, '--step', 'mast/one-way']);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/Which way round, mast\/one-way: so that it locks when the .* To prove it: Hold the /);
  });
});
