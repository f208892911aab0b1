import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { differences, type Machine } from '@rotorwright/machine';
import type { PlayShare } from '../../src/controls/play.ts';
import { controlsReport } from '../../src/controls/report.ts';
import { pulseAt, subTrim, linkTable } from '../../src/controls/link-table.ts';
import { compareFigures, isSetting } from '../../src/compare/index.ts';
import { figures } from '../../src/set/figures.ts';
import { margins } from '../../src/margins/index.ts';
import { working } from '../../src/working/working.ts';
import { tailAt } from '../../src/controls/tail.ts';
import { read } from '../read.ts';
import { around, bench, example, levered } from './benches.ts';

const degree = Math.PI / 180;
const report = (machine: Machine) => controlsReport(figures(machine));
const whimbrel = report(example('whimbrel'));
const sanderling = report(example('sanderling'));

describe('links', () => {
  const servo = example('whimbrel').controls.servos.get('rudder')!;

  it('are as long as their balls stand apart, with servos at mid travel and blades in the middle', () => {
    // By hand: the arm tips stand 72 mm under the balls of the plate.
    expect(whimbrel.links.filter(({ link }) => link.id.startsWith('servo-link')).map(({ wanted }) => wanted)).toEqual([0.072, 0.072, 0.072].map((each) => expect.closeTo(each, 7)));
    // By hand: at 2° the ball of the grip stands at 30 cos 2° + 6 sin 2°, 30 sin 2° − 6 cos 2°; 82 − 8 mm up; 1 mm out.
    const [t, z] = [30 * Math.cos(2 * degree) + 6 * Math.sin(2 * degree), 30 * Math.sin(2 * degree) - 6 * Math.cos(2 * degree)];
    expect(whimbrel.links.find(({ link }) => link.id === 'pitch-link')!.wanted).toBeCloseTo(Math.hypot(1, t - 30, z + 74) / 1000, 12);
  });

  it('are turned in halves, and say how much thread is left', () => {
    const link = { ...example('whimbrel').controls.links.get('pitch-link')!, length: 0.067, rod: 0.046, end: 0.018 };
    const [set] = linkTable([{ link, balls: [[0, 0, 0], [0, 0, 0.0685]], wanted: 0.0685, length: 0.067 }]);
    // By hand: 1.5 mm at 0.45 mm a turn are 3.33 turns, so 3½: 68.575 mm; (46 + 36 − 68.575)/2 of thread.
    expect(set).toMatchObject({ turns: 3.5, set: expect.closeTo(0.068575, 12), engaged: expect.closeTo(0.0067125, 12), seen: expect.closeTo(0.032575, 12) });
  });

  it('say nothing of turns where the file has no thread of the standard', () => {
    const link = { ...example('whimbrel').controls.links.get('pitch-link')!, thread: 'M2.6' };
    const [set] = linkTable([{ link, balls: [[0, 0, 0], [0, 0, 1]], wanted: 1, length: 1 }]);
    expect(set).not.toHaveProperty('turns');
    expect(set).not.toHaveProperty('pitch');
  });

  it('leave to the servo what half turns cannot give', () => {
    // By hand: asin(0.1/13) of 90° that 1,000 µs are; half a tooth of 25 is 7.2°.
    const trim = subTrim(servo, -1e-4)!;
    expect(trim.pulse).toBeCloseTo((Math.asin(0.1 / 13) / (Math.PI / 2)) * 1e-3, 12);
    expect(trim).toMatchObject({ steps: 1000, lost: 5, spline: expect.closeTo(80e-6, 12) });
    expect(trim.share).toBeCloseTo(Math.asin(0.1 / 13) / (Math.PI / 4), 12);
  });

  it('have a figure each, that opens down to the file', () => {
    const set = figures(example('whimbrel'));
    expect(set.get('link-length pitch-link')!.value).toBeCloseTo(0.0690568, 5);
    const tree = working(set, 'link-length servo-link.left')!;
    expect(tree.children.map(({ path, text }) => [path, text])).toEqual([['controls.servos.cyclic.arm', '−21; 36.4; −72 mm'], ['controls.swashplate.radius', expect.stringMatching(/^−21; 36\.37\d*; 0 mm$/u)]]);
  });
});

