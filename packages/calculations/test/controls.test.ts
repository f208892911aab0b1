import { describe, expect, it } from 'vitest';
import { answer, catalogue, exampleInputs, isCalcProblem, type CalcAnswer } from '@rotorwright/calculations';

type Json = Record<string, unknown>;

const plate = (): Json & { readonly servos: Json[]; readonly link: Json; readonly grip: Json } => {
  const { wanted: _, ...inputs } = structuredClone(exampleInputs(catalogue.get('swashplate')!)) as Json;
  return { ...inputs, angles: [0, 0, 0] } as never;
};
const rod = (): Json & { readonly input: Json; readonly output: Json } => structuredClone(exampleInputs(catalogue.get('pushrod')!)) as never;

/** What is wrong, by the name of the input. */
function refused(id: string, inputs: Json): readonly (readonly [string, string])[] {
  const answered = answer(id, inputs);
  return isCalcProblem(answered) ? answered.problems.map(({ name, wanted }) => [name, wanted] as const) : [];
}

describe('a swashplate that cannot be', () => {
  it.each<readonly [string, Json, RegExp]>([
    ['grip.ball', { grip: { ...plate().grip, ball: [0.045, 0, 0] } }, /stands off the feathering axis/u],
    ['link.upperBall', { link: { ...plate().link, upperBall: [0, 0, 0.006] } }, /off the mast axis, or a link\.driver that is$/u],
    ['link.driver', { link: { ...plate().link, driver: [0, 0, 0.01] } }, /off the mast axis/u],
    ['antiRotation.point', { antiRotation: { point: [0, 0, 0.3] } }, /off the mast axis/u],
    ['servos[1].axis', { servos: plate().servos.map((each, index) => (index === 1 ? { ...each, axis: [0, 0, 0] } : each)) }, /a direction/u],
    ['servos[2].arm', { servos: plate().servos.map((each, index) => (index === 2 ? { ...each, arm: each['axis'] } : each)) }, /stands off its axis/u],
    ['angles', { angles: [0, 0, 0, 0] }, /one for each of the 3 servos/u],
    ['angles', { wanted: { collective: 0, cyclicCos: 0, cyclicSin: 0 } }, /one of the two/u],
    ['angles', { angles: undefined }, /one of the two/u],
  ])('is refused by the name of %s', (name, more, words) => {
    const { angles, ...rest } = plate();
    const inputs = 'angles' in more && more['angles'] === undefined ? rest : { angles, ...rest, ...more };
    expect(refused('swashplate', inputs)).toEqual([[name, expect.stringMatching(words)]]);
  });

  it.each<readonly [string, Json, RegExp]>([
    ['a rod too short', { servos: plate().servos.map((each, index) => (index === 1 ? { ...each, rodLength: 0.01 } : each)) }, /three rods cannot close: that of servo 2/u],
    ['a link too long', { link: { ...plate().link, length: 5 } }, /The link does not reach at azimuth 0°/u],
    ['a pitch beyond a right angle', { angles: undefined, wanted: { collective: '95 °', cyclicCos: 0, cyclicSin: 0 } }, /does not reach|No pose of the plate/u],
  ])('does not reach with %s, and says where', (_, more, words) => {
    const inputs = Object.fromEntries(Object.entries({ ...plate(), ...more }).filter(([, value]) => value !== undefined));
    const { outputs, warnings } = answer('swashplate', inputs) as CalcAnswer;
    expect(outputs).toEqual({ reachable: { value: 0, unit: '-' } });
    expect(warnings.join(' ')).toMatch(words);
  });
});

describe('a link that is too short at an azimuth between the others', () => {
  it('is told with that azimuth', () => {
    const leaning = (length: number, azimuths: readonly number[]): CalcAnswer => answer('swashplate', { ...plate(), angles: [0.2, -0.2, 0.1], azimuths, link: { ...plate().link, length } }) as CalcAnswer;
    const reaches = (length: number): boolean => leaning(length, [0]).outputs['reachable'] !== undefined && (leaning(length, [0]).outputs['reachable'] as { readonly value: number }).value === 1;
    // The shortest link that reaches at every fifth degree does not reach at all between them.
    let [short, long] = [0.02, 0.0642];
    expect([reaches(short), reaches(long)]).toEqual([false, true]);
    for (let halvings = 0; halvings < 40; halvings += 1) {
      const middle = (short + long) / 2;
      if (reaches(middle)) long = middle;
      else short = middle;
    }
    const degrees = Array.from({ length: 720 }, (_, index) => (index * Math.PI) / 360);
    const { outputs, warnings } = leaning(long, degrees);
    expect(outputs).toEqual({ reachable: { value: 0, unit: '-' } });
    const [, told] = /The link does not reach at azimuth (.*)\. All other/u.exec(warnings[0]!)!;
    expect(told!.split(', ').length).toBeGreaterThan(0);
    // None of the multiples of 5°, and all between two of them.
    const at = told!.split(', ').map((each) => Number(each.replace('°', '')));
    expect(at.every((each) => each % 5 !== 0)).toBe(true);
    expect(new Set(at.map((each) => Math.floor(each / 5))).size).toBe(1);
  });
});

describe('a rod between arms that cannot be', () => {
  it.each<readonly [string, Json, RegExp]>([
    ['rodLength', { rodLength: 0 }, /above 0 mm/u],
    ['input.axis', { input: { ...rod().input, axis: [0, 0, 0] } }, /a direction/u],
    ['output.arm', { output: { ...rod().output, arm: [0, 0.01, 0.001] } }, /stands off its axis/u],
    ['input.pivot', { input: { ...rod().input, pivot: [0, 0, 0, 0] } }, /exactly three/u],
  ])('is refused by the name of %s', (name, more, words) => {
    expect(refused('pushrod', { ...rod(), ...more })).toEqual([[name, expect.stringMatching(words)]]);
  });

  it('holds no angle where its ball stands on the axis of the second arm', () => {
    // By hand: the ball of the first arm stands at 1 m, on the second axis; the arm is half a metre, like the rod.
    const arm = (x: number, length: number): Json => ({ pivot: [x, 0, 0], axis: [0, 0, 1], arm: [length, 0, 0] });
    const { outputs, warnings } = answer('pushrod', { input: arm(0, 1), output: arm(1, 0.5), rodLength: 0.5, angle: 0 }) as CalcAnswer;
    expect(outputs).toEqual({ reachable: { value: 1, unit: '-' } });
    expect(warnings.join(' ')).toMatch(/fits at every angle and holds none\. outputAngles, ratios, rodAngles1 and rodAngles2 are left out/u);
    const longer = answer('pushrod', { input: arm(0, 1), output: arm(1, 0.5), rodLength: 0.7, angle: 0 }) as CalcAnswer;
    expect(longer.outputs).toEqual({ reachable: { value: 0, unit: '-' } });
  });

  it('stretches to one angle without a ratio, and is told so', () => {
    // By hand: the ball of the first arm at 18 mm, that of the second at 124 mm; a rod of 106 mm just reaches it.
    const flat = (x: number, arm: number): Json => ({ pivot: [x, 0, 0], axis: [0, 1, 0], arm: [arm, 0, 0] });
    const { outputs, warnings } = answer('pushrod', { input: flat(0, 0.018), output: flat(0.1, 0.024), rodLength: 0.1 - 0.018 + 0.024, angle: 0 }) as CalcAnswer;
    expect(outputs['outputAngles']).toEqual([{ value: expect.closeTo(0, 9), unit: 'rad' }]);
    expect(outputs).not.toHaveProperty('ratios');
    expect(warnings.join(' ')).toMatch(/dead centre/u);
  });
});
