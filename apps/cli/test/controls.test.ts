import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { shell, temporaryFolder, widest } from './shell.ts';

const whimbrel = 'examples/whimbrel/machine.yaml';
const plainly = (text: string): string => text.replaceAll(/\s+/gu, ' ');

describe('controls', () => {
  it('tell every link with its length, its turns and its thread', async () => {
    const { status, out } = await shell(['controls', whimbrel]);
    expect(status).toBe(0);
    expect(widest(out)).toBeLessThanOrEqual(80);
    // By hand: the arm tips stand 72 mm under the plate; (50 + 36 − 72)/2 of thread.
    expect(plainly(out)).toMatch(/servo-link\.front 72 mm 72 mm, leave it 7 mm, least 6 mm; 36 mm of rod/u);
    expect(plainly(out)).toMatch(/pitch-link 69\.06 mm 69 mm, leave it/u);
  });

  it('tell what to enter, and what to measure', async () => {
    const text = plainly((await shell(['controls', whimbrel])).out);
    expect(text).toMatch(/Phase of cyclic 12\.\d+° the plate leans ahead against the sense of the rotor/u);
    expect(text).toMatch(/Pitch, collective up 13° from mid travel: front 2\d\d µs/u);
    expect(text).toMatch(/Sub-trim of rudder, for its link 2 µs/u);
    expect(text).toMatch(/most torque at a cyclic servo 0\.\d+ N·m/u);
  });

  it('show what was measured at the bench beside what is wanted', async () => {
    const home = temporaryFolder();
    await shell(['sign', whimbrel, 'electronics/pitch-high', '--by', 'Maren', '--measured', '12.8 °'], { home });
    const { out } = await shell(['controls', whimbrel], { home });
    expect(plainly(out)).toMatch(/Pitch, collective up 13° measured 12\.8° by Maren; from mid travel/u);
    expect(widest(out)).toBeLessThanOrEqual(80);
    const json = JSON.parse((await shell(['controls', whimbrel, '--json'], { home })).out) as { measured: object };
    expect(json.measured).toEqual({ 'pitch-high main': expect.objectContaining({ value: expect.closeTo((12.8 * Math.PI) / 180, 12), unit: 'rad', by: 'Maren', stands: true }) });
    await shell(['sign', whimbrel, 'electronics/pitch-high', '--by', 'Oda', '--measured', '11 °'], { home });
    expect(plainly((await shell(['controls', whimbrel], { home })).out)).toMatch(/measured 11° by Oda, which no longer stands/u);
  });

  it('answer in JSON', async () => {
    const { out } = await shell(['controls', whimbrel, '--json']);
    const answer = JSON.parse(out) as { id: string; links: readonly unknown[]; setUp: readonly unknown[]; troubles: readonly string[]; swashplate: { play: { sum: number } } };
    expect(answer).toMatchObject({ id: 'whimbrel', troubles: [], missing: [] });
    expect(answer.links).toHaveLength(6);
    expect(answer.swashplate.play.sum).toBeGreaterThan(0);
  });

  it('say after a change which link to set anew, and what moved it', async () => {
    const { out } = await shell(['change', whimbrel, '--set', 'controls.servos.rudder.pivot.0=136 mm']);
    // By hand: the servo goes 2 mm forward, along the rod.
    expect(plainly(out)).toMatch(/Length of rudder rod, ball to ball: 1,046 mm → 1,048 mm; because of controls\.servos\.rudder\.pivot/u);
    const whole = await shell(['change', whimbrel, '--set', 'controls.servos.rudder.pivot=[136 mm, 20 mm, -30 mm]']);
    expect(whole.out).toBe(out);
  });

  it('say of a list that the shell took apart how to give it whole', async () => {
    const cut = await shell(['change', whimbrel, '--set', 'controls.servos.rudder.pivot=[136', 'mm]']);
    expect(cut).toMatchObject({ status: 2, err: expect.stringMatching(/controls\.servos\.rudder\.pivot: the list has no end; given: \[136\. .*quotation marks.*--set "controls\.servos\.rudder\.pivot=\[136 mm, 20 mm, -30 mm\]"/u) });
    const more = await shell(['change', whimbrel, '--set', 'controls.servos.rudder.pivot=[136', 'mm,', '20', 'mm,', '-30', 'mm]']);
    expect(more).toMatchObject({ status: 2, err: expect.stringMatching(/too many arguments|unknown option '-30'/u) });
    expect((await shell(['change', whimbrel, '--set', 'a=[1', 'mm,', '2', 'mm]'])).err).toMatch(/too many arguments.*in quotation marks/su);
  });

  it('say of a point that is none what is wrong, where, and what would be right', async () => {
    const short = await shell(['change', whimbrel, '--set', 'controls.servos.rudder.pivot=[136 mm, 20 mm]']);
    expect(short).toMatchObject({ status: 2, err: expect.stringMatching(/machine\.yaml:\d+:\d+ .*“\[136 mm, 20 mm\]” is not a list of 3: it has 2\. Write it like this: \[44 mm/u) });
    const letters = await shell(['change', whimbrel, '--set', 'controls.servos.rudder.pivot=[136,x]']);
    expect(letters).toMatchObject({ status: 2, err: expect.stringMatching(/“\[136,x\]” is not a list of 3: it has 2\..*“136” has no unit\..*“x” is (?:not|no) /su) });
    const section = await shell(['change', whimbrel, '--set', 'controls.servos.rudder=[136,x]']);
    expect(section).toMatchObject({ status: 2, err: expect.stringMatching(/controls\.servos\.rudder cannot be written: it is a section with entries of its own, and “\[136,x\]” is none\. Write one of its entries: .*controls\.servos\.rudder\.pivot/u) });
    const bare = await shell(['change', whimbrel, '--set', 'controls.servos.rudder.pivot=[136 mm, 20, -30 mm]']);
    expect(bare).toMatchObject({ status: 2, err: expect.stringMatching(/“20” has no unit\./u) });
    const single = await shell(['change', whimbrel, '--set', 'controls.servos.rudder.pivot=136 mm']);
    expect(single).toMatchObject({ status: 2, err: expect.stringMatching(/it is a list, and “136 mm” is none\. .*a list with its brackets: \[136 mm, 20 mm, -30 mm\]/u) });
  });

  it('say what is missing, with status 1', async () => {
    const { status, out } = await shell(['controls', 'examples/turnstone/machine.yaml']);
    expect(status).toBe(1);
    expect(out).toMatch(/Not known without controls\.swashplate\./u);
  });

  it('say which rod is too short and which hole does not reach, with status 1', async () => {
    const folder = temporaryFolder();
    const file = path.join(folder, 'machine.yaml');
    writeFileSync(file, readFileSync(whimbrel, 'utf8').replace('arm: 17 mm', 'arm: 13 mm').replace('rod: 46 mm', 'rod: 40 mm'));
    const { status, out } = await shell(['controls', file]);
    expect(status).toBe(1);
    // By hand: (40 + 36 − 69)/2.
    expect(plainly(out)).toMatch(/pitch-link has 3\.5 mm of thread in each end; 6 mm is the least: take a longer rod\./u);
    expect(plainly(out)).toMatch(/The hole fitted at controls\.servos\.cyclic\.arm does not reach all that is wanted; 15 mm does\./u);
  });
});
