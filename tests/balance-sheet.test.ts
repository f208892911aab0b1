import { answer, isCalcProblem, type CalcAnswer } from '@rotorwright/calculations';
import { planBuild } from '@rotorwright/build';
import { balanceOf, bladeOrder, figures } from '@rotorwright/figures';
import { replay, type BuildState, type StepState } from '@rotorwright/logbook';
import { readMachine } from '@rotorwright/machine';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { filledBlades, filledTracking } from '../apps/web/src/pages/balance/filled.ts';
import { sideLayout } from '../apps/web/src/pages/balance/side-layout.ts';

const machineOf = (name: string) => readMachine(readFileSync(path.resolve(import.meta.dirname, `../examples/${name}/machine.yaml`), 'utf8')).machine!;

describe.each(['whimbrel', 'sanderling'])('the side view of %s', (name) => {
  const machine = machineOf(name);
  const summary = balanceOf(figures(machine));
  const layout = sideLayout(machine, summary, 800)!;

  it('is to scale: distances on paper are those of the file', () => {
    const { paper, bodies } = layout;
    for (const { body, x, y } of bodies) {
      expect((paper.x - x) / paper.scale).toBeCloseTo(body.at[0] - summary.hub![0], 12);
      expect((paper.y - y) / paper.scale).toBeCloseTo(body.at[2] - summary.hub![2], 12);
    }
  });

  it('gives circles of areas that go with the masses, the light ones on top', () => {
    const [a, b] = layout.bodies;
    expect((a!.r / b!.r) ** 2).toBeCloseTo(a!.body.mass / b!.body.mass, 9);
    expect(layout.bodies.map(({ r }) => r)).toEqual(layout.bodies.map(({ r }) => r).toSorted((one, other) => other - one));
  });

  it.each([320, 800, 1200])('keeps all within %d px, and no name on another', (width) => {
    const { bodies, labels, paper, tail } = sideLayout(machine, summary, width)!;
    for (const { x, y } of bodies) expect(x >= 0 && x <= width && y >= 0 && y <= paper.height).toBe(true);
    expect(tail!.x + tail!.r).toBeLessThanOrEqual(width);
    const boxes = labels.map(({ text, x, y }) => ({ from: x, to: x + text.length * 6.6, y }));
    for (const box of boxes) {
      expect(box.from).toBeGreaterThanOrEqual(0);
      for (const other of boxes) expect(box === other || box.y !== other.y || box.to <= other.from || other.to <= box.from).toBe(true);
    }
  });
});

it('draws nothing where no hub is known', () => {
  const { machine } = readMachine('rotorwright: 1\nmachine: {name: Bare}\nmodules: {nose: {mass: 1 kg, at: [1 mm, 0 mm, 0 mm]}}\n');
  expect(sideLayout(machine!, balanceOf(figures(machine!)), 800)).toBeUndefined();
});

describe('what to do to two blades', () => {
  const even = { mass1: '200 g', centre1: '400 mm', mass2: '200 g', centre2: '400 mm', tapeRadius: '700 mm', speed: 180, boltRadius: '80 mm', tipRadius: '780 mm' };
  const order = (inputs: object): string => {
    const found = answer('blade-match', { ...even, ...inputs });
    if (isCalcProblem(found)) throw new Error(JSON.stringify(found.problems));
    return bladeOrder({ ...even, ...inputs }, found as CalcAnswer).join('\n');
  };

  it('is nothing for an even pair', () => expect(order({})).toMatch(/^The pair is even/u));

  it('is one tape where one place evens masses and moments: 2 g · 400 mm over 2 g', () => {
    expect(order({ mass2: '198 g' })).toMatch(/Tape 2 g on blade 2, 400 mm from the rotor axis: that evens masses and moments at once/u);
  });

  it('is mass first, then moment, where that place is off the blade', () => {
    // By hand: blade 2 is 1 g lighter and its centre 6 mm further out: even the masses, then 200 g · 6 mm over 700 mm on blade 1.
    expect(order({ mass2: '199 g', centre2: '406 mm' })).toMatch(/Tape 1 g on blade 2, at its own centre, 406 mm.*\n.*Then tape 1\.71 g on blade 1, 700 mm/u);
  });

  it('is the edges first, and a leading tip is not told again as a centre that lies ahead', () => {
    expect(order({ tipLead: '2 mm' })).toMatch(/^Set the edges in line: the tip of blade 1 stands 2 mm ahead\.\nUntil then/u);
    expect(order({ chordwise1: '1 mm' })).toMatch(/The centre of blade 1 lies further ahead, by 200 g·mm/u);
  });

  it('is even after it was done as said', () => {
    const [mass2, tape] = [199, (200 * 6) / 700];
    // The tape of 1 g at its own centre leaves blade 2 at 200 g and 406 mm; the other makes blade 1 heavier at 700 mm.
    const first = 200 + tape;
    const found = answer('blade-match', { ...even, mass1: `${first} g`, centre1: `${(200 * 400 + tape * 700) / first} mm`, mass2: `${mass2 + 1} g`, centre2: '406 mm' }) as CalcAnswer;
    expect((found.outputs['momentDifference'] as { value: number }).value).toBeCloseTo(0, 12);
  });
});

