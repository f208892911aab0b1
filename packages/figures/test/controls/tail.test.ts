import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tailEnvelope } from '../../src/controls/envelope.ts';
import { servoForPitch, tailAt, tailOf, type Tail } from '../../src/controls/tail.ts';
import { bench, example, tailIn } from './benches.ts';
import { carriedBy, halved } from './independent.ts';

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

describe.each(tails)('slider and blade of %s', (_, tail, most) => {
  it('go where quaternions and halving put them: the pin on its circle, or the ball on the end of its rod', () => {
    // Independent route.
    const { push, line, hub: { link: { upperBall, length }, grip: { ball: [r, t, z], height } } } = tail;
    fc.assert(fc.property(within(most), (by) => {
      const carried = carriedBy(tail.train, [by]);
      const along = (point: readonly number[]): number => point.reduce((sum, each, index) => sum + each * line[index]!, 0);
      const slide = 'pin' in push
        ? along(carried(push.mover, push.pin).map((each, index) => each - push.pin[index]!))
        : halved((way) => Math.hypot(...carried(push.mover, push.ball).map((each, index) => push.end[index]! + way * line[index]! - each)) - push.rod.length, -0.02, 0.02);
      const pitch = halved((angle) => Math.hypot(r - upperBall[0], t * Math.cos(angle) - z * Math.sin(angle) - upperBall[1], t * Math.sin(angle) + z * Math.cos(angle) + height - upperBall[2] - slide) - length, -0.9, 0.9);
      const there = tailAt(tail, by)!;
      expect(Math.abs(there.slide - slide)).toBeLessThan(1e-9);
      expect(Math.abs(there.pitch - pitch)).toBeLessThan(1e-9);
    }), { numRuns: 40 });
  });
});

describe.each(tails)('rods and arms of %s', (_, tail) => {
  it('tell the steepest lean of each ball and the least turn to a dead centre, at rest from the balls of the file', () => {
    const { leans, toDeadCentre } = tailEnvelope(tail, 0, 0);
    // Every rod on the way is told: from servo to lever on both balls, straight to a slider on that of the servo.
    const rods = 'rod' in tail.push ? [`${tail.push.rod.link.id} from`] : tail.rods.flatMap(({ link }) => [`${link.id} from`, `${link.id} to`]);
    expect(leans.map(({ link, ball }) => `${link} ${ball}`).toSorted()).toEqual([...rods, 'tail-link from', 'tail-link to'].toSorted());
    // Independent route: angles between arms and rods by their cosines, at rest.
    const between = (a: readonly number[], b: readonly number[]): number => {
      const angle = Math.acos(a.reduce((sum, each, at) => sum + each * b[at]!, 0) / Math.hypot(...a) / Math.hypot(...b));
      return Math.min(angle, Math.PI - angle);
    };
    const { slide, pitch } = tailAt(tail, 0)!;
    const { link: { upperBall }, grip: { ball: [, t, z], height } } = tail.hub;
    const arm = [t * Math.cos(pitch) - z * Math.sin(pitch), t * Math.sin(pitch) + z * Math.cos(pitch)];
    const atGrip = between(arm, [arm[0]! - upperBall[1], arm[1]! + height - upperBall[2] - slide]);
    const rest = tail.train.levers.flatMap(({ pivot, ball, rod }) => {
      const servo = tail.train.servos[0]!.pivot;
      const along = ball.map((each, at) => each - rod.ball[at]!);
      // All axes here stand upright.
      const level = (a: readonly number[], b: readonly number[]): readonly number[] => [a[0]! - b[0]!, a[1]! - b[1]!];
      return [between(level(ball, pivot), along.slice(0, 2)), between(level(rod.ball, servo), along.slice(0, 2))];
    });
    const pushed = 'rod' in tail.push ? [between([0.012, 0], [0.002, 0.1])] : [];
    expect(toDeadCentre!.angle).toBeCloseTo(Math.min(atGrip, ...rest, ...pushed), 6);
  });
});

describe('a slider', () => {
  it('slides as far as the arm of the servo reaches along the rod', () => {
    // By hand: a ball on a twelve-millimetre arm that turns by 30° goes 6 mm along the rod; the rod of 100 mm leans by little more than nothing.
    expect(Math.abs(tailAt(straight(), Math.PI / 6)!.slide)).toBeCloseTo(0.006, 4);
  });

  it('is told which entries are missing', () => {
    expect(tailOf(bench('  slider: {on: tail, at: [-900 mm, 40 mm, 0 mm]}'))).toEqual({ missing: expect.arrayContaining(['controls.links', 'controls.slider.by']) });
    expect(tailOf(bench('  links: {}'))).toBeUndefined();
  });
});
