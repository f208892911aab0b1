import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { machineSound } from '@rotorwright/figures';
import { readMachine } from '@rotorwright/machine';
import { makeRecording } from '../../../tests/recordings/make-recording.ts';
import { wavOf } from '../../../tests/recordings/wav.ts';
import { shell, temporaryFolder } from './shell.ts';

/** What a builder asks of his machine, each answered by one command, with the reason beside it. */

const whimbrel = 'examples/whimbrel/machine.yaml';
const plainly = (text: string): string => text.replaceAll(/\s+/gu, ' ');
async function ask(...args: readonly string[]): Promise<{ readonly status: number; readonly out: string }> {
  const { status, out, err } = await shell([...args, '--home', temporaryFolder()]);
  expect(err).toBe('');
  return { status, out: plainly(out) };
}

describe('Whimbrel answers', () => {
  it('which pinion gives 1,750 rpm, what else can be bought, and what moves', async () => {
    const { out } = await ask('options', whimbrel, '--speed', '1750 rpm');
    expect(out).toMatch(/WH-2215.*WH-2211.*WH-2113.*2 of 12 combinations hold/u);
    expect(out).toMatch(/apart by|together by/u);
  });

  it('which way something turns, and whether that tightens its thread', async () => {
    const { out } = await ask('figures', whimbrel);
    expect(out).toMatch(/clockwise/u);
    expect(out).toMatch(/tightens|loosens/u);
  });

  it('what the governor asks for', async () => {
    // By hand: 113/14 turns of the bell for one of the rotor, two magnets.
    const { out } = await ask('figures', whimbrel, '--open', 'governor-ratio governor');
    expect(out).toMatch(/8\.071 \(113\/14\)/u);
  });

  it('what becomes of the tail when shorter blades turn faster', async () => {
    const { out } = await ask('rotor', whimbrel, '--variant', 'short', '--speed', '1900 rpm');
    expect(out).toMatch(/Whimbrel, 1,900 rpm/u);
    expect(out).toMatch(/against full power/u);
    expect(out).toMatch(/The tail holds hover from [\d,]+ rpm of the main rotor on, full power from [\d,]+ rpm on\./u);
    expect(out).toMatch(/Its tips are too fast from [\d,]+ rpm on/u);
    const { out: gears } = await ask('options', whimbrel, '--speed', '1900 rpm');
    expect(gears).toMatch(/tail/iu);
  });

  it('why the tail is weak when the rotor is slow, and from which speed on it is enough', async () => {
    const { out, status } = await ask('rotor', whimbrel, '--speed', '1200 rpm');
    expect(status).toBe(1);
    expect(out).toMatch(/exceeded/u);
    expect(out).toMatch(/at this speed it is too slow for full power\. Its thrust goes with the square of the speed, the torque of full power does not/u);
  });

  it('what would make a tight margin hold', async () => {
    // By hand: 1,980 rpm over 1.25 are 1,584 rpm of the mast: 12,785 rpm of the engine, or 126 teeth on the main gear.
    const { out } = await ask('margins', whimbrel, 'margin limit main-speed');
    expect(out).toMatch(/Would hold with one of these, the rest as it is: drive\.main-mesh\.driven\.teeth 126 or more, now 113; power\.engine\.speed 12,700 rpm or less, now 14,250 rpm/u);
    const { out: json } = await ask('margins', whimbrel, 'margin limit main-speed', '--json');
    expect(JSON.parse(json)).toMatchObject({ margins: [{ wouldHold: [{ entry: 'drive.main-mesh.driven.teeth', wanted: 126, now: 113, written: '126' }, {}, {}] }] });
  });

  it('how much power is left on a hot day up high, and how long the tank or the pack lasts', async () => {
    const { out } = await ask('rotor', whimbrel, '--altitude', '1500 m', '--warmer', '20 K');
    expect(out).toMatch(/Power available over power needed .*?1\.\d\d/u);
    expect(out).toMatch(/Time that a full tank lasts,? [\d.]+ min [\d.]+ min to [\d.]+ min/u);
    expect(out).toMatch(/The most thrust is set by: power\./u);
    const { out: pack } = await ask('rotor', 'examples/sanderling/machine.yaml', '--altitude', '1500 m', '--warmer', '20 K');
    expect(pack).toMatch(/Time that a full pack lasts,? [\d.]+ min [\d.]+ min to [\d.]+ min/u);
    expect(pack).toMatch(/Duty left to the governor/u);
  });

  it('what the next step is, and what it needs on the bench', async () => {
    const { out } = await ask('plan', whimbrel, '--next');
    expect(out).toMatch(/steps can be done now/u);
    expect(out).toMatch(/Tools: /u);
    expect(out).toMatch(/Consumables: .*threadlocker/u);
  });

  it('which way round a washer goes, and why', async () => {
    const { out } = await ask('plan', whimbrel, '--step', 'tail-grip.A/thrust');
    // Common practice agrees: the tight bore against what is fixed to the spindle, outboard in a blade grip.
    expect(out).toMatch(/loose-bore washer inboard, tight-bore washer outboard/u);
    expect(out).toMatch(/fixed to the spindle: there belongs the tight bore/u);
    expect(out).toMatch(/matter of taste/u);
  });

  it('what holds a pin in, and what happens if it is missed', async () => {
    const { out } = await ask('holds', whimbrel, 'tail-case/cross-pin');
    expect(out).toMatch(/2 mm pin .{0,80}> M4 set screw .{0,80}> lock/u);
    expect(out).toMatch(/tail-case\/pin-screw tail-case\/spur tail-drive-lost/u);
  });

  it('what comes apart for a pinion, in which order, and what must be locked again', async () => {
    const { out } = await ask('reach', whimbrel, 'clutch/pinion');
    expect(out).toMatch(/The way in to clutch\/pinion: \d+ to undo/u);
    expect(out).toMatch(/Locks broken: .*clutch\/preload-nut/u);
    expect(out).toMatch(/The way back .*clutch\/pinion-thread/u);
    // Another pinion leads to the same way in.
    expect((await ask('change', whimbrel, '--set', 'drive.main-mesh.driver.teeth=15')).out).toMatch(/rotorwright reach MACHINE PART --open .*PART is clutch\/pinion\./u);
  });

  it('what is open, and that it may not fly', async () => {
    const { out } = await ask('log', whimbrel);
    expect(out).toMatch(/237 open, of 237 steps/u);
    expect(out).toMatch(/Not to be flown: of what a crash or an injury hangs on, \d+ open/u);
  });

  it('what can be done in forty minutes without a heat gun', async () => {
    const { out } = await ask('plan', whimbrel, '--tonight', '40 min', '--without', 'heat gun');
    expect(out).toMatch(/cures until/u);
    expect(out).toMatch(/Waits for a tool: /u);
  });

  it('which shim from the bag gives the right end play', async () => {
    const { out } = await ask('shims', whimbrel, 'main-grip.A/play', '--measured', '0.17 mm');
    // By hand: 0.17 mm less 0.15 mm leaves 0.02 mm, the middle of the wanted 0 to 0.04 mm.
    expect(out).toMatch(/Fit 1 × 0\.1 mm and 1 × 0\.05 mm: that leaves 0\.02 mm/u);
  });

  it('where the centre of mass is, and what to move', async () => {
    const { status, out } = await ask('balance', whimbrel, '--wanted', '0 mm');
    expect(status).toBe(0);
    expect(out).toMatch(/centre of mass 1\.7 mm behind the mast axis/u);
    // By hand: 6300 g · 1.682 mm over 196 g is 54.1 mm, from 252 mm; over 270 mm it is 39.25 g.
    expect(out).toMatch(/move electronics\/battery 54\.1 mm forward, to 306\.1 mm: it stops at 270\.0 mm/u);
    expect(out).toMatch(/weight at nose 39\.25 g/u);
    expect(out).toMatch(/Tank empty 4\.5 mm behind the mast axis holds/u);
  });

  it('how long each link must be, and which arm hole', async () => {
    const { out } = await ask('controls', whimbrel);
    // By hand: the arm tips stand 72 mm under the balls of the plate.
    expect(out).toMatch(/servo-link\.left 72 mm/u);
    expect(out).toMatch(/cyclic 15 mm .{0,40} the shortest that reaches/u);
  });

  it('how long a bearing lasts as it is flown', async () => {
    const { out } = await ask('margins', whimbrel, 'clutch/bearing-low');
    expect(out).toMatch(/Lower pinion bearing, life [\d,.]+ h of 100 h, hover/u);
    const { out: opened } = await ask('margins', whimbrel, 'margin bearing-life clutch/bearing-low');
    expect(opened).toMatch(/Governs: hover\..*Left out: Preload by the nut.*by bearing-life: ISO 281/u);
  });

  it('how warm a housing must be for a bearing to drop in, and what must not get that hot', async () => {
    const { out } = await ask('care', whimbrel, 'clutch/bearing-low');
    // By hand: K7 at 19 mm is −15 µm at the tightest: 20 µm over 23.4·10⁻⁶/K · 19 mm = 44.98 K over 20 °C; seal and grease stand 80 °C.
    expect(out).toMatch(/clutch\/bearing-low 65 °C .{0,40}15 K below the lowest limit/u);
    expect(out).toMatch(/Largest interference of lower pinion bearing in its housing = 15 µm/u);
    const { out: clutch } = await ask('care', whimbrel, 'mast/one-way');
    expect(clutch).toMatch(/Too hot, by [\d.]+ K, for seal and grease/u);
  });

  it('how to set a mesh so that it neither binds on a hot day nor rattles in the cold', async () => {
    const { out } = await ask('care', whimbrel, 'main-mesh');
    expect(out).toMatch(/65\.\d+ mm 0\.\d+ mm 0\.\d+ mm 0 mm The file sets .{0,20}0\.3 mm to 0\.36/u);
    expect(out).toMatch(/frameMaterial: name carbon plate/u);
    expect(out).toMatch(/by mesh-window: Geometry ISO 21771/u);
  });

  it('when a bearing wants grease, and how much', async () => {
    const { out } = await ask('care', whimbrel, 'mast');
    // By hand: D 21 mm, B 5 mm: 0.005 · 21 · 5 = 0.525 g.
    expect(out).toMatch(/mast\/bearing-low [\d.]+ °C [\d,]+ h 0\.53 g/u);
    expect(out).toMatch(/the trade does it far more often/u);
    const { out: json } = await ask('care', whimbrel, 'mast/bearing-low', '--json');
    expect(JSON.parse(json)).toMatchObject({ id: 'Whimbrel'.toLowerCase(), meshes: [], bearings: [{ of: 'mast/bearing-low', figures: { grease: { unit: 'kg' } } }] });
  });

  it('how hard a blade pulls, and how much is left in bolt, grip and thrust bearing', async () => {
    const { status, out } = await ask('margins', whimbrel, 'main-grip');
    expect(status).toBe(0);
    // By hand: (14,250 rpm · 14/113 · 1.1)² · 224 g · 399 mm = 3,697 N.
    expect(out).toMatch(/Blade bolt, shear [\d,]+ N of 3,697 N, overspeed/u);
    expect(out).toMatch(/Blade grip, hole of the bolt \S+ N of 3,697 N/u);
    expect(out).toMatch(/Thrust bearing, static .{0,20}8,700 N of 3,970 N/u);
    // By hand: 5.5 N·m over half of 5 mm, 6 mm, 5.5 mm and half of 5 mm.
    expect(out).toMatch(/Inner radial bearing, static .{0,20}830 N of 333 N/u);
  });

  it('which margins a change takes over one', async () => {
    const { status, out } = await ask('change', whimbrel, '--set', 'drive.main-mesh.width=9 mm');
    expect(status).toBe(1);
    expect(out).toMatch(/Margins that cross one .*Main gear, flank 1\.0\d\d, hover 0\.\d+, hover newly exceeded/u);
  });

  it('whether something shakes in its own frequency at the speed that is flown', async () => {
    const { out: boom } = await ask('margins', whimbrel, 'margin shaking boom/tube first');
    expect(boom).toMatch(/Boom tube, first bending, away from what shakes: [\d.]+, holds.*natural frequency = [\d.]+ Hz/u);
    // What it answers to stands with the speed at which it does: the distance of the margin is that of the nearest one.
    expect(boom).toMatch(/It answers, main rotor at \(flown: 1,765 rpm\): [\d,]+ rpm, [\d.]+ % of that: \w+/u);
    // By hand: a tenth over 14,250 rpm · 14/113 · 47/10 · 19/18 = 8,758.9 rpm.
    const { out: tube } = await ask('margins', whimbrel, 'boom/drive-tube', '--json');
    expect(tube).toMatch(/"title":"Tail drive tube, first whirl".{0,400}"demand":"9,635 rpm"/u);
  });

  it('who locked something, when, with what, and who looked again', async () => {
    const home = temporaryFolder();
    const sign = (...more: readonly string[]) => shell(['sign', whimbrel, 'frame/post-left', '--home', home, ...more]);
    expect(await sign('--by', 'M. Ode')).toMatchObject({ status: 0 });
    expect(await sign('--by', 'A. Rill', '--second-look', 'good')).toMatchObject({ status: 0 });
    const { out } = await shell(['log', whimbrel, '--step', 'frame/post-left', '--home', home]);
    expect(plainly(out)).toMatch(/M\. Ode.*medium.*A\. Rill/u);
  });

  it('how fast the rotor turned in a recording', async () => {
    // The recording is made up: a steady Whimbrel at 1,752 rpm, as loud as the wind around it.
    const { machine } = readMachine(readFileSync(path.resolve(import.meta.dirname, '../../..', whimbrel), 'utf8'));
    const { recording } = makeRecording({ seed: 23, seconds: 6, rate: 16_000, comb: machineSound(machine!)!, speed: 29.2, loudness: 0, wind: 0.5, jitter: 0.0003 });
    const file = path.join(temporaryFolder(), 'hover.wav');
    writeFileSync(file, wavOf(recording.channels[0]!, 16_000));
    const { status, out } = await ask('listen', whimbrel, file);
    expect(status).toBe(0);
    const [, speed] = /Main rotor at ([\d,.]+) rpm ± /u.exec(out)!;
    expect(Number(speed!.replace(',', ''))).toBeCloseTo(1752, 0);
    expect(out).toMatch(/main rotor, tail rotor, engine and gears fit each other by the ratios of the file/u);
  });
});
