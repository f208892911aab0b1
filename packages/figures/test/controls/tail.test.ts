import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { servoForPitch, tailAt, tailOf, type Tail } from '../../src/controls/tail.ts';
import { bench, example, tailIn } from './benches.ts';
import { spun } from './independent.ts';

/** A servo whose rod pulls the slider straight along the shaft. */
const straight = (): Tail => tailIn(bench(`
  servos: {rudder: {arm: 12 mm, points: fore, axis: up, pivot: [-912 mm, -60 mm, 0 mm], travel: 90 °}}
  slider: {on: tail, at: [-900 mm, 40 mm, 0 mm], travel: -7 to 7 mm}
  links:
    rod: {from: rudder, to: slider, to-ball: [-898 mm, 40 mm, 0 mm]}
    tail-link: {from: slider, to: tail, from-ball: [14 mm, 12 mm, 2 mm], to-ball: [14 mm, 12 mm, -8 mm]}`));

const tails: readonly (readonly [string, Tail, number])[] = [['Whimbrel', tailIn(example('whimbrel')), 0.6], ['Sanderling', tailIn(example('sanderling')), 0.6], ['a rod straight to the slider', straight(), 0.3]];
// The short arm of the bell-crank takes more of the servo; straight, the same slide comes from half the turn.
const within = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
const angle = within(0.6);

describe.each(tails)('the tail of %s', (_, tail, most) => {
  it('gives the servo angle back from the pitch that it gives', () => {
    // Law: the inverse of the forward is the identity.
    fc.assert(fc.property(within(most), (servo) => {
      const back = servoForPitch(tail, tailAt(tail, servo)!.pitch)!;
      expect(back.angle).toBeCloseTo(servo, 9);
      expect(back.slide).toBeCloseTo(tailAt(tail, servo)!.slide, 11);
    }));
  });

  it('keeps the tail link at its length, with slider and blade where it says', () => {
    fc.assert(fc.property(within(most), (servo) => {
      const { slide, pitch } = tailAt(tail, servo)!;
      const { link: { upperBall }, grip: { ball: [r, t, z], height } } = tail.hub;
      const grip = [r, t * Math.cos(pitch) - z * Math.sin(pitch), height + t * Math.sin(pitch) + z * Math.cos(pitch)];
      expect(Math.hypot(grip[0]! - upperBall[0], grip[1]! - upperBall[1], grip[2]! - upperBall[2] - slide)).toBeCloseTo(tail.bladeRod.length, 12);
    }));
  });
});

describe('bell-crank and slider', () => {
  it('slide as a pin on a circle goes, with the crank turned until its rod has its length', () => {
    // Independent route: quaternions and halving.
    const tail = tailIn(example('whimbrel'));
    const [lever] = tail.train.levers;
    const [servo] = tail.train.servos;
    const about = (point: readonly number[], pivot: readonly number[], axis: readonly number[], by: number): readonly number[] => spun(point.map((each, index) => each - pivot[index]!), axis, by).map((each, index) => each + pivot[index]!);
    fc.assert(fc.property(angle, (by) => {
      const ball = about(lever!.rod.ball, servo!.pivot, servo!.axis, by);
      const miss = (turn: number): number => Math.hypot(...about(lever!.ball, lever!.pivot, lever!.axis, turn).map((each, index) => each - ball[index]!)) - lever!.rod.length;
      let [low, high] = [-0.9, 0.9];
      const rising = miss(high) > miss(low);
      for (let round = 0; round < 100; round += 1) {
        const middle = (low + high) / 2;
        if (miss(middle) < 0 === rising) low = middle;
        else high = middle;
      }
      const pin = 'pin' in tail.push ? tail.push.pin : [];
      const moved = about(pin, lever!.pivot, lever!.axis, low);
      expect(tailAt(tail, by)!.slide).toBeCloseTo(moved[1]! - pin[1]!, 11);
    }));
  });

  it('slides as far as the arm of the servo reaches along the rod', () => {
    // By hand: a ball on a twelve-millimetre arm that turns by 30° goes 6 mm along the rod; the rod of 100 mm leans by little more than nothing.
    expect(Math.abs(tailAt(straight(), Math.PI / 6)!.slide)).toBeCloseTo(0.006, 4);
  });

  it('is told which entries are missing', () => {
    expect(tailOf(bench('  slider: {on: tail, at: [-900 mm, 40 mm, 0 mm]}'))).toEqual({ missing: expect.arrayContaining(['controls.links', 'controls.slider.by']) });
    expect(tailOf(bench('  links: {}'))).toBeUndefined();
  });
});
