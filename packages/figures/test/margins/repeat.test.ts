import { readFileSync } from 'node:fs';
import { figures, margins, prepareFigures, type Conditions, type LoadCaseId, type Margins } from '@rotorwright/figures';
import { describe, expect, test } from 'vitest';
import { read } from '../read.ts';
import { loaded } from './loaded.ts';

const example = (name: string): string => readFileSync(new URL(`../../../../examples/${name}/machine.yaml`, import.meta.url), 'utf8');

/** All that a run says, its working included. */
const said = ({ all, set, cases, orders, modes }: Margins) => ({ all, figures: set.all, outputs: set.all.map(({ name }) => set.outputs(name)), cases, orders, modes });

type Moment = readonly [conditions: Conditions, one?: LoadCaseId];

function compare(text: string, moments: readonly Moment[]): readonly Margins[] {
  const machine = read(text);
  const reckon = prepareFigures(machine);
  let last: Margins | undefined;
  return moments.map(([conditions, one]) => {
    last = margins(reckon(conditions), one, last);
    expect(said(last), JSON.stringify([conditions, one])).toEqual(said(margins(figures(machine, conditions), one)));
    return last;
  });
}

describe('margins after a run before them are those of a run by itself (law)', () => {
  for (const name of ['whimbrel', 'sanderling', 'turnstone']) {
    test(`for ${name}, at other speeds, masses and heights, for one load case, with another pinion`, () => {
      const mesh = [...read(example(name)).couplings.values()].find(({ driver }) => driver.teeth !== undefined)!.driver;
      const teeth = { [`${mesh.path}.teeth`]: mesh.teeth! + 1 };
      compare(example(name), [[{ sourceSpeed: 700 }], [{ mass: 11, altitude: 2500 }], [{}, 'overspeed'], [{ altitude: 900 }, 'overspeed'], [{ teeth }], [{ state: 'autorotation' }], [{}]]);
    });
  }

  test('where another load case comes to govern, and back', () => {
    const governs = compare(loaded, [0.5, 1, 1.5, 2, 1, 0.5].map((share): Moment => [{ sourceSpeed: (share * 10_000 * Math.PI) / 30 }])).map(({ all }) => all.map(({ loadCase }) => loadCase).join(' '));
    expect(new Set(governs).size).toBeGreaterThan(1);
  });

  test('where the loads are gone, and there again', () => {
    const counts = compare(loaded, [[{}], [{ sourceSpeed: 0 }], [{}]]).map(({ all }) => all.length);
    expect(counts[1]).toBeLessThan(counts[0]!);
    expect(counts[2]).toBe(counts[0]);
  });
});

test('what is done again is not made again: figures of two runs share what they were made from', () => {
  const machine = read(example('whimbrel'));
  const reckon = prepareFigures(machine);
  const first = margins(reckon());
  const second = margins(reckon({ altitude: 1200, mass: 8 }), undefined, first);
  const life = first.all.find(({ name }) => name.startsWith('margin bearing-life'))!.capacity;
  expect(second.set.get(life)!.inputs).toBe(first.set.get(life)!.inputs);
  expect(second.set.get(life)!.value).not.toBe(first.set.get(life)!.value);
  expect(second.set.get('rotor-thrust main hover')?.value).not.toBe(first.set.get('rotor-thrust main hover')?.value);
});

test('of load cases that are alike but for rounding the first governs, at any speed', () => {
  const machine = read(example('whimbrel'));
  const speed = machine.power.engine!.speed!;
  const cases = [0.85, 0.9, 0.97, 1, 1.03, 1.08, 1.13].map((share) => margins(figures(machine, { sourceSpeed: share * speed })).all.find(({ name }) => name === 'margin stress engine/crank')!.loadCase);
  expect(new Set(cases)).toEqual(new Set(['hard-collective']));
});
