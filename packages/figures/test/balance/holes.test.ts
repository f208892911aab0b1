import { splitMass } from '@rotorwright/mechanics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { holesWords } from '../../src/balance/holes.ts';

const degree = Math.PI / 180;
const words = (...places: readonly number[]): string => holesWords(places.map((each) => each * degree)).join(' ');

describe('what holes can do', () => {
  it('is anything with three at 120°, at most twice as heavy', () => {
    // By hand: in the middle between two, each mass counts with cos 60°.
    expect(words(0, 120, 240)).toMatch(/^These holes can take any correction\. .* at most 2 times as much, in the middle between 0° and 120°\.$/u);
  });

  it('is what points at them with two opposite ones, and nothing across', () => {
    expect(words(180, 0)).toMatch(/point at 0° or 180°, and nothing across/u);
  });

  it('is the arcs between those that stand near enough', () => {
    // By hand: from 270° on to 30° are 120°; the other way round they are 240°.
    expect(words(270, 30)).toMatch(/^These holes take corrections from 270° to 30°; elsewhere none/u);
    expect(words(0, 90, 180)).toMatch(/from 0° to 90°, and from 90° to 180°; elsewhere none/u);
    expect(words(45)).toMatch(/^One hole takes a correction that points at it/u);
    expect(words(45, 405)).toMatch(/^One hole/u);
  });

  it('is what sharing a mass between them finds, at any angle', () => {
    // Independent route: the mass of 1 shared at that angle.
    const angle = numberIn(0, 360);
    fc.assert(fc.property(fc.array(angle, { minLength: 2, maxLength: 5 }), angle, (places, at) => {
      const said = words(...places);
      const shared = splitMass({ size: 1, angle: at * degree }, places.map((each) => each * degree));
      if (said.startsWith('These holes can take any')) expect(shared).toBeDefined();
      const most = /at most ([\d.,]+) times/u.exec(said)?.[1];
      if (shared && most !== undefined && Number.isFinite(Number(most))) expect(shared.reduce((sum, mass) => sum + mass, 0)).toBeLessThanOrEqual(Number(most) * 1.006);
    }));
  });
});