describe('a change', () => {
  it('of an arm tells which links to set anew, and because of what', () => {
    const machine = example('whimbrel');
    const servos = new Map([...machine.controls.servos].map(([id, servo]) => [id, id.startsWith('cyclic') ? { ...servo, arm: 0.015 } : servo]));
    const changes = compareFigures(figures(machine), figures({ ...machine, controls: { ...machine.controls, servos } }), ['controls.servos.cyclic.arm']);
    const links = changes.filter(({ name }) => name.startsWith('link-length'));
    expect(links.map(({ name }) => name)).toEqual(['link-length servo-link.front', 'link-length servo-link.left', 'link-length servo-link.right']);
    for (const change of links) {
      // By hand: 2 mm aside and 72 mm up.
      expect(change.after).toBeCloseTo(Math.hypot(72, 2) / 1000, 6);
      expect(change.because).toEqual(['controls.servos.cyclic.arm']);
      expect(isSetting(change)).toBe(true);
    }
  });
});

describe('a change of where something stands', () => {
  const text = readFileSync(path.resolve(import.meta.dirname, '../../../../examples/whimbrel/machine.yaml'), 'utf8');
  const before = figures(read(text));
  const moved = (was: string, is: string): Readonly<Record<string, readonly string[]>> => {
    const edited = { text: text.replace(was, is) };
    expect(edited.text).not.toBe(text);
    const changes = compareFigures(before, figures(read(edited.text)), differences({ text }, edited).map((each) => each.path));
    return Object.fromEntries(changes.filter(({ name }) => name.startsWith('link-length')).map(({ name, because }) => [name.slice('link-length '.length), [...new Set(because.map((entry) => entry.replace(/\.\d$/u, '')))]]));
  };

  it('is the cause of every link that it moves', () => {
    // By hand: only what hangs on the entry moves.
    const plateLinks = ['servo-link.front', 'servo-link.left', 'servo-link.right', 'pitch-link'];
    expect(moved('pivot: [134 mm, 20 mm, -30 mm]', 'pivot: [135 mm, 20 mm, -30 mm]')).toEqual({ 'rudder-rod': ['controls.servos.rudder.pivot'] });
    expect(moved('axis: up,\n      points: left', 'axis: up,\n      points: [-0.1, 1, 0]')).toEqual({ 'rudder-rod': ['controls.servos.rudder.points'] });
    expect(moved('radius: 42 mm, at: [0 mm, 0 mm, 118 mm]', 'radius: 42 mm, at: [0 mm, 0 mm, 117 mm]')).toEqual(Object.fromEntries(plateLinks.map((id) => [id, ['controls.swashplate.at']])));
    expect(moved('stops: -9 to 13 °', 'stops: -9 to 14 °')).toEqual({ 'pitch-link': ['rotors.main.stops'] });
    expect(moved('at: [0 mm, 0 mm, 200 mm]\n    cyclic', 'at: [0 mm, 0 mm, 201 mm]\n    cyclic')).toEqual({ 'pitch-link': ['rotors.main.at'] });
  });
});

describe('arms', () => {
  it('are best in the shortest hole that reaches everything', () => {
    const [cyclic] = whimbrel.arms;
    expect(cyclic!.holes.map(({ hole, reaches }) => [Math.round(hole * 1e3), reaches])).toEqual([[13, false], [15, true], [17, true], [19, true]]);
    expect(cyclic!.take).toBeCloseTo(0.015, 12);
  });

  it('turn the less and step the coarser the longer they are', () => {
    // Law.
    for (const { holes } of [...whimbrel.arms, ...sanderling.arms]) {
      const known = holes.filter(({ turn }) => turn !== undefined);
      expect(known.length).toBeGreaterThan(1);
      expect(known.map(({ turn }) => turn)).toEqual(known.map(({ turn }) => turn!).toSorted((a, b) => b - a));
      expect(known.map(({ pitchPerStep }) => pitchPerStep)).toEqual(known.map(({ pitchPerStep }) => pitchPerStep!).toSorted((a, b) => a - b));
    }
  });
});