describe('what stands in the fields', () => {
  const machine = machineOf('whimbrel');
  const set = figures(machine);
  const state = replay(planBuild(machine), [], new Date(0));

  it('is the pair of the file, bolt and centre added: 83 + 316 mm', () => {
    const { inputs, example } = filledBlades(set, state);
    expect(inputs).toMatchObject({ mass1: '224 g', mass2: '224 g', centre1: '399 mm', boltRadius: '83 mm', tipRadius: '773 mm' });
    expect(example).toEqual([]);
  });

  it('is what was weighed at the bench, the last time of each blade', () => {
    const weighed = (...values: readonly number[]): StepState => ({ state: 'signed', history: values.map((value, index) => ({ entry: index + 1, kind: 'signed', at: '', by: '', measured: { value, unit: 'kg' } })) });
    const book: BuildState = { ...state, steps: new Map([...state.steps, ['main-grip.A/blade-mass', weighed(0.2236)], ['main-grip.B/blade-mass', weighed(0.23, 0.2244)]]) };
    expect(filledBlades(set, book).inputs).toMatchObject({ mass1: '223.6 g', mass2: '224.4 g' });
    const taken = weighed(0.2231, 0.3);
    const corrected: StepState = { ...taken, history: taken.history.map((event) => (event.entry === 2 ? { ...event, takenBack: 3 } : event)) };
    expect(filledBlades(set, { ...state, steps: new Map([...state.steps, ['main-grip.A/blade-mass', corrected]]) }).inputs).toMatchObject({ mass1: '223.1 g' });
    const one: BuildState = { ...state, steps: new Map([...state.steps, ['main-grip.B/blade-mass', weighed(0.2244)]]) };
    expect(filledBlades(set, one).inputs).toMatchObject({ mass1: '224 g', mass2: '224.4 g' });
  });

  it('is for the track one blade alone, with arm and thread of its link', () => {
    const { inputs, example } = filledTracking(set);
    // By hand: at least the mass at its centre, 0.224 · 0.399²; at most all of it at the tip.
    const inertia = Number((inputs['inertia'] as string).split(' ')[0]);
    expect(inertia).toBeGreaterThan(0.224 * 0.399 ** 2);
    expect(inertia).toBeLessThan(0.224 * 0.773 ** 2);
    // By hand: the ball stands 30 cos 2° + 6 sin 2° from the feathering axis, and a link that leans by 1 mm in 69 hardly changes that; M2.5 has 0.45 mm.
    expect(Number((inputs['arm'] as string).split(' ')[0])).toBeCloseTo(30 * Math.cos(Math.PI / 90) + 6 * Math.sin(Math.PI / 90), 1);
    expect(inputs['threadPitch']).toBe('0.45 mm');
    expect(example).toEqual([expect.stringMatching(/^How much higher/u), expect.stringMatching(/^Lift slope/u)]);
  });
});
