import { fitsEveryAngle, spatialFourBar } from '@rotorwright/mechanics';
import { defineCalculation } from '../define.ts';
import { lengthInput } from '../specs.ts';
import { angleInput, crankOf, directionInput, pointInput, type Three } from './control-specs.ts';

const crankInput = (title: string, pivot: Three, axis: Three, arm: Three) => ({ kind: 'record', title, fields: { pivot: pointInput('Pivot', pivot), axis: directionInput('Axis', axis), arm: pointInput('Arm at angle 0: pivot to ball', arm) } }) as const;

const angles = (title: string, symbol: string) => ({ title, symbol, unit: 'rad', shown: '°', list: true }) as const;

export const pushrod = defineCalculation({
  id: 'pushrod',
  title: 'Rod between two arms in space',
  section: 'Controls',
  summary: 'Two arms whose axes lie anyhow, and a rod with a ball at each end: where the second arm goes, how fast, and how far the balls lean.',
  inputs: {
    input: crankInput('Arm that is turned', [0, 0, 0], [0, 1, 0], [0, 0, 0.018]),
    output: crankInput('Arm that follows', [0.1, 0.01, 0], [0, 1, 0.1], [0, 0, 0.024]),
    rodLength: lengthInput('Rod, ball to ball', 'L', 100.5),
    angle: angleInput('Angle of the arm that is turned', 'α', 0.2),
  },
  outputs: {
    outputAngles: angles('Angles of the arm that follows', 'φ'),
    ratios: { title: 'Speed of the second arm over the first', symbol: 'dφ/dα', unit: '-', shown: '-', list: true },
    rodAngles1: angles('Lean of the rod at the ball of the first arm', 'β_1'),
    rodAngles2: angles('Lean of the rod at the ball of the second arm', 'β_2'),
    reachable: { title: 'Whether the rod reaches (1) or not (0)', symbol: '-', unit: '-', shown: '-' },
  },
  formulas: [
    { output: 'outputAngles', tex: String.raw`\left|b_2(\varphi) - b_1(\alpha)\right| = L` },
    { output: 'ratios', tex: String.raw`\frac{d\varphi}{d\alpha} = \frac{(b_2 - b_1)\cdot\partial b_1/\partial\alpha}{(b_2 - b_1)\cdot\partial b_2/\partial\varphi}` },
    { output: 'reachable', tex: String.raw`\left|A\cos\varphi + B\sin\varphi\right| \le \sqrt{A^2 + B^2}` },
    { output: 'rodAngles1', tex: String.raw`\sin\beta_k = \frac{\left|(b_2 - b_1)\cdot n_k\right|}{L}` },
  ],
  source: 'Closed form of the spatial four-bar with two ball joints (RSSR).',
  validity: ['Rigid arms and rod, no play. Every closure is listed, ascending; which of them a machine is in depends on how it was put together.', 'At a dead centre the second arm has no speed ratio.'],
  compute: ({ input, output, rodLength, angle }) => {
    const cranks = [crankOf(input, 'input'), crankOf(output, 'output')] as const;
    const closures = spatialFourBar(...cranks, rodLength, angle);
    if (fitsEveryAngle(...cranks, rodLength, angle)) return { outputs: { reachable: 1 }, warnings: ['The first ball stands on the axis of the second arm: the rod fits at every angle and holds none. outputAngles, ratios, rodAngles1 and rodAngles2 are left out.'] };
    if (closures.length === 0) return { outputs: { reachable: 0 }, warnings: ['The rod does not reach: outputAngles, ratios, rodAngles1 and rodAngles2 are left out.'] };
    const ratios = closures.flatMap(({ ratio }) => ratio ?? []);
    const dead = ratios.length < closures.length;
    return {
      outputs: {
        outputAngles: closures.map((closure) => closure.angle),
        ...(dead ? {} : { ratios }),
        rodAngles1: closures.map(({ rodAngles }) => rodAngles[0]),
        rodAngles2: closures.map(({ rodAngles }) => rodAngles[1]),
        reachable: 1,
      },
      warnings: dead ? ['The second arm is at a dead centre: ratios is left out.'] : [],
    };
  },
});