describe('quality', () => {
  it('is even left and right on a machine whose every rod has its mirror image', () => {
    // Law: symmetry.
    expect(sanderling.plate!.quality!.leftRight).toBe(0);
    expect(Math.abs(sanderling.plate!.quality!.phase)).toBeLessThan(1e-9);
  });

  it('has the phase of the ball that stands ahead of its blade, nearly', () => {
    // By hand: atan(7/30) = 13.1° for small pitch; the plate leans against the rotor, which turns clockwise.
    expect(whimbrel.plate!.quality!.phase).toBeGreaterThan(12 * degree);
    expect(whimbrel.plate!.quality!.phase).toBeLessThan(14 * degree);
  });

  it('answers to a servo as arm over pitch arm: a third of the whole for each of three', () => {
    // By hand: three arms of 17 mm lift the plate by 17 mm a radian together, a pitch arm of 30 mm turns by 17/30; a third of it for one.
    for (const each of whimbrel.plate!.quality!.collectivePerServo) expect(Math.abs(each)).toBeCloseTo(17 / 30 / 3, 2);
  });

  it('knows when a tip meets the boom', () => {
    // By hand: asin(216/773).
    expect(whimbrel.plate!.leanToBoom).toBeCloseTo(Math.asin(216 / 773), 12);
  });

  it('leans no ball beyond its limit on either machine of the demo', () => {
    for (const { plate, tail } of [whimbrel, sanderling]) {
      const leans = [...plate!.envelope.leans, ...tail!.leans];
      expect(leans.length).toBeGreaterThan(8);
      expect(leans.filter(({ lean, limit }) => limit === undefined || lean > limit)).toEqual([]);
    }
  });

  it('leans a level rod on studs that lie along it by a right angle, and square ones by nothing', () => {
    // By hand: the rods of a plate stand square to the studs of the arms at rest.
    const { leans } = report(around([0, 120, 240])).plate!.envelope;
    expect(Math.min(...leans.map(({ lean }) => lean))).toBeLessThan(20 * degree);
    expect(Math.max(...leans.map(({ lean }) => lean))).toBeLessThan(Math.PI / 2);
  });
});

describe('play', () => {
  it('of the pitch link is that of two balls over the pitch arm', () => {
    // By hand: 2 · 0.01 mm over 30 mm.
    expect(whimbrel.plate!.play.shares.find(({ of }) => of === 'pitch-link')!.atBlade).toBeCloseTo(0.02 / 30, 5);
  });

  it('of the feathering bearings is what the grip goes up and down by over the pitch arm', () => {
    // By hand: 0.02 mm over 30 mm for the blades of the mast.
    expect(whimbrel.plate!.play.shares.find(({ of, what }) => of === 'main' && what === 'bearing')!.atBlade).toBeCloseTo(0.02 / 30, 5);
    // The rod keeps its length: along it, what the axis goes up and what the blade turns back are one.
    const { tail } = whimbrel.tail!;
    const { slide, pitch } = tailAt(tail, 0)!;
    const { link: { upperBall }, grip: { ball: [, t, z], height } } = tail.hub;
    const [across, high] = [t * Math.cos(pitch) - z * Math.sin(pitch), t * Math.sin(pitch) + z * Math.cos(pitch)];
    const rod = [across - upperBall[1], high + height - upperBall[2] - slide] as const;
    const expected = (0.015e-3 * rod[1]) / (across * rod[1] - high * rod[0]);
    expect(whimbrel.tail!.play.shares.find(({ of, what }) => of === 'tail' && what === 'bearing')!.atBlade).toBeCloseTo(expected, 7);
  });

  it('is told with the largest first, and adds up', () => {
    const { shares, sum } = whimbrel.plate!.play;
    expect(shares.map(({ atBlade }) => atBlade)).toEqual(shares.map(({ atBlade }) => atBlade).toSorted((a, b) => b - a));
    expect(sum).toBeCloseTo(shares.reduce((total, { atBlade }) => total + atBlade, 0), 12);
  });

  it('of a blade in its grip is the turn that the file gives it', () => {
    const of = ({ shares }: { readonly shares: readonly PlayShare[] }) => shares.find(({ what }) => what === 'blades')!.atBlade;
    expect(of(whimbrel.plate!.play)).toBeCloseTo(0.05 * degree, 12);
    expect(of(whimbrel.tail!.play)).toBeCloseTo(0.1 * degree, 12);
  });

  it('names what the file gives no play of, and does not count it', () => {
    const { play } = report(levered()).plate!;
    expect(play.shares.map(({ of }) => of).toSorted()).toEqual(['crank', 'push']);
    expect(play.unknown).toEqual(expect.arrayContaining(['controls.links.pitch.play', 'controls.swashplate.play', 'controls.servos.left.play', 'rotors.main.bearing-play', 'rotors.main.blade-play']));
  });
});

