import { describe, expect, it } from 'vitest';
import { planBuild, type Plan, type Step } from '@rotorwright/build';
import { machineByHand } from './by-hand.ts';
import { caseInFrame } from './tail-case.ts';

const plan = planBuild(machineByHand(caseInFrame));
const at = (id: string, of: Plan = plan) => [...of.steps.keys()].indexOf(id);

/** Each pair: the first comes before the second. */
function expectOrder(of: Plan, ...pairs: readonly (readonly [string, string])[]): void {
  for (const [first, later] of pairs) {
    expect(at(first, of), first).toBeGreaterThanOrEqual(0);
    expect(at(first, of), `${first} before ${later}`).toBeLessThan(at(later, of));
  }
}

describe('the order of work', () => {
  it('strips a module that came assembled before anything else in it', () => {
    expect([...plan.steps.keys()].filter((id) => id.startsWith('tail-case'))[0]).toBe('tail-case');
    expect(plan.steps.has('boom')).toBe(false);
  });

  it('follows access, what holds what, stacks and written steps', () => {
    expectOrder(
      plan,
      ['tail-case/input', 'tail-case/nut'],
      ['tail-case/nut', 'tail-case/play'],
      ['tail-case/play', 'tail-case/turn'],
      ['tail-case/input', 'tail-case/cross-pin'],
      ['tail-case/cross-pin', 'tail-case/pin-screw'],
      ['tail-case/pin-screw', 'tail-case/case-screw-left'],
      ['tail-case/pin-screw', 'tail-case/case-screw-right'],
      ['tail-case/case-screw-left', 'boom/clamp-screw'],
    );
  });

  it('where one of two plates will do, keeps only the first of them off', () => {
    expectOrder(plan, ['tail-case/cross-pin', 'tail-case/block-low-right'], ['tail-case/block-low-left', 'tail-case/block-low-right']);
  });

  it('names only what does not follow from the rest', () => {
    expect(plan.steps.get('tail-case/nut')?.after).toEqual(['tail-case/input']);
    expect(plan.steps.get('tail-case/turn')).toMatchObject({ after: ['tail-case/play'], cured: [] });
  });

  it('is the same every time', () => {
    expect(JSON.stringify([...planBuild(machineByHand(caseInFrame)).steps])).toBe(JSON.stringify([...plan.steps]));
  });

  // By hand: no screw of this machine goes into its posts.
  it('has nothing to find here, but that nothing is said to keep the posts', () => {
    expect(plan.findings.map(({ code, path }) => `${code} ${path}`)).toEqual(['place/unknown modules.tail-case.parts.post']);
  });
});

describe('a step whose words are made when they are read', () => {
  const fresh = () => planBuild(machineByHand(caseInFrame));

  it('is plain data to whoever copies it, sends it to a worker, or writes it as JSON', () => {
    for (const step of fresh().steps.values()) {
      const copy = { ...step };
      expect(Object.values(Object.getOwnPropertyDescriptors(copy)).every((property) => 'value' in property)).toBe(true);
      expect(copy).toEqual(step);
      expect(structuredClone(step)).toEqual(step);
      const written = JSON.parse(JSON.stringify(step)) as Step;
      expect(written).toEqual(copy);
      expect(written.action).not.toBe('');
      expect(written.fingerprint).toMatch(/^f2:[0-9a-f]{64}$/u);
    }
  });

  it('says the same, whichever step is read first', () => {
    const backwards = new Map([...fresh().steps.values()].toReversed().map((step) => [step.id, { ...step }]));
    expect(backwards).toEqual(fresh().steps);
  });

  it('words them once', () => {
    for (const step of plan.steps.values()) expect(step.actions).toBe(step.actions);
  });
});
