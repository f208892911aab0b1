import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { carriersOf, planBuild, stackFindings } from '@rotorwright/build';
import { driveDirections, figures, gearChoices, oneWayFacing, solveDrive, threadSense, turning } from '@rotorwright/figures';
import { readMachine, type Finding, type HazardEvent, type Machine } from '@rotorwright/machine';

const textOf = (name: string) => readFileSync(new URL(`../examples/${name}/machine.yaml`, import.meta.url), 'utf8');

function read(name: string, variant?: string): { readonly machine: Machine; readonly findings: readonly Finding[] } {
  const { machine, findings } = readMachine(textOf(name), variant === undefined ? {} : { variant });
  if (machine === undefined) throw new Error(`examples/${name} is no machine: ${codes(findings).join(', ')}`);
  return { machine, findings };
}

const codes = (findings: readonly Finding[]) => findings.map(({ code, path }) => `${code} ${path}`).toSorted();
const inRpm = (speed: number | undefined) => ((speed ?? Number.NaN) * 30) / Math.PI;
const files = ['turnstone', 'sanderling', 'whimbrel'] as const;
const whole = ['sanderling', 'whimbrel'] as const;
const readings: readonly (readonly [name: string, variant: string | undefined])[] = files.flatMap((name) => [[name, undefined] as const, ...[...read(name).machine.variants.keys()].map((variant) => [name, variant] as const)]);

/** Of the parts alone, all copies counted, kg. An independent route: no figure is asked. */
function massOfParts(machine: Machine): number {
  return [...machine.parts.values()].reduce((sum, part) => sum + (part.mass ?? 0) * part.instances.length, 0);
}

/** Centre of mass of the parts whose place is given, forward of the mast, m. */
function centreForward(machine: Machine): number {
  const placed = [...machine.parts.values()].flatMap(({ mass, at }) => (mass === undefined ? [] : [...(at?.values() ?? [])].map(([forward]) => ({ mass, forward }))));
  return placed.reduce((sum, { mass, forward }) => sum + mass * forward, 0) / placed.reduce((sum, { mass }) => sum + mass, 0);
}

/** Shafts, servos, rotors and parts that an event speaks of. */
function namesIn(event: HazardEvent): readonly string[] {
  if ('any' in event) return event.any.flatMap(namesIn);
  if ('all' in event) return event.all.flatMap(namesIn);
  if ('noTorque' in event) return event.noTorque;
  if ('noMotion' in event) return event.noMotion;
  return ['comesOff' in event ? event.comesOff : event.jams];
}

it('the variants of the examples are read as well', () => {
  expect(readings.map((reading) => reading.filter((word) => word !== undefined).join(' '))).toEqual(['turnstone', 'sanderling', 'sanderling calm', 'whimbrel', 'whimbrel short', 'whimbrel calm']);
});

describe.each(readings)('%s, variant %s', (name, variant) => {
  const { machine, findings } = read(name, variant);

  it('is read without a finding', () => {
    expect(codes(findings)).toEqual([]);
  });

  it('says that it is invented', () => {
    expect(machine.invented).toBe(true);
    expect(textOf(name).split('\n').filter((line) => line.startsWith('#')).join(' ')).toMatch(/every number.* (?:is|in this file is) invented/u);
  });

  it('turns each rotor within the band that it wants, and breaks none of its limits', () => {
    const set = figures(machine);
    expect(codes(set.findings)).toEqual([]);
    expect(machine.rotors.size).toBe(2);
    for (const { on, wanted } of machine.rotors.values()) {
      const speed = set.get(`speed ${on}`)?.value;
      expect(inRpm(speed)).toBeGreaterThanOrEqual(inRpm(wanted?.min ?? 0));
      expect(inRpm(speed)).toBeLessThanOrEqual(inRpm(wanted?.max ?? Infinity));
      if (variant !== undefined) expect(wanted?.max).toBeDefined();
    }
  });

  it('sets limits and measures only of figures that there are', () => {
    const set = figures(machine);
    expect([...machine.limits.values()].filter(({ of }) => set.get(of)?.value === undefined).map(({ of }) => of)).toEqual([]);
    expect([...machine.limits.values()].filter(({ source }) => !/invented/u.test(source ?? ''))).toEqual([]);
  });

  it('knows which way every shaft turns, and turns the main rotor clockwise from above', () => {
    const shafts = turning(machine, solveDrive(machine));
    expect(shafts.flatMap(({ shaft, missing }) => missing.map((path) => `${shaft}: ${path}`))).toEqual([]);
    // By hand: counter-clockwise engine or motor, one external mesh, no other reversal up to the mast.
    expect(shafts.find(({ shaft }) => shaft === 'mast')?.words).toBe('clockwise from above');
  });
});