describe('servos', () => {
  it('feel the moment of the blades through arm and pitch arm', () => {
    // By hand: with collective alone two blades at 13° ask for 2 · M · a third of 17/30; cyclic comes on top.
    const moment = Math.abs(figures(example('whimbrel')).get('feathering-moment main')!.value!);
    for (const { torque, margin } of whimbrel.plate!.loads!) {
      expect(torque).toBeGreaterThan(2 * moment * (17 / 90) * 0.95);
      expect(torque).toBeLessThan(6 * moment * (17 / 90));
      expect(margin).toBeCloseTo(2.1 / torque, 12);
    }
  });

  it.each([['Whimbrel', 'whimbrel', 1.1], ['Sanderling', 'sanderling', 0.9]] as const)('of the tail of %s feels the moment of its blades through slider and links', (_, name, stall) => {
    // Independent route: the work that the blades take up over a small turn of the servo, Σ K/2·(sin² θ) over both blades, along the way.
    const { tail, load, quality } = report(example(name)).tail!;
    const stiffness = Math.abs(figures(example(name)).get('feathering-moment tail')!.value!) / (Math.sin(24 * degree) * Math.cos(24 * degree));
    const work = (angle: number): number => 2 * (stiffness / 2) * Math.sin(tailAt(tail, angle)!.pitch) ** 2;
    const [low, high] = [quality!.low!.angle, quality!.high!.angle];
    const pushes = Array.from({ length: 400 }, (__, index) => low + ((high - low) * index) / 399).map((angle) => Math.abs(work(angle + 1e-5) - work(angle - 1e-5)) / 2e-5);
    expect(load!.torque / Math.max(...pushes)).toBeCloseTo(1, 3);
    expect(load!.margin).toBeCloseTo(stall / load!.torque, 12);
    // By hand: from end to end without load, and slower by the share of the stall torque.
    expect(load!.time).toBeCloseTo((high - low) / load!.servo.speed!, 12);
    expect(load!.timeLoaded).toBeCloseTo(load!.time! / (1 - load!.torque / stall), 12);
  });

  it('of the tail has the same torque among the margins, but for the speed of the load case', () => {
    const { set } = margins(figures(example('whimbrel')));
    const faster = set.get('feathering-moment tail overspeed')!.value! / set.get('feathering-moment tail')!.value!;
    // By hand: a tenth faster asks for 1.1² of the moment.
    expect(faster).toBeCloseTo(1.21, 12);
    expect(set.get('demand servo rudder')!.value! / faster).toBeCloseTo(whimbrel.tail!.load!.torque, 12);
  });

  it('has no load at the tail where the moment of its blades is not known, or the pitch out of reach', () => {
    const { chord: _, ...bare } = example('whimbrel').rotors.get('tail')!;
    const machine = example('whimbrel');
    expect(report({ ...machine, rotors: new Map([...machine.rotors, ['tail', bare]]) }).tail).not.toHaveProperty('load');
    const far = { ...machine.rotors.get('tail')!, stops: { min: -80 * degree, max: 80 * degree } };
    expect(report({ ...machine, rotors: new Map([...machine.rotors, ['tail', far]]) }).tail).not.toHaveProperty('load');
  });

  it('feel a moment that is that of an even blade', () => {
    // By hand: Ω²·m·c²·(0.235² − 0.0288²)·sin 13°·cos 13° with Ω = 14250·14/113 rpm, m = 224 g, c = 59 mm; it turns the blade flat.
    const omega = (14250 * 14 * Math.PI) / (113 * 30);
    const expected = omega ** 2 * 0.224 * 0.059 ** 2 * (0.235 ** 2 - 0.0288 ** 2) * Math.sin(13 * degree) * Math.cos(13 * degree);
    expect(figures(example('whimbrel')).get('feathering-moment main')!.value).toBeCloseTo(-expected, 6);
  });

  it('stand at a pulse between the ends', () => {
    const servo = example('whimbrel').controls.servos.get('rudder')!;
    expect(pulseAt(servo, 0)).toBeCloseTo(1520e-6, 12);
    expect(pulseAt(servo, Math.PI / 4)).toBeCloseTo(2020e-6, 12);
  });
});

