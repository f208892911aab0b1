import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { spatialFourBar, type Crank } from '../../src/linkages/index.ts';
import { crossingAngles } from '../../src/linkages/crossing-angles.ts';
import { rotateAbout, type Vector3 } from '../../src/numeric/vector.ts';

const part = numberIn(-1, 1);
const vector = fc.tuple(part, part, part).filter(([x, y, z]) => x * x + y * y + z * z > 0.01);
const crank = fc.record({ pivot: fc.tuple(part, part, part), axis: vector, arm: vector }).filter(({ axis, arm }) => {
  const along = axis[0] * arm[0] + axis[1] * arm[1] + axis[2] * arm[2];
  const [a, b] = [axis, arm].map(([x, y, z]) => x * x + y * y + z * z) as [number, number];
  return a * b - along * along > 1e-3 * a * b;
});
const ball = ({ pivot, axis, arm }: Crank, angle: number): Vector3 => rotateAbout(arm, axis, angle).map((each, index) => each + pivot[index]!) as unknown as Vector3;
const apart = (a: Vector3, b: Vector3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

describe('a rod between two arms in space', () => {
  // law: the rod keeps its length
  it('closes with the rod at its length, every time, ascending', () => {
    fc.assert(fc.property(crank, crank, fc.double({ min: 0.2, max: 3, noNaN: true }), numberIn(-7, 7), (input, output, rod, angle) => {
      const closures = spatialFourBar(input, output, rod, angle);
      for (const { angle: follows, rodAngles } of closures) {
        expect(Math.abs(apart(ball(input, angle), ball(output, follows)) - rod)).toBeLessThan(1e-9);
        expect(rodAngles.every((lean) => lean >= 0 && lean <= Math.PI / 2)).toBe(true);
      }
      expect(closures.map((each) => each.angle)).toEqual(closures.map((each) => each.angle).toSorted((a, b) => a - b));
    }));
  });

  // independent route: the distance sampled over a whole turn changes sign as often as there are closures
  it('finds every closure and no other', () => {
    fc.assert(fc.property(crank, crank, fc.double({ min: 0.2, max: 3, noNaN: true }), numberIn(-3, 3), (input, output, rod, angle) => {
      const at = ball(input, angle);
      const misses = Array.from({ length: 721 }, (_, index) => apart(at, ball(output, -Math.PI + (index * Math.PI) / 360)) - rod);
      const crossings = misses.slice(1).filter((miss, index) => miss * misses[index]! < 0).length;
      // Two that lie closer than a sample apart may hide from it; then the distance is near the rod there.
      if (Math.min(...misses.map(Math.abs)) > 1e-3) expect(spatialFourBar(input, output, rod, angle)).toHaveLength(crossings);
    }));
  });

  // independent route: differences of the closures themselves
  it('gives the speed ratio that the angles show', () => {
    fc.assert(fc.property(crank, crank, fc.double({ min: 0.5, max: 2.5, noNaN: true }), numberIn(-3, 3), (input, output, rod, angle) => {
      const step = 1e-6;
      const [here, ahead, behind] = [0, step, -step].map((turn) => spatialFourBar(input, output, rod, angle + turn)) as [ReturnType<typeof spatialFourBar>, ReturnType<typeof spatialFourBar>, ReturnType<typeof spatialFourBar>];
      if (here.length !== ahead.length || here.length !== behind.length) return;
      here.forEach(({ ratio, angle: follows }, index) => {
        if (ratio === undefined || Math.abs(ratio) > 20 || Math.abs(follows) > 3.1) return;
        expect((ahead[index]!.angle - behind[index]!.angle) / (2 * step)).toBeCloseTo(ratio, 3);
      });
    }));
  });

  // published: data file to Mechanism and Machine Theory 142 (2025) 106163, input at 0°: 1.16 printed
  it('gives the speed ratio of the published spatial four-bar', () => {
    const [arm, distance, cone] = [0.2016318, 0.4031627, (7.294 * Math.PI) / 180];
    const input = { pivot: [0, 0, 0], axis: [0.009243, -0.951003, 0.309043], arm: [-0.379646 * arm, 0.400777 * arm, 0.833815 * arm] } as const;
    const output = { pivot: [0.524328 * distance, 0.835662 * distance, -0.163552 * distance], axis: [1, 0, 0], arm: [-Math.sin(cone) * arm, Math.cos(cone) * arm, 0] } as const;
    const closure = spatialFourBar(input, output, 0.35, 0).find(({ angle }) => Math.abs(angle - 1.71) < 0.01);
    expect(closure?.angle).toBeCloseTo(1.707290836, 8);
    expect(closure?.ratio).toBeCloseTo(1.164614, 5);
  });

  // by hand: 40° of the 40 mm crank, 80 mm rocker, coupler 120 mm, ground 100 mm: transmission angle 37.03°
  it('turns a planar four-bar like one, with level rods', () => {
    const [, open] = spatialFourBar({ pivot: [0, 0, 0], axis: [0, 0, 1], arm: [40, 0, 0] }, { pivot: [100, 0, 0], axis: [0, 0, 1], arm: [80, 0, 0] }, 120, (40 * Math.PI) / 180);
    expect(open?.ratio).toBeCloseTo(0.27991940968707085, 12);
    expect(open?.rodAngles).toEqual([0, 0]);
  });

  it('has no closure where the rod is too short, and no ratio at a dead centre', () => {
    const at = (x: number): Crank => ({ pivot: [x, 0, 0], axis: [0, 0, 1], arm: [1, 0, 0] });
    expect(spatialFourBar(at(0), at(5), 2, 0)).toEqual([]);
    // The output's arm and the rod lie in one line.
    const [dead, ...rest] = spatialFourBar(at(0), at(4), 4, 0.1).filter(({ ratio }) => ratio === undefined);
    expect(dead).toBeUndefined();
    expect(rest).toEqual([]);
    const [only] = spatialFourBar({ pivot: [0, 0, 0], axis: [0, 0, 1], arm: [1, 0, 0] }, { pivot: [3, 0, 0], axis: [0, 0, 1], arm: [1, 0, 0] }, 1, 0);
    expect(only).toMatchObject({ angle: Math.PI });
    expect(only).not.toHaveProperty('ratio');
  });

  it('has one closure without a ratio at any dead centre, whatever the rounding', () => {
    // Law: stretched or folded, arm and rod lie in one line, however the whole stands in space. Between the two the output stands at its end.
    const size = fc.double({ min: 0.01, max: 0.1, noNaN: true });
    const place = numberIn(-1, 1);
    fc.assert(fc.property(size, size, place, place, numberIn(-3, 3), fc.boolean(), (arm, rod, x, y, angle, stretched) => {
      fc.pre(Math.abs(arm - rod) > 1e-3);
      const still: Crank = { pivot: [x, y, 0], axis: [0, 0, 1], arm: [0.01, 0, 0] };
      const [ballX, ballY] = [x + 0.01, y];
      const far = stretched ? arm + rod : Math.abs(arm - rod);
      const output: Crank = { pivot: [ballX + far * Math.cos(angle), ballY + far * Math.sin(angle), 0], axis: [0, 0, 1], arm: [arm, 0, 0] };
      const closures = spatialFourBar(still, output, rod, 0);
      expect(closures).toHaveLength(1);
      expect(closures[0]).not.toHaveProperty('ratio');
    }));
  });

  it('refuses an arm along its axis and a rod without length', () => {
    const right: Crank = { pivot: [0, 0, 0], axis: [0, 0, 1], arm: [1, 0, 0] };
    expect(() => spatialFourBar({ ...right, arm: [0, 0, 2] }, right, 1, 0)).toThrow(/arm of the input must stand off its axis/);
    expect(() => spatialFourBar(right, { ...right, axis: [0, 0, 0] }, 1, 0)).toThrow(/direction wanted/);
    expect(() => spatialFourBar(right, right, 0, 0)).toThrow(/longer than 0 m/);
  });
});

describe('angles at which A·cos x + B·sin x = C', () => {
  it('solve it', () => {
    const number = numberIn(-10, 10);
    fc.assert(fc.property(number, number, number, (a, b, c) => {
      for (const x of crossingAngles(a, b, c)) expect(Math.abs(a * Math.cos(x) + b * Math.sin(x) - c)).toBeLessThan(1e-7 * (Math.abs(a) + Math.abs(b) + Math.abs(c)));
    }));
  });

  it('are one at a touch, none at a miss, none where nothing depends on x', () => {
    expect(crossingAngles(1, 0, -1)).toEqual([Math.PI]);
    expect(crossingAngles(1, 0, 1.1)).toEqual([]);
    expect(crossingAngles(0, 0, 0)).toEqual([]);
    expect(crossingAngles(0, 0, 1, 1e-18)).toEqual([]);
    expect(crossingAngles(1e-19, 0, 1e-19, 1e-18)).toEqual([]);
  });
});