describe('speeds by hand', () => {
  const speed = (name: string, shaft: string, variant?: string) => inRpm(figures(read(name, variant).machine).get(`speed ${shaft}`)?.value);

  it('Turnstone', () => {
    // By hand: 13,200 · 12/97 = 1,632.99 rpm; · 53/11 = 7,868.04 rpm.
    expect(speed('turnstone', 'mast')).toBeCloseTo(1632.99, 2);
    expect(speed('turnstone', 'tail')).toBeCloseTo(7868.04, 2);
  });

  it('Sanderling', () => {
    // By hand: 17,200 · 12/109 = 1,893.58 rpm; · 66/14 = 8,926.87 rpm.
    expect(speed('sanderling', 'mast')).toBeCloseTo(1893.58, 2);
    expect(speed('sanderling', 'tail-rotor')).toBeCloseTo(8926.87, 2);
  });

  it('Whimbrel and its variants', () => {
    // By hand: 14,250 · 14/113 = 1,765.49 rpm; · 47/10 · 19/18 · 17/17 = 4.96111 times, 8,758.78 rpm.
    expect(speed('whimbrel', 'mast')).toBeCloseTo(1765.49, 2);
    expect(speed('whimbrel', 'tail-rotor')).toBeCloseTo(8758.78, 2);
    // By hand: 14,250 · 15/113 = 1,891.59 rpm; · 45/11 · 19/18 = 8,168.24 rpm.
    expect(speed('whimbrel', 'mast', 'short')).toBeCloseTo(1891.59, 2);
    expect(speed('whimbrel', 'tail-rotor', 'short')).toBeCloseTo(8168.24, 2);
  });
});

describe('directions by hand', () => {
  const wordsOf = (name: string, shaft: string) => turning(read(name).machine, solveDrive(read(name).machine)).find((each) => each.shaft === shaft)?.words;

  it('the upper blade of the tail of Whimbrel goes towards the nose', () => {
    // By hand: tail input up; bevel up to aft, so the tube turns about fore; bevel fore to right, so the tail turns about left: the top goes forward.
    expect(wordsOf('whimbrel', 'tail-rotor')).toBe('top towards the nose');
  });

  it('the upper blade of the tail of Sanderling and Turnstone goes towards the tail', () => {
    // By hand: the mast turns about down; a quarter turn about aft brings down to right; a bevel from down to left turns it about right.
    expect(wordsOf('sanderling', 'tail-rotor')).toBe('top towards the tail');
    expect(wordsOf('turnstone', 'tail')).toBe('top towards the tail');
  });
});

describe('Turnstone', () => {
  it('is a file of fifteen lines: a source, two meshes, two rotors', () => {
    expect(textOf('turnstone').trimEnd().split('\n')).toHaveLength(15);
    const { machine } = read('turnstone');
    expect([machine.couplings.size, machine.rotors.size, machine.parts.size]).toEqual([2, 2, 0]);
  });
});

describe.each(readings.filter(([name]) => name !== 'turnstone'))('%s, variant %s, weighed', (name, variant) => {
  const { machine } = read(name, variant);

  it('has parts that weigh what the machine weighs, less its screws', () => {
    const parts = massOfParts(machine);
    expect(parts).toBeLessThan(machine.mass ?? 0);
    expect(parts).toBeGreaterThan(0.85 * (machine.mass ?? Infinity));
  });

  it('hangs level: its centre of mass is within 5 mm of the mast', () => {
    expect(Math.abs(centreForward(machine))).toBeLessThan(0.005);
  });
});

