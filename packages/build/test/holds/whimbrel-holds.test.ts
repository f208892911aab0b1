import { readFileSync } from 'node:fs';
import { readMachine, type Machine } from '@rotorwright/machine';
import { describe, expect, test } from 'vitest';
import { asksSecondLook, chainsOf, eventsOf, hazardChance, holds, keeps, missing, omissionRange, pairsOf, planBuild, type HazardHolds } from '../../src/index.ts';

function read(name: string): Machine {
  const { machine } = readMachine(readFileSync(new URL(`../../../../examples/${name}/machine.yaml`, import.meta.url), 'utf8'));
  if (machine === undefined) throw new Error(`examples/${name} is no machine`);
  return machine;
}
const machine = read('whimbrel');
const model = holds(machine);
const of = (hazard: string): HazardHolds => model.hazards.get(hazard)!;
const points = (hazard: string): readonly string[] => of(hazard).singlePoints.map(({ step }) => step);

describe.each(['whimbrel', 'sanderling'])('%s', (name) => {
  test('says what keeps each of its parts, and every hazard can be followed to its causes', () => {
    const found = holds(read(name));
    expect(found.findings).toEqual([]);
    for (const { tree, singlePoints } of found.hazards.values()) expect([tree?.top, singlePoints.length]).not.toEqual([undefined, 0]);
  });

  test('has a step for each thing that guards a hazard', () => {
    const found = holds(read(name));
    const { steps } = planBuild(read(name));
    for (const { tree } of found.hazards.values()) for (const id of eventsOf(tree!)) expect([...steps.keys()]).toContain(found.events.get(id)!.step);
  });
});

// By hand from the file of the machine.
describe('single points of Whimbrel', () => {
  test('of the tail drive are the cross pin, its set screw, and the compound on that', () => {
    const singles = of('tail-drive-lost').singlePoints;
    expect(singles.find(({ step }) => step === 'tail-case/cross-pin')?.events.map(({ id }) => id)).toEqual(['undone:tail-case/cross-pin']);
    expect(singles.find(({ step }) => step === 'tail-case/pin-screw')?.events.map(({ id }) => id)).toEqual(['undone:tail-case/pin-screw', 'lock:tail-case/pin-screw:medium']);
    for (const step of ['boom/front-bond', 'boom/rear-bond', 'tail-end/bevel-pin-screw', 'tail-hub/hub-pin', 'mast/sleeve-bolt']) expect(singles.find((point) => point.step === step)?.oneIsEnough).toBe(true);
  });

  test('of a main blade are what it hangs on, and not what turns its grip', () => {
    expect(points('main-blade-lost')).toEqual([
      'mast/block-low-left', 'mast/block-low-right', 'mast/block-high-left', 'mast/block-high-right', 'mast/collar-clamp', 'head/hub-bolt',
      'main-grip.A/retaining-screw', 'main-grip.A/blade-bolt', 'main-grip.B/retaining-screw', 'main-grip.B/blade-bolt',
      'mast/mast', 'head/dampers', 'main-grip.A/feathering', 'main-grip.B/feathering',
    ]);
    for (const step of ['main-grip.A/arm-screw', 'main-grip.A/link-upper', 'swash/ball-upper-thread']) expect(points('cyclic-lost')).toContain(step);
  });

  test('of four screws of which three suffice it is the whole step, not one screw', () => {
    expect(of('tail-drive-lost').singlePoints.find(({ step }) => step === 'mast/tail-gear-screw')).toMatchObject({ oneIsEnough: false, events: [{ kind: 'skipped' }] });
  });

  test('a second line takes a part out of the single points, and the two stand as a pair', () => {
    expect(points('tail-blade-lost')).not.toContain('tail-hub/hub-pin');
    expect(pairsOf(of('tail-blade-lost'))).toContainEqual(['undone:tail-hub/hub-pin', 'undone:tail-hub/hub-screw']);
  });

  test('of the one-way clutch is how it was put together', () => {
    expect(points('free-wheel-jams')).toEqual(['mast/hub-ring', 'mast/free-wheel']);
  });

  test('of rudder control include the post, the pivot and both sockets of the rod, and nothing of the swashplate', () => {
    const rudder = points('tail-control-lost');
    for (const step of ['tail-end/lever-post-thread', 'tail-hub/pivot-screw', 'linkage/rudder-rod-front', 'linkage/rudder-rod-rear', 'servos/rudder-arm-screw', 'tail-grip.B/link-slider']) expect(rudder).toContain(step);
    expect(rudder.filter((step) => step.startsWith('swash/') || step.startsWith('linkage/servo-link'))).toEqual([]);
  });
});

