import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { bench } from './plover.ts';
import { shell, temporaryFolder, widest } from './shell.ts';

const whimbrel = path.resolve(import.meta.dirname, '../../../examples/whimbrel/machine.yaml');

describe('holds', () => {
  it('names each hazard with its single points, and fits 80 columns', async () => {
    const { status, out, err } = await shell(['holds', whimbrel]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^tail-drive-lost +crash +\d+ +0 +0 +\S/mu);
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('shows of a hazard what one slip does, chain by chain, and the chance in four ways of working', async () => {
    const { status, out } = await shell(['holds', whimbrel, 'tail-drive-lost']);
    expect(status).toBe(0);
    expect(out).toMatch(/^tail-case\/pin-screw +left undone;/mu);
    for (const way of ['no list', 'list', 'ticked list', 'second look']) expect(out).toMatch(new RegExp(`^${way} +\\S.* to \\S+`, 'mu'));
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('says which omission weighs most, how sure it is alone, and which step guards it', async () => {
    const { out } = await shell(['holds', whimbrel, 'free-wheel-jams']);
    // By hand: two ways, alike, each enough by itself: half of the chance each.
    expect(out.replaceAll(/\s+/gu, ' ')).toMatch(/What weighs most, with a ticked list: .* 50 % mast\/free-wheel open is put together wrong: is enough by itself/u);
    const { importance } = JSON.parse((await shell(['holds', whimbrel, 'free-wheel-jams', '--json'])).out);
    expect(importance).toHaveLength(2);
  });

  it('answers what keeps a part, and what happens when that is missed', async () => {
    const { status, out } = await shell(['holds', whimbrel, 'tail-case/spur']);
    expect(status).toBe(0);
    expect(out.replaceAll(/\s+/gu, ' ')).toContain('2 mm pin > M4 set screw >');
    expect(out).toMatch(/^tail-case\/pin-screw +tail-case\/spur +tail-drive-lost$/mu);
  });

  it('answers it of a pin too, of a stack, and of the ground', async () => {
    expect((await shell(['holds', whimbrel, 'tail-case/cross-pin'])).out.replaceAll(/\s+/gu, ' ')).toContain('2 mm pin > M4 set screw >');
    expect((await shell(['holds', whimbrel, 'main-grip.A/feathering'])).out).toContain('M6 screw');
    expect((await shell(['holds', whimbrel, 'frame/side-left'])).out).toContain('everything else is mounted on it');
  });

  it('gives cut sets of one and two events in JSON', async () => {
    const { out } = await shell(['holds', whimbrel, 'tail-blade-lost', '--json']);
    const answer = JSON.parse(out) as { readonly singlePoints: readonly { readonly step: string }[]; readonly pairs: readonly (readonly string[])[]; readonly chance: Record<string, { readonly low: number }> };
    expect(answer.singlePoints.map(({ step }) => step)).toContain('tail-grip.A/retaining-screw');
    expect(answer.pairs).toContainEqual(['undone:tail-hub/hub-pin', 'undone:tail-hub/hub-screw']);
    expect(answer.chance['second look']!.low).toBeGreaterThan(0);
  });

  it('ends with 1 once the book is begun and a single point is not signed for', async () => {
    const home = temporaryFolder();
    expect((await shell(['sign', whimbrel, 'head/hub-bolt', '--by', 'M. Ode', '--home', home])).err).toBe('');
    expect((await shell(['holds', whimbrel, 'main-blade-lost', '--home', home])).status).toBe(1);
    expect((await shell(['holds', whimbrel, 'head/hub-bolt', '--home', home])).out).toMatch(/signed/u);
  });

  it('refuses what the machine does not have, and names the nearest', async () => {
    const { status, out, err } = await shell(['holds', whimbrel, 'tail-case/spurr']);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('tail-case/spur');
  });

  it('says of a machine without hazards what to write', async () => {
    const { folder, home } = bench();
    const { status, out } = await shell(['holds', 'plover.yaml'], { folder, home });
    expect({ status, hazards: out.includes('hazards:') }).toEqual({ status: 0, hazards: true });
  });
});