describe.each(whole)('%s as a whole', (name) => {
  const { machine } = read(name);
  const plan = planBuild(machine);

  it('keeps every part in place by a joint, a stack or the ground, or lets it slide', () => {
    const tied = new Set([
      ...[...machine.joints.values()].flatMap(({ each }) => each.flatMap(({ seat, holds }) => [seat, ...holds])),
      ...[...machine.stacks.values()].flatMap(({ order, spindle, housing }) => [spindle, ...housing, ...order.flatMap((item) => ('part' in item ? [item.part] : []))]),
    ]);
    const loose = [...machine.parts.values()].flatMap((part) => (part.ground || part.movesOn !== undefined ? [] : part.instances.filter((id) => !tied.has(id))));
    expect(loose).toEqual([]);
  });

  it('states the lock of every joint; a thread has class, engagement, and a torque or snug', () => {
    expect([...machine.joints.values()].filter(({ locks }) => locks === undefined).map(({ id }) => id)).toEqual([]);
    expect([...machine.joints.values()].filter((joint) => joint.thread !== undefined && (joint.class === undefined || joint.engagement === undefined || joint.torque === undefined)).map(({ id }) => id)).toEqual([]);
  });

  it('gives a reason wherever fewer copies are enough', () => {
    expect([...machine.joints.values()].filter(({ enough, why }) => enough !== undefined && why === undefined).map(({ id }) => id)).toEqual([]);
  });

  it('puts no compound on an insert nut', () => {
    const inserts = [...machine.joints.values()].filter(({ locks }) => locks?.some(({ grade }) => grade === 'insert'));
    expect(inserts.length).toBeGreaterThan(2);
    expect(inserts.filter(({ locks }) => locks?.length !== 1).map(({ id }) => id)).toEqual([]);
  });

  it('has an action for every step, and an order for all of them', () => {
    expect(plan.steps.size).toBeGreaterThan(machine.joints.size);
    expect([...plan.steps.values()].filter(({ action }) => action.trim() === '').map(({ id }) => id)).toEqual([]);
    const place = new Map([...plan.steps.keys()].map((id, index) => [id, index]));
    expect([...plan.steps.values()].filter((step) => step.after.some((id) => (place.get(id) ?? -1) > (place.get(step.id) ?? -1))).map(({ id }) => id)).toEqual([]);
  });

  it('is warned of one thing: the thumb nuts of the canopy have no lock', () => {
    expect(codes(plan.findings)).toEqual(['lock/one-line modules.body.joints.canopy-nut']);
  });

  it('knows everything that its hazards speak of', () => {
    const known = new Set([...machine.shafts.keys(), ...machine.rotors.keys(), ...machine.controls.servos.keys(), ...machine.parts.keys()]);
    const named = [...machine.hazards.values()].flatMap(({ when }) => namesIn(when));
    expect(machine.hazards.size).toBeGreaterThan(5);
    expect(named.length).toBeGreaterThan(machine.hazards.size);
    expect(named.filter((name) => !known.has(name))).toEqual([]);
  });

  it('has a bearing for every push, and knows how each one-way clutch faces', () => {
    const drive = solveDrive(machine);
    const directions = driveDirections(machine, drive);
    expect(codes(stackFindings(machine, directions))).toEqual([]);
    expect(directions.pushes.filter(({ coupling, shaft }) => carriersOf(machine, directions, coupling, shaft).length === 0).map(({ coupling, shaft }) => `${coupling} on ${shaft}`)).toEqual([]);
    expect(oneWayFacing(machine, drive).filter(({ locks }) => locks === undefined)).toEqual([]);
  });

  it('offers gears that suit, and some that only the centre distance rules out', () => {
    const { options } = gearChoices(machine);
    const possible = options.filter(({ ruledOut }) => ruledOut.length === 0);
    expect(possible.length).toBeGreaterThan(1);
    expect(possible.length).toBeLessThan(options.length / 2);
    expect(options.some(({ ruledOut }) => ruledOut.some(({ kind }) => kind === 'centre'))).toBe(true);
  });
});

describe('Whimbrel', () => {
  const { machine } = read('whimbrel');
  const drive = solveDrive(machine);

  it('is complete: counted before copies of a module are made', () => {
    const once = <Kind extends { readonly path: string }>(things: ReadonlyMap<string, Kind>) => new Set([...things.values()].map(({ path }) => path)).size;
    expect(once(machine.parts)).toBeGreaterThanOrEqual(120);
    expect(once(machine.joints)).toBeGreaterThanOrEqual(90);
    expect(once(machine.stacks)).toBeGreaterThanOrEqual(12);
    expect(once(machine.modules)).toBeGreaterThanOrEqual(10);
  });

  it('is tightened by drive torque on each thread that carries it, and not loosened by the starter', () => {
    const { threads, findings } = threadSense(machine, drive);
    expect(codes(findings)).toEqual([]);
    const carrying = threads.filter(({ driven }) => driven !== 'no torque');
    // By hand: both go in downwards, right-handed, on shafts that turn counter-clockwise from above, and the screwed part lags.
    expect(carrying.map(({ joint, driven }) => [joint, driven])).toEqual([['engine/carrier-thread', 'tightens'], ['clutch/pinion-thread', 'tightens']]);
    expect(threads.filter(({ starting }) => starting !== 'no torque')).toEqual([]);
  });

  it('pushes its pinion down and its main gear up', () => {
    // By hand: a left-hand driver pushes against its spin vector, which points up.
    const directions = driveDirections(machine, drive);
    expect(directions.pushes.filter(({ coupling }) => coupling === 'main-mesh').map(({ words, coupling, shaft }) => [words, carriersOf(machine, directions, coupling, shaft)])).toEqual([
      ['pushes down', ['clutch/bearing-high']],
      ['pushes up', ['mast/hub-bearing-high']],
    ]);
  });

  it('has a pinion and a second gear that only the slots rule out', () => {
    // By hand: (14 + 115)/(2 cos 11°) = 65.71 mm, the slot ends at 65.4 mm; (45 + 10)/2 = 27.5 mm, the slot begins at 27.9 mm.
    const alone = gearChoices(machine).options.filter(({ ruledOut }) => ruledOut.length === 1 && ruledOut[0]?.kind === 'centre').map(({ teeth }) => Object.values(teeth).join(' '));
    expect(alone).toContain('14 115 47 10');
    expect(alone).toContain('14 113 45 10');
  });
});
