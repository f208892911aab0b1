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
    ['link.upperBall', { link: { ...plate().link, upperBall: [0, 0, 0.006] } }, /off the mast axis/u],
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

describe('a rod between arms that cannot be', () => {
  it.each<readonly [string, Json, RegExp]>([
    ['rodLength', { rodLength: 0 }, /above 0 mm/u],
    ['input.axis', { input: { ...rod().input, axis: [0, 0, 0] } }, /a direction/u],
    ['output.arm', { output: { ...rod().output, arm: [0, 0.01, 0.001] } }, /stands off its axis/u],
    ['input.pivot', { input: { ...rod().input, pivot: [0, 0, 0, 0] } }, /exactly three/u],
  ])('is refused by the name of %s', (name, more, words) => {
    expect(refused('pushrod', { ...rod(), ...more })).toEqual([[name, expect.stringMatching(words)]]);
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
