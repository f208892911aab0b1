import { describe, expect, it } from 'vitest';
import { wanderOf } from '../../src/speed/wander.ts';
import { chanceOf } from '../../../../tests/recordings/chance.ts';

/** Places of a recording: both ends, unmeasured, and the middles of so many blocks. */
function places(blocks: number, noise: number, angle: (time: number) => number, seed: number) {
  const chance = chanceOf(seed);
  const times = Float64Array.from({ length: blocks + 2 }, (_, index) => (index === 0 ? 0 : index === blocks + 1 ? blocks : index - 0.5));
  const measured = times.map((time) => angle(time) + noise * chance.normal());
  const precision = times.map((_, index) => (index === 0 || index === blocks + 1 ? 0 : noise ** -2));
  return { times, measured, precision };
}

describe('an angle that may wander', () => {
  it('of a steady speed is a straight line, and its gain as sure as the fit of one', () => {
    // By hand: the slope of a line through n points a block apart deviates by σ·√(12/(n³ − n)); over n blocks that is σ·√(12·n/(n² − 1)).
    const [blocks, noise] = [80, 1e-5];
    const { times, measured, precision } = places(blocks, noise, (time) => 3e-4 * time, 1);
    const { angle, open, scattered } = wanderOf(times, measured, precision)!;
    const line = noise * Math.sqrt((12 * blocks) / (blocks ** 2 - 1));
    const deviation = Math.sqrt(open + scattered);
    expect(deviation / line).toBeGreaterThan(0.8);
    expect(deviation / line).toBeLessThan(1.6);
    expect(Math.abs(angle.at(-1)! - angle[0]! - 3e-4 * blocks)).toBeLessThan(4 * line);
  });

  it('holds its gain within two deviations in about 95 of 100, whether the speed wanders or the angle shakes', () => {
    let inside = 0;
    const rounds = 60;
    for (let round = 0; round < rounds; round += 1) {
      const chance = chanceOf(900 + round);
      const shakes = round % 2 === 0;
      const walk = [0];
      let speed = 0;
      // Sixteen steps a block: the truth is finer than the measurements.
      for (let step = 0; step < 16 * 60; step += 1) {
        speed += shakes ? 0 : 2e-5 * chance.normal() / 4;
        walk.push(walk.at(-1)! + speed / 16 + (shakes ? 4e-5 * chance.normal() / 4 : 0));
      }
      const { times, measured, precision } = places(60, 1e-5, (time) => walk[Math.round(16 * time)]!, 300 + round);
      const { angle, open, scattered } = wanderOf(times, measured, precision)!;
      if (Math.abs(angle.at(-1)! - angle[0]! - walk.at(-1)!) < 1.96 * Math.sqrt(open + scattered)) inside += 1;
    }
    // Of sixty with 95 of 100 inside, fewer than 52 come once in four hundred times.
    expect(inside).toBeGreaterThanOrEqual(52);
  });

  it('is none with fewer than three places measured', () => {
    const { times, measured, precision } = places(2, 1e-5, () => 0, 2);
    expect(wanderOf(times, measured, precision)).toBeUndefined();
  });
});
