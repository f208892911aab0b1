import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn } from '../../../../tests/number-in.ts';
import { angleToPush, angleToReach, trainAt, wayAlong, type LeverTrain } from '../../src/linkages/index.ts';
import type { Vector3 } from '../../src/numeric/vector.ts';

const distance = (a: Vector3, b: Vector3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Servo and lever with arms of 20 mm, upright, 100 mm apart: a parallelogram. */
const parallel: LeverTrain = {
  servos: [{ pivot: [0, 0, 0], axis: [0, 1, 0] }],
  levers: [{ pivot: [0.1, 0, 0], axis: [0, 1, 0], ball: [0.1, 0, 0.02], rod: { from: { servo: 0 }, ball: [0, 0, 0.02], length: 0.1 } }],
};
const angle = numberIn(-1, 1);

describe('a train of levers', () => {
  it('turns both arms of a parallelogram alike', () => {
    // Law: opposite sides of a parallelogram stay parallel.
    fc.assert(fc.property(angle, (turn) => {
      const position = trainAt(parallel, [turn]);
      expect('levers' in position && position.levers[0]).toBeCloseTo(turn, 9);
    }));
  });

  it('keeps every rod at its length, lever after lever, and with a pivot that rides on another', () => {
    const train: LeverTrain = {
      servos: [{ pivot: [0, 0, 0], axis: [0, 1, 0] }, { pivot: [0, 0.05, 0], axis: [0.1, 1, 0] }],
      levers: [
        { ...parallel.levers[0]!, ball: [0.1, 0, 0.03], rod: { from: { servo: 0 }, ball: [0, 0, 0.02], length: 0.101 } },
        { pivot: [0.13, 0.05, 0.02], axis: [0, 1, 0.2], ball: [0.13, 0.05, 0.05], on: 0, rod: { from: { servo: 1 }, ball: [0, 0.05, 0.02], length: 0.135 } },
        { pivot: [0.2, 0.05, 0], axis: [0, 1, 0], ball: [0.2, 0.05, 0.04], rod: { from: { lever: 1 }, ball: [0.13, 0.05, 0.06], length: 0.075 } },
      ],
    };
    const small = numberIn(-0.3, 0.3);
    fc.assert(fc.property(small, small, (a, b) => {
      const position = trainAt(train, [a, b]);
      if (!('at' in position)) throw new Error('out of reach');
      for (const [index, { ball, rod }] of train.levers.entries()) expect(distance(position.at({ lever: index }, ball), position.at(rod.from, rod.ball))).toBeCloseTo(rod.length, 12);
    }));
  });

  it('says which lever is out of reach', () => {
    expect(trainAt({ ...parallel, levers: [{ ...parallel.levers[0]!, rod: { ...parallel.levers[0]!.rod, length: 0.01 } }] }, [0])).toEqual({ unreached: 0 });
  });
});

describe('the way back', () => {
  it('finds the angle at which a ball is a rod from a point', () => {
    // By hand: an arm of 20 mm that lies over its axis at 90° less the angle.
    const crank = { pivot: [0, 0, 0], axis: [0, 1, 0] } as const;
    const found = angleToReach(crank, [0, 0, 0.02], [0.1, 0, 0], 0.08)!;
    expect(found).toBeCloseTo(Math.PI / 2, 6);
    expect(angleToReach(crank, [0, 0, 0.02], [0.5, 0, 0], 0.08)).toBeUndefined();
  });

  it('finds the angle at which a pin has gone some way, and says where it cannot', () => {
    // By hand: a pin on 24 mm goes 12 mm sideways in a turn by 30°.
    const crank = { pivot: [0, 0, 0], axis: [0, 0, 1] } as const;
    expect(angleToPush(crank, [0.024, 0, 0], [0, 2, 0], 0.012)).toBeCloseTo(Math.PI / 6, 12);
    expect(angleToPush(crank, [0.024, 0, 0], [0, 1, 0], 0.03)).toBeUndefined();
  });

  it('finds how far a ball goes along its line: of two ways the smaller', () => {
    // By hand: the triangle 3, 4, 5; the other way is 8 further.
    expect(wayAlong([0.004, 0.003, 0], [1, 0, 0], [0, 0, 0], 0.005)).toBeCloseTo(0, 15);
    expect(wayAlong([0.003, 0.003, 0], [2, 0, 0], [0, 0, 0], 0.005)).toBeCloseTo(0.001, 15);
    expect(wayAlong([0, 0.006, 0], [1, 0, 0], [0, 0, 0], 0.005)).toBeUndefined();
  });
});
