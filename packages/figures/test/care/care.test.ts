import { bearingWords, careAt, careOf, careWants, figures, meshWords, working } from '@rotorwright/figures';
import { describe, expect, test } from 'vitest';
import { read } from '../read.ts';

/** A pinion on two bearings in a block, a plastic wheel, a frame of carbon plate. Every number is invented. */
const file = ({ centre = '50 to 52 mm', bearing = 'housing-fit: K7', axis = 'up', ground = 'carbon plate', wheel = 'POM' } = {}): string => `
rotorwright: 1
machine: {name: Plover, invented: true}
power: {engine: {on: crank, speed: 12000 rpm}}
shafts:
  crank: {axis: ${axis}, part: block/pinion}
  wheel: {axis: ${axis}, part: block/wheel}
drive:
  mesh: {kind: external, module: 1 mm, width: 10 mm, centre: ${centre}, driver: {on: crank, teeth: 20, part: block/pinion}, driven: {on: wheel, teeth: 80, part: block/wheel}}
modules:
  block:
    parts:
      plate: {kind: plate, ground: true, material: ${ground}}
      mount: {kind: housing, material: aluminium 7075}
      pinion: {kind: gear, material: steel}
      wheel: {kind: gear, material: ${wheel}}
      low: {kind: deep-groove, bore: 8 mm, outer: 22 mm, width: 7 mm, ${bearing}}
      high: {kind: deep-groove, bore: 8 mm, outer: 22 mm, width: 7 mm}
    stacks:
      main: {spindle: pinion, housing: mount, ends: [down, up], order: [{shoulder: pinion}, low, {shoulder: mount}, high, ring]}
    joints:
      ring: {kind: circlip, on: pinion, holds: high, lock: press}
`;
const care = (text = file()) => careOf(figures(read(text)));
const bearing = (text: string, id = 'block/low') => care(text).bearings.find(({ instance }) => instance === id)!;

describe('where to set a mesh', () => {
  test('is where it never binds: nothing is left on the worst day, and something at assembly', () => {
    const [mesh] = care().meshes;
    expect(mesh!.hot.value).toBe(0);
    expect(mesh!.backlash.value).toBeGreaterThan(0);
    expect(mesh!.cold.value).toBeGreaterThan(mesh!.backlash.value!);
    // By hand, to first order: POM grows (110·10⁻⁶ · 40 K + 0.2 %) of its 40 mm, steel 11.7·10⁻⁶ · 40 K of its 10 mm; the plate hardly.
    expect(mesh!.distance.value! * 1000 - 50).toBeGreaterThan(0.9 * 40 * (110e-6 * 40 + 0.002));
    expect(mesh!.distance.value! * 1000 - 50).toBeLessThan(1.1 * (40 * (110e-6 * 40 + 0.002) + 10 * 11.7e-6 * 40));
    expect(mesh!.note).toBeUndefined();
  });

  test('says when the slots of the frame do not reach that far', () => expect(care(file({ centre: '50 to 50.1 mm' })).meshes[0]!.note).toMatch(/slots/u));

  test('wants the expansion of a material that nobody knows, by its entry', () => {
    const { distance } = care(file({ wheel: 'walnut' })).meshes[0]!;
    expect(distance).not.toHaveProperty('value');
    expect(distance.missing).toEqual(['materials.walnut.expansion']);
  });

  test('wants what holds the axes apart where nothing fixed is named', () => expect(care(file().replace('ground: true, ', '')).meshes[0]!.distance.missing).toEqual(['drive.mesh.between']));
});

describe('how warm a housing must be', () => {
  test('is what its hole, made as the file says, wants on a bearing of nominal size', () => {
    // By hand: K7 at 22 mm is +6/−15 µm (ISO 286-2): (15 + 5) µm over 23.4·10⁻⁶/K · 22 mm = 38.85 K, from 20 °C; seal and grease stand 80 °C.
    expect(bearing(file()).warmth.value).toBeCloseTo(293.15 + 20 / (23.4 * 0.022), 6);
    expect(bearing(file()).spare.value).toBeCloseTo(60 - 20 / (23.4 * 0.022), 6);
    expect(JSON.stringify(working(care().set, 'warm block/low'))).toContain('modules.block.parts.low.housing-fit');
  });

  test('goes by the press joint that holds it, in the part that has the seat', () => {
    const pressed = file({ bearing: 'material: steel' }).replace('    joints:', '    joints:\n      seat: {kind: press, in: mount, holds: low, fit: N7, lock: retaining}');
    // By hand: N7 at 22 mm is −7/−28 µm: 33 µm.
    expect(bearing(pressed).warmth.value).toBeCloseTo(293.15 + 33 / (23.4 * 0.022), 6);
  });

  test('wants how the hole is made where nothing says it', () => expect(bearing(file(), 'block/high').warmth.missing).toEqual(['modules.block.parts.high.housing-fit']));

  test('says what is wrong with a fit that the standard has not', () => {
    const { warmth } = bearing(file({ bearing: 'housing-fit: tight' }));
    expect(warmth).not.toHaveProperty('value');
    expect(care(file({ bearing: 'housing-fit: tight' })).set.get('interference block/low')!.warnings.join(' ')).toMatch(/hole: given tight/u);
  });
});