describe('the set-up sheet', () => {
  const row = (key: string) => whimbrel.setUp.find((each) => each.key === key)!;

  it('tells in one row what is the same of several servos, and apart what is not', () => {
    const rows = (machine: Machine, word: string) => report(machine).setUp.filter(({ key }) => key.startsWith(word)).map(({ key, title }) => [key, title]);
    expect(rows(example('whimbrel'), 'direction')).toEqual([['direction cyclic.front cyclic.left cyclic.right', 'Direction of the servos front, left and right']]);
    // The left link is 0.1 mm longer, less than half of half a turn: that is left to its servo alone.
    const machine = example('whimbrel');
    const longer = { ...machine.controls.links.get('servo-link.left')!, length: 0.0721 };
    const uneven = { ...machine, controls: { ...machine.controls, links: new Map([...machine.controls.links, ['servo-link.left', longer]]) } };
    expect(rows(uneven, 'trim cyclic')).toEqual([['trim cyclic.front cyclic.right', 'Sub-trim of the servos front and right, for their links'], ['trim cyclic.left', 'Sub-trim of cyclic, left, for its link']]);
  });

  it('says what to enter and what to measure, in plain terms', () => {
    expect(row('servos').words).toMatch(/3; .* 0°, 120°, 240°/u);
    expect(row('pitch-high main')).toMatchObject({ value: expect.closeTo(13 * degree, 12), measured: true, words: expect.stringMatching(/front 2\d\d µs up/u) });
    expect(row('phase').words).toMatch(/against the sense of the rotor/u);
    expect(row('ratio governor')).toMatchObject({ value: expect.closeTo(113 / 14, 12) });
    expect(row('magnets governor')).toMatchObject({ value: 2 });
  });

  it('has a figure behind each row that a gauge measures, with the value that the row wants', () => {
    for (const [name, { setUp }] of [['whimbrel', whimbrel], ['sanderling', sanderling]] as const) {
      const set = figures(example(name));
      const measured = setUp.filter((each) => each.measured);
      expect(measured).toHaveLength(8);
      for (const { key, value } of measured) expect(set.get(key)!.value).toBeCloseTo(value!, 12);
    }
  });

  it('has every such row measured at the bench, within a window that the wanted value lies in', () => {
    for (const [name, { setUp }] of [['whimbrel', whimbrel], ['sanderling', sanderling]] as const) {
      const measurements = [...example(name).measurements.values()];
      for (const { key, value } of setUp.filter((each) => each.measured)) {
        const { window } = measurements.find(({ quantity }) => quantity === key)!;
        expect(window!.min).toBeLessThan(value!);
        expect(window!.max).toBeGreaterThan(value!);
      }
    }
  });

  it('turns the nose right with more thrust to the left, where the tail lies aft and its hub on the left', () => {
    expect(row('yaw-direction').words).toMatch(/away from the boom/u);
    // By hand: a rotor that turns clockwise pushes the nose to the left; the tail must push it right.
    expect(row('tail-hover').value).toBeGreaterThan(0);
  });
});

describe('a machine that says little of its controls', () => {
  it('is told what would make them known, and nothing is made up', () => {
    const found = report(bench('  servos: {rudder: {arm: 12 mm}}'));
    expect(found).toMatchObject({ missing: ['controls.swashplate'], links: [], arms: [] });
    expect(found).not.toHaveProperty('plate');
  });
});
