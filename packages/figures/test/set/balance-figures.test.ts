import { balanceOf, figures, verdictOf, working, workingLines } from '@rotorwright/figures';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { read } from '../read.ts';

/** A machine of round numbers, so that every centre can be worked in the head. All of it is invented. */
const text = `
rotorwright: 1
machine: {name: Scale, mass: 4 kg}
power:
  engine: {on: crank, speed: 9549.296585513721 rpm, turns: counter-clockwise from above}
  tank: {part: body/tank, volume: 1000 cm³, density: 800 kg/m³, filled: 50 %}
shafts: {crank: {axis: up}, mast: {axis: up}}
drive: {mesh: {kind: external, driver: {on: crank, teeth: 10}, driven: {on: mast, teeth: 100}}}
rotors: {main: {on: mast, part: body/hub, diameter: 1000 mm}}
modules:
  body:
    parts:
      hub: {mass: 1 kg, at: [10 mm, 0 mm, 200 mm]}
      tank: {mass: 100 g, at: [60 mm, 0 mm, 0 mm]}
      wheel: {mass: 500 g, at: [-90 mm, 20 mm, 100 mm]}
  nose:
    mass: 1 kg
    parts:
      pack: {mass: 600 g, at: [110 mm, 0 mm, 0 mm]}
      lid: {mass: 200 g, at: [150 mm, 0 mm, 0 mm]}
  tail: {mass: 1 kg, at: [-240 mm, 0 mm, 50 mm]}
balance:
  movable: {pack: {part: nose/pack, along: 100 to 400 mm}}
  ballast: {front: {at: [210 mm, 0 mm, 0 mm]}}
  spun: {wheel: {on: crank, parts: [body/wheel], grade: 6.3 mm/s, radius: 50 mm}}
`;
const set = figures(read(text));
const value = (name: string, of = set): number => of.get(name)!.value!;

describe('the centre of mass, by hand', () => {
  // From the hub: hub 1 kg at 0, tank 0.1 at 50, wheel 0.5 at −100, pack 0.6 at 100, lid 0.2 at 140, fuel 0.4 at 50 mm;
  // the nose weighs 0.2 kg more than pack and lid, at their centre (60 + 28)/0.8 = 110 mm; the tail 1 kg at −250 mm.
  const dry = 0.1 * 50 - 0.5 * 100 + 0.6 * 100 + 0.2 * 140 + 0.2 * 110 - 250;

  test('3.6 kg dry and half a tank of 0.8 kg make 4 kg', () => expect(value('mass-known')).toBeCloseTo(4, 12));

  test('moments over masses, from the hub', () => {
    expect(value('centre-ahead')).toBeCloseTo((dry + 0.4 * 50) / 4 / 1000, 12);
    expect(value('centre-left')).toBeCloseTo((0.5 * 20) / 4 / 1000, 12);
    // Below the hub: tank, fuel, pack, lid and the rest of the nose 200 mm, wheel 100, tail 150.
    expect(value('centre-height')).toBeCloseTo(-((0.1 + 0.4 + 1) * 200 + 0.5 * 100 + 150) / 4 / 1000, 12);
  });

  test('fuel burns off at the tank: full 0.8 kg, empty none', () => {
    expect(value('centre-ahead full')).toBeCloseTo((dry + 0.8 * 50) / 4.4 / 1000, 12);
    expect(value('centre-ahead empty')).toBeCloseTo(dry / 3.6 / 1000, 12);
  });

  test('law: yaw is no more than roll and pitch together, and each no less than a part alone', () => {
    const [roll, pitch, yaw] = ['inertia-roll', 'inertia-pitch', 'inertia-yaw'].map((name) => value(name)) as [number, number, number];
    expect(yaw).toBeLessThan(roll + pitch);
    expect(pitch).toBeGreaterThan(1 * (0.25 + value('centre-ahead')) ** 2);
  });

  test('what is tried out as mass of the machine says nothing about its parts', () => {
    expect(value('centre-ahead', figures(read(text), { mass: 6 }))).toBe(value('centre-ahead'));
  });

  test('its working names each part with its line, and what was made of the entry', () => {
    const lines = workingLines(working(set, 'centre-ahead')!, 'scale.yaml');
    expect(lines.find((line) => line.includes('Wheel: '))).toMatch(/Wheel: mass 500 g \(scale\.yaml:15\), position −100; 20; −100 mm \(scale\.yaml:15\)/u);
    expect(lines.find((line) => line.includes('screws, wires'))).toMatch(/Nose: screws, wires and the rest: mass 200 g \(scale\.yaml:17\), position 110; 0; −200 mm/u);
  });
});