describe('when a bearing wants fresh grease', () => {
  test('is the rule at the speed of the shaft that turns it, half as long on an upright one', () => {
    // By hand: 10 · (14·10⁶/(12,000·√8) − 32) h = 3,804.8 h; 0.005 · 22 · 7 g = 0.77 g.
    expect(bearing(file({ axis: 'left' })).interval!.value! / 3600).toBeCloseTo(3804.79, 1);
    expect(bearing(file()).interval!.value! / 3600).toBeCloseTo(3804.79 / 2, 1);
    expect(bearing(file()).grease!.value).toBeCloseTo(0.77e-3, 9);
  });

  test('goes by the part with which a ring turns, where no joint ties it to a shaft', () => {
    const loose = file({ axis: 'left' }).replace('spindle: pinion', 'spindle: race').replace('{shoulder: pinion}', '{shoulder: race}').replace('on: pinion, holds: high', 'on: race, holds: high').replace('      mount:', '      race: {kind: part, turns-with: pinion}\n      mount:');
    expect(bearing(loose).interval!.value! / 3600).toBeCloseTo(3804.79, 1);
    expect(bearing(loose.replace(', turns-with: pinion', '')).note).toMatch(/No shaft/u);
  });

  test.each([
    ['a one-way clutch', file().replace('low: {kind: deep-groove', 'low: {kind: one-way'), /maker/u],
    ['an angular contact bearing', file().replace('low: {kind: deep-groove', 'low: {kind: angular-contact'), /angular contact/u],
    ['a grip', file().replace('mount: {kind: housing', 'mount: {kind: grip'), /swings/u],
    ['a start shaft, which its dog leaves standing', file().replace('  wheel: {axis', '  starter: {axis: up, part: block/dog}\n  wheel: {axis').replace('drive:', 'drive:\n  dog: {kind: one-way, driver: {on: starter, part: block/dog}, driven: {on: crank, part: block/pinion}}').replace('      mount:', '      dog: {kind: shaft}\n      mount:').replace('spindle: pinion', 'spindle: dog'), /stands still/u],
    ['two rings that turn', file().replace('part: block/wheel}\ndrive', 'part: block/mount}\ndrive'), /Both its rings turn/u],
    ['rings that turn together', file().replace('part: block/wheel}\ndrive', 'part: block/wheel}\n  third: {axis: up}\ndrive').replace('spindle: pinion, housing: mount', 'spindle: pinion, housing: pinion'), /turn together/u],
    ['a spindle of no shaft', file().replace('spindle: pinion', 'spindle: plate'), /No shaft/u],
  ])('is not asked of %s, and a note says why', (_, text, note) => {
    const one = bearing(text);
    expect(one).not.toHaveProperty('interval');
    expect(one.note).toMatch(note);
  });
});

describe('what a step needs of them', () => {
  const named = (text: string, step: string): readonly string[] => careAt(care(text), step).map(({ instance }) => instance);

  test('is what stands in its stack, or is held by its press fit', () => {
    expect(named(file(), 'block/main')).toEqual(['block/low', 'block/high']);
    const pressed = file({ bearing: 'material: steel' }).replace('    joints:', '    joints:\n      seat: {kind: press, in: mount, holds: low, fit: N7, lock: retaining}');
    expect(named(pressed, 'block/seat')).toEqual(['block/low']);
  });

  test('is nothing where no bearing goes in', () => expect(named(file(), 'block')).toEqual([]));

  test('is that of the first copy in every copy of a module', () => {
    const twice = file().replace('  block:\n', '  block:\n    copies: [A, B]\n').replaceAll('block/', 'block.A/');
    expect(named(twice, 'block.A/main')).toEqual(['block.A/low', 'block.A/high']);
    expect(named(twice, 'block.B/main')).toEqual(['block.A/low', 'block.A/high']);
  });
});

describe('words beside the numbers', () => {
  test('say what the file sets, how far a warmth stays below its limit or which limits it passes, and what is missing', () => {
    expect(meshWords(care(file().replace('width: 10 mm', 'width: 10 mm, backlash: 0.3 to 0.4 mm')).meshes[0]!)).toBe('The file sets 0.3 mm to 0.4 mm.');
    expect(meshWords(care(file({ centre: '50 to 50.1 mm' })).meshes[0]!)).toBe('The slots of the frame do not reach that far.');
    // By hand: 60 K less 38.85 K; P7 at 22 mm is −14/−35 µm: 40 µm over 23.4·10⁻⁶/K · 22 mm = 77.7 K.
    expect(bearingWords(bearing(file()))).toBe('21 K below the lowest limit.');
    expect(bearingWords(bearing(file({ bearing: 'housing-fit: P7' })))).toBe('Too hot, by 18 K, for seal and grease.');
    expect(bearingWords(bearing(file().replace('low: {kind: deep-groove, bore: 8 mm, ', 'low: {kind: deep-groove, ')))).toBe('21 K below the lowest limit. Grease wants modules.block.parts.low.bore.');
    expect(bearingWords(bearing(file({ bearing: 'housing-fit: tight' })))).toMatch(/^hole: given tight; wanted another one/u);
    expect(careWants(care(file({ bearing: 'housing-fit: tight' }))).bearings).toBe('What is not known of the warmth wants modules.block.parts.high.housing-fit.');
    expect(careWants(care())).toEqual({ bearings: 'What is not known of the warmth wants modules.block.parts.high.housing-fit.' });
    expect(careWants(care(file({ wheel: 'walnut' }))).meshes).toBe('What is not known of the meshes wants materials.walnut.expansion.');
  });
});
