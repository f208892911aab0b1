import { endPlays, figures, working } from '@rotorwright/figures';
import { describe, expect, test } from 'vitest';
import { read } from '../read.ts';

/** A washer between a shoulder and a ring, on either side of a web with a bearing. Every number is invented. */
const grip = (more: { readonly room?: string; readonly stack?: string; readonly width?: string; readonly measurement?: string } = {}): string => `
rotorwright: 1
machine: {name: Grip, invented: true}
modules:
  grip:
    parts:
      spindle: {kind: shaft}
      body: {kind: grip}
      low: {kind: deep-groove, width: ${more.width ?? '5 to 4.9 mm'}}
      high: {kind: deep-groove, width: 5 to 4.9 mm}
    stacks:
      feathering: {title: Bearings of the grip, spindle: spindle, housing: body, ends: [inboard, outboard], order: [{shoulder: spindle}, low, {shoulder: body}, high, ring], ${more.room ?? 'room: {spindle: 16.1 mm, housing: 6 mm}'}${more.stack ?? ''}}
    joints:
      ring: {kind: circlip, on: spindle, holds: high, lock: press}
    measurements:
      play: {of: end-play feathering, window: ${more.measurement ?? '0.1 to 0.2 mm'}}
`;
const of = (text: string) => figures(read(text));
const one = (text: string) => endPlays(read(text))[0]!;
const mm = (figure: { readonly value?: number } | undefined): number => figure!.value! * 1000;

describe('end play from the sizes of the file', () => {
  test('lies between room less the widest and room less the narrowest, and its draws within that', () => {
    const play = one(grip());
    // By hand: 16.1 − 6 − 5 − 5 = 0.1; with both at 4.9 mm 0.3.
    expect(mm(play.nominal)).toBeCloseTo(0.1, 9);
    expect(mm(play.least)).toBeCloseTo(0.1, 9);
    expect(mm(play.most)).toBeCloseTo(0.3, 9);
    // Triangle of two even lengths, 0.2 mm wide: below x lies x²/2 of it, so 2.5 in 100 lie below 0.1·√0.05; 40,000 draws miss by 5 standard errors at most.
    expect(mm(play.low95)).toBeCloseTo(0.1 + 0.1 * Math.sqrt(0.05), 2.3);
    expect(mm(play.high95)).toBeCloseTo(0.3 - 0.1 * Math.sqrt(0.05), 2.3);
    expect(mm(play.low)).toBeCloseTo(0.1 + 0.1 * Math.sqrt(0.0027), 2.3);
    expect(mm(play.high)).toBeCloseTo(0.3 - 0.1 * Math.sqrt(0.0027), 2.3);
  });

  test('the share that comes out as wanted is that of the measurement’s window', () => {
    // Half of the triangle lies below its middle, 0.2 mm.
    expect(one(grip()).share!.value).toBeCloseTo(0.5, 1.7);
    expect(one(grip({ measurement: '0.1 to 0.3 mm' })).share!.value).toBe(1);
  });

  test('preload that is asked for is play below 0', () => {
    const play = one(grip({ room: 'room: {spindle: 15.9 mm, housing: 6 mm}', stack: ', preload: 0 to 0.1 mm' }));
    expect(mm(play.nominal)).toBeCloseTo(-0.1, 9);
    expect(play.wanted).toEqual({ min: -0.0001, max: -0 });
    expect(play.share!.value).toBeCloseTo(0.5, 1.7);
  });

  test('is the same in the whole set of figures', () => {
    const play = one(grip());
    for (const figure of [play.nominal, play.low!, play.most!, play.share!]) expect(of(grip()).get(figure.name)).toEqual(figure);
  });

  test('opens down to the entries of the file', () => {
    const leaves = JSON.stringify(working(of(grip()), 'end-play-most grip/feathering'));
    for (const path of ['modules.grip.stacks.feathering.room.spindle', 'modules.grip.parts.low.width', 'lower deviation of']) expect(leaves).toContain(path);
  });

  test('says which lengths it takes for exact, and what it leaves out', () => {
    expect(one(grip()).nominal.warnings.join(' ')).toContain('room of the spindle, room of the housing');
    expect(one(grip()).nominal.warnings.join(' ')).toContain('within the bearings');
  });

  test('what is missing is named; without it there is no value', () => {
    const play = one(grip({ room: 'why: none' }));
    expect(play.nominal).toMatchObject({ missing: ['modules.grip.stacks.feathering.room.spindle', 'modules.grip.stacks.feathering.room.housing'] });
    expect(play.nominal.value).toBeUndefined();
    expect(play.most).toBeUndefined();
  });

  test('before shims that a measurement decides, nothing is said to come out as wanted', () => {
    const text = grip().replace('order: [{shoulder: spindle}, low,', 'order: [{shoulder: spindle}, shim, low,').replace('      body:', '      shim: {kind: shim, sizes: [0.05 mm], until: play, turns-with: spindle}\n      body:');
    const play = one(text);
    expect(play).toMatchObject({ shims: ['grip/shim'] });
    expect(play.share).toBeUndefined();
    expect(play.nominal.title).toBe('End play of bearings of the grip before shims, by nominal sizes');
  });

  test('there is none for a stack of which the file says neither room nor play', () => {
    expect(endPlays(read(grip({ room: 'why: none' }).replace(/ {4}measurements:[^]*$/, '')))).toEqual([]);
  });
});