describe('what moves the centre, by hand', () => {
  test('to the mast: 4 kg · 41.25 mm over 0.6 kg, or over the 200 mm to the front', () => {
    expect(value('centre-ahead')).toBeCloseTo(-0.04125, 12);
    expect(value('shift pack')).toBeCloseTo((4 * 0.04125) / 0.6, 12);
    expect(value('ballast front')).toBeCloseTo((4 * 0.04125) / 0.2, 12);
  });

  test('the pack would go from 110 to 385 mm, and can; to 450 mm it cannot, and stops at 400', () => {
    expect(balanceOf(set).moves[0]).toMatchObject({ now: 0.11, to: expect.closeTo(0.385, 12) });
    expect(balanceOf(set).moves[0]).not.toHaveProperty('stop');
    const [move] = balanceOf(figures(read(text), { wantedCentre: 0.00975 })).moves;
    expect(move).toMatchObject({ to: expect.closeTo(0.45, 12), stop: { at: 0.4, centre: expect.closeTo(-0.04125 + (0.6 * 0.29) / 4, 12) } });
  });

  test('property: moved or weighted as said, the centre is where it is wanted', () => {
    fc.assert(fc.property(fc.integer({ min: -30, max: 60 }), (wanted) => {
      const wantedCentre = wanted / 1000;
      const asked = figures(read(text), { wantedCentre });
      const to = 110 + value('shift pack', asked) * 1000;
      const moved = figures(read(text.replace('pack: {mass: 600 g, at: [110 mm', `pack: {mass: 600 g, at: [${to} mm`).replace('  nose:\n    mass: 1 kg\n', '  nose:\n    mass: 1 kg\n    at: [PLACE mm, 0 mm, 0 mm]\n').replace('PLACE', String((600 * to + 200 * 150 + 200 * 120) / 1000))));
      expect(value('centre-ahead', moved)).toBeCloseTo(wantedCentre, 9);
      const ballast = asked.get('ballast front')!.value;
      if (ballast === undefined) return;
      const added = figures(read(text.replace('mass: 4 kg', `mass: ${4 + ballast} kg`).replace('  tail: {mass', `  added: {mass: ${ballast || 1e-9} kg, at: [210 mm, 0 mm, 0 mm]}\n  tail: {mass`)));
      expect(value('centre-ahead', added)).toBeCloseTo(wantedCentre, 6);
    }), { numRuns: 15 });
  });

  test('a weight on the wrong side is no answer, and says so', () => {
    const behind = figures(read(text), { wantedCentre: -0.1 });
    expect(behind.get('ballast front')).not.toHaveProperty('value');
    expect(behind.get('ballast front')!.warnings.join(' ')).toMatch(/draws the centre away/u);
  });

  test('without it: the machine less its tail has its centre (−165 + 250)/3 mm ahead, 69.6 mm further forward', () => {
    expect(balanceOf(set).modules.find(({ id }) => id === 'tail')!.without).toBeCloseTo((-165 + 250) / 3 / 1000 + 0.04125, 12);
  });
});

describe('limits of the centre', () => {
  const limited = (window: string) => figures(read(`${text}limits: {centre: {of: centre-ahead, ${window}, source: rule}}\n`));

  it('holds them with every filling of the tank', () => {
    // Empty: (185 − 350)/3.6... by hand −51.4 mm; half −41.25; full −33 mm.
    const { findings } = limited('at-least: -45 mm, at-most: 45 mm');
    expect(findings).toMatchObject([{ code: 'limit/exceeded', path: 'limits.centre', values: { name: 'centre-ahead empty', value: '−51.3889 mm', limit: '−45 mm' } }]);
    expect(balanceOf(limited('at-least: -45 mm, at-most: 45 mm')).fillings.map(({ word }) => word)).toEqual(['holds', 'holds', 'exceeded']);
    expect(limited('at-least: -60 mm, at-most: 45 mm').findings).toEqual([]);
    expect(balanceOf(limited('at-least: -45 mm, at-most: 45 mm')).fillings.map(verdictOf)).toEqual(['holds', 'holds', 'too tail-heavy']);
    expect(balanceOf(limited('at-least: -60 mm, at-most: -45 mm')).fillings.map(verdictOf)).toEqual(['too nose-heavy', 'too nose-heavy', 'holds']);
    expect(balanceOf(set).fillings.map(verdictOf)).toEqual(['not assessed', 'not assessed', 'not assessed']);
  });

  it('wants the centre in the middle of them', () => {
    expect(limited('at-least: -60 mm, at-most: 20 mm').get('shift pack')!.inputs['wanted']).toMatchObject({ entry: 'limits.centre', value: expect.closeTo(-0.02, 12) });
  });
});

