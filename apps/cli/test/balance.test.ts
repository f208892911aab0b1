import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { shell, temporaryFolder, widest } from './shell.ts';

const whimbrel = 'examples/whimbrel/machine.yaml';
const plainly = (text: string): string => text.replaceAll(/\s+/gu, ' ');
const inputs = { initialAmplitude: 2, initialPhase: '0°', trialMass: '1 g', trialAngle: '0°', withTrialAmplitude: 3, withTrialPhase: '0°' };
const readings = JSON.stringify({ calculation: 'balance-single-plane', inputs });

describe('readings', () => {
  it('go on record, and come back with what follows from them, in the log too', async () => {
    const home = temporaryFolder();
    const kept = await shell(['balance', whimbrel, '--record', '-', '--of', 'fan', '--by', 'Maren', '--note', 'as bought'], { home, input: readings });
    // By hand: one gram at 0° adds 1 to the 2 that are there; two grams opposite take them away.
    expect(kept).toMatchObject({ status: 0, err: expect.stringMatching(/Entry 1 by Maren: 2 g at 180°\./u) });
    expect(plainly(kept.out)).toMatch(/Readings in the book, the latest first: .* 1 2026-03-01 Maren fan balance-single-plane 2 g at 180°; as bought/u);
    expect(widest(kept.out)).toBeLessThanOrEqual(80);
    expect(plainly((await shell(['log', whimbrel], { home })).out)).toMatch(/Maren balanced fan by balance-single-plane: 2 g at 180°; “as bought”/u);
    const json = JSON.parse((await shell(['balance', whimbrel, '--json'], { home })).out) as { trials: readonly object[] };
    expect(json.trials).toEqual([{ entry: 1, at: '2026-03-01T18:30:00.000Z', by: 'Maren', calculation: 'balance-single-plane', readings: inputs, of: 'fan', note: 'as bought', found: '2 g at 180°' }]);
  });

  it('of two blades say the order of corrections', async () => {
    const input = JSON.stringify({ calculation: 'blade-match', inputs: { mass1: '200 g', centre1: '400 mm', mass2: '198 g', centre2: '400 mm', tapeRadius: '700 mm', speed: 180, tipLead: '2 mm', boltRadius: '80 mm', tipRadius: '780 mm' } });
    const { err } = await shell(['balance', whimbrel, '--record', '-', '--by', 'Maren'], { input });
    expect(plainly(err)).toMatch(/1\. Set the edges in line: the tip of blade 1 stands 2 mm ahead\. 2\. Tape 2 g on blade 2, 400 mm from the rotor axis/u);
  });

  it('may come from a file, and are taken back like any entry', async () => {
    const [home, folder] = [temporaryFolder(), temporaryFolder()];
    writeFileSync(path.join(folder, 'readings.json'), readings);
    const { status, out } = await shell(['balance', path.resolve(import.meta.dirname, '../../..', whimbrel), '--record', 'readings.json', '--by', 'Oda'], { home, folder });
    expect(status).toBe(0);
    expect(plainly(out)).toMatch(/1 2026-03-01 Oda blades balance-single-plane/u);
  });

  it.each([
    ['nobody took', ['--record', '-'], readings, /Say who took the readings: --by NAME\./u],
    ['there are none of', ['--by', 'Maren'], '', /--by, --of and --note go with --record FILE\./u],
    ['are no JSON', ['--record', '-', '--by', 'Maren'], '{', /standard input holds no JSON/u],
    ['are a list', ['--record', '-', '--by', 'Maren'], '[]', /must be a JSON object \{"calculation", "inputs"\}/u],
    ['are of nothing', ['--record', '-', '--by', 'Maren'], '{"inputs": {}}', /must name a calculation and its inputs/u],
    ['hold something else', ['--record', '-', '--by', 'Maren'], '{"calculation": "a", "inputs": {}, "colour": 1}', /The readings hold colour/u],
    ['lack one', ['--record', '-', '--by', 'Maren'], '{"calculation": "balance-single-plane", "inputs": {"initialAmplitude": 2}}', /Nothing was recorded\. .*trialMass: given/u],
    ['are of what the file does not balance', ['--record', '-', '--by', 'Maren', '--of', 'propeller'], readings, /The file has no “propeller” under balance\.spun/u],
  ])('that %s are refused in words, with nothing recorded', async (_, more, input, words) => {
    const home = temporaryFolder();
    const { status, err } = await shell(['balance', whimbrel, ...more], { home, input });
    expect(status).toBe(2);
    expect(plainly(err)).toMatch(words);
    expect((await shell(['log', whimbrel], { home })).out).toMatch(/has no entry of this yet/u);
  });
});

describe('track', () => {
  it('is told in turns of the link, as the controls make it', async () => {
    const { out } = await shell(['balance', whimbrel, '--track', '4 mm']);
    // By hand: a blade of 224 g that is even enough from 83 to 773 mm, with its centre 29 mm inside of the middle, has I = 0.0444 kg·m²;
    // Lock number 1.225·5.73·0.059·0.773⁴/0.0444 = 3.33; dampers of 62 N·m/rad at 184.9 rad/s make ν² = 1.036;
    // so a tip rises by 0.773·3.33/(8·1.036) = 0.311 m/rad: 4 mm are 12.9 mrad, on an arm of 30.2 mm 0.389 mm of link, 0.86 turns of M2.5.
    expect(plainly(out)).toMatch(/^Track: turn the pitch link of the blade that flies 4\.0 mm higher by 0\.86 turns towards less pitch/u);
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('says what it wants where the controls are not in the file', async () => {
    const folder = temporaryFolder();
    const file = path.join(folder, 'machine.yaml');
    writeFileSync(file, 'rotorwright: 1\nmachine: {name: Bare}\npower: {motor: {on: mast, speed: 1700 rpm}}\nshafts: {mast: {axis: up}}\nrotors: {main: {on: mast, blades: 2, diameter: 1500 mm, chord: 60 mm, blade-mass: 200 g, bolt-radius: 80 mm, blade-centre: 340 mm}}\n');
    expect(plainly((await shell(['balance', file, '--track', '4 mm'])).out)).toMatch(/^Turns of the link are not known; it wants controls\.swashplate, controls\.links\./u);
  });
});