describe('what keeps the tail pinion of Whimbrel', () => {
  test('is a pin, that a set screw, that its compound', () => {
    const [kept] = keeps(model, 'tail-case/spur');
    const chain = kept?.chains.find(({ joint }) => joint === 'tail-case/cross-pin');
    expect(chain?.links.map(({ kind, step, words }) => `${kind} ${step} ${words}`)).toEqual([
      'joint tail-case/cross-pin 2 mm pin', 'joint tail-case/pin-screw M4 set screw', 'lock tail-case/pin-screw lock, medium', 'mark tail-case/pin-screw witness mark',
    ]);
    expect(kept?.restsOn).toContain('tail-case/input-shaft');
  });

  test('missing the set screw lets the pinion go, and the tail drive with it', () => {
    expect(missing(model, ['tail-case/pin-screw'])).toEqual({ comesOff: ['tail-case/spur'], hazards: ['tail-drive-lost'] });
  });

  test('stands among the chains of its hazard once, its set screw as a link', () => {
    const heads = chainsOf(model, of('tail-drive-lost')).map(({ joint }) => joint);
    expect(heads.filter((joint) => joint === 'tail-case/cross-pin')).toHaveLength(1);
    expect(heads).not.toContain('tail-case/pin-screw');
  });
});

describe('chances of omission', () => {
  // by hand: NUREG/CR-1278 (from memory): 0.05 without a list, 0.003 and 0.01 with a short and a long one, 0.001 and 0.003 ticked; a second look misses one in ten
  test('of one step come from the habit and the length of its list, with their error factor', () => {
    expect(omissionRange('no list', 5)).toEqual({ low: 0.01, middle: 0.05, high: 0.25 });
    expect(omissionRange('list', 5).middle).toBe(0.003);
    expect(omissionRange('list', 20).middle).toBe(0.01);
    expect(omissionRange('ticked list', 20).middle).toBe(0.003);
    const { low, middle, high } = omissionRange('second look', 20);
    expect([middle, high / middle, middle / low].map((each) => Number(each.toPrecision(9)))).toEqual([0.0003, 3, 3]);
  });

  // by hand: two ways to go wrong, the ring left out or the stack put together wrong; the mast has more than ten steps, so p = 0.003: 1 − (1 − p)²
  test('of a hazard are exact', () => {
    expect(hazardChance(model, of('free-wheel-jams'))?.['ticked list'].middle).toBeCloseTo(1 - 0.997 ** 2, 12);
  });

  // law: each habit leaves out less than the one before
  test('fall from habit to habit', () => {
    for (const hazard of model.hazards.values()) {
      const chances = Object.values(hazardChance(model, hazard) ?? {});
      expect(chances).toHaveLength(4);
      for (const [i, { low, middle, high }] of chances.entries()) {
        expect(low < middle && middle < high).toBe(true);
        if (i > 0) expect(middle).toBeLessThan(chances[i - 1]!.middle);
      }
    }
  });
});

test('a second look is asked for by each step of which one slip ends in a crash or an injury, and by no other', () => {
  const grave = [...model.hazards.values()].filter(({ hazard }) => ['crash', 'injury'].includes(hazard.endsIn));
  const asked = asksSecondLook(model);
  const slips = [...machine.joints.keys(), ...machine.stacks.keys()].filter((step) => grave.some(({ hazard }) => missing(model, [step]).hazards.includes(hazard.id)));
  expect([...asked].toSorted()).toEqual(slips.toSorted());
});