describe('half a machine', () => {
  it('has no centre while a tenth of its mass is not known, and says what to weigh', () => {
    const light = figures(read(text.replace('wheel: {mass: 500 g, at', 'wheel: {at')));
    expect(light.get('centre-ahead')).toMatchObject({ missing: ['modules.body.parts.wheel.mass'] });
    expect(light.get('centre-ahead')).not.toHaveProperty('value');
    expect(light.get('mass-known')!.value).toBeCloseTo(3.5, 12);
  });

  it('says how far off the centre can be when a little is not known: at the tail, at the nose', () => {
    const light = figures(read(text.replace('mass: 4 kg', 'mass: 4.2 kg')));
    // 0.2 kg at the tail's −250 mm, or at the lid's 140 mm.
    expect(value('centre-ahead rest-aft', light)).toBeCloseTo((-165 - 0.2 * 250) / 4.2 / 1000, 12);
    expect(value('centre-ahead rest-fore', light)).toBeCloseTo((-165 + 0.2 * 140) / 4.2 / 1000, 12);
    expect(light.get('centre-ahead')!.warnings.join(' ')).toContain('200 g of the machine’s 4200 g are nowhere in the file.');
    expect(set.get('centre-ahead rest-aft')).toBeUndefined();
  });

  it('finds parts that are heavier than their module, or than the machine', () => {
    const heavy = figures(read(text.replace('lid: {mass: 200 g', 'lid: {mass: 500 g').replace('mass: 4 kg', 'mass: 3.9 kg')));
    expect(heavy.get('centre-ahead')!.warnings).toEqual(['modules.nose.mass is 1000 g, and its parts are 1100 g: weigh again.', 'The parts are 200 g heavier than the machine.']);
  });

  it('takes a part without a place into what its weighed module has besides', () => {
    const { bodies, whole } = balanceOf(figures(read(text.replace('lid: {mass: 200 g, at: [150 mm, 0 mm, 0 mm]}', 'lid: {mass: 200 g}'))));
    expect(bodies.placeless).toEqual([]);
    expect(whole.find(({ id }) => id === 'nose')).toMatchObject({ mass: expect.closeTo(0.4, 12), at: [expect.closeTo(0.11, 12), 0, 0] });
  });

  it('asks for the hub, from which everything is said', () => {
    const hubless = text.replace('part: body/hub, ', '');
    expect(figures(read(hubless)).get('centre-ahead')!.missing).toEqual(['rotors.main.at']);
    expect(value('centre-ahead', figures(read(hubless.replace('diameter: 1000 mm', 'diameter: 1000 mm, at: [10 mm, 0 mm, 200 mm]'))))).toBe(value('centre-ahead'));
  });

  it('asks a machine without modules for modules', () => {
    expect(figures(read('rotorwright: 1\nmachine: {name: Bare}\n')).get('centre-ahead')!.missing).toEqual(['modules', 'rotors.main.at']);
  });
});

describe('what turns, by hand', () => {
  test('0.5 kg at 1,000 rad/s and 6.3 mm/s: 3.15 g·mm, 3.15 N, 63 mg at 50 mm', () => {
    expect(value('spun-mass wheel')).toBeCloseTo(0.5, 12);
    expect(value('unbalance wheel')).toBeCloseTo(3.15e-6, 12);
    expect(value('unbalance-force wheel')).toBeCloseTo(3.15, 9);
    expect(value('unbalance-mass wheel')).toBeCloseTo(63e-6, 12);
  });

  test('a gram at 500 mm and 100 rad/s pulls with 5 N', () => expect(value('tip-gram main')).toBeCloseTo(5, 9));

  test('a grade that is not there is asked for', () => {
    expect(figures(read(text.replace('grade: 6.3 mm/s, ', ''))).get('unbalance wheel')!.missing).toEqual(['balance.spun.wheel.grade']);
  });

  test('the nose hangs up by atan(41.25/125)', () => expect(value('hanging-tilt')).toBeCloseTo(Math.atan2(-41.25, 125), 9));
});
