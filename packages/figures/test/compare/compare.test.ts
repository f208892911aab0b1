import { describe, expect, it } from 'vitest';
import { compareFigures, compareMargins, compareWindows, figures, margins, newFindings } from '../../src/index.ts';
import { wholeDrive } from '../machines.ts';
import { loaded } from '../margins/loaded.ts';
import { read } from '../read.ts';

const before = figures(read(wholeDrive));
const change = (from: string, to: string) => figures(read(wholeDrive.replace(from, to)));

describe('figures before and after', () => {
  it('are none when nothing changed', () => {
    expect(compareFigures(before, figures(read(wholeDrive)), [])).toEqual([]);
  });

  it('name the entry that moved them, through every figure between', () => {
    const teeth = 'drive.main.driver.teeth';
    const found = compareFigures(before, change('teeth: 17,', 'teeth: 18,'), [teeth]);
    const mast = found.find(({ name }) => name === 'speed mast');
    // By hand: 18/17 of the speed before, wherever the pinion is on the way.
    expect(mast!.after! / mast!.before!).toBeCloseTo(18 / 17, 12);
    expect(found.map(({ name }) => name)).toContain('tip-speed tail');
    expect(found.map(({ name }) => name)).not.toContain('speed crank');
    expect(found.every(({ because }) => because.includes(teeth))).toBe(true);
  });

  it('leave a figure out of what other entries did', () => {
    const both = compareFigures(before, change('diameter: 260 mm', 'diameter: 280 mm'), ['rotors.tail.diameter', 'rotors.main.diameter']);
    expect(both.map(({ name }) => name)).toContain('tip-speed tail');
    expect(both.every(({ because }) => because.length === 1 && because[0] === 'rotors.tail.diameter')).toBe(true);
  });

  it('have no value where an entry was taken away', () => {
    const gone = compareFigures(before, change('blade-mass: 200 g, ', ''), ['rotors.main.blade-mass']).find(({ name }) => name === 'bolt-pull main');
    expect(gone).toMatchObject({ because: ['rotors.main.blade-mass'] });
    expect(gone).not.toHaveProperty('after');
  });
});

describe('windows before and after', () => {
  const banded = wholeDrive.replace('diameter: 1500 mm', 'wanted: 1700 to 1800 rpm, diameter: 1500 mm');

  it('tell that a band is left', () => {
    // By hand: 14,000 rpm × 17/136 = 1,750 rpm; × 18/136 = 1,853 rpm.
    const [only, ...rest] = compareWindows(figures(read(banded)), figures(read(banded.replace('teeth: 17,', 'teeth: 18,'))));
    expect(rest).toEqual([]);
    expect(only).toMatchObject({ before: { kind: 'band', of: 'speed mast', kept: true }, after: { kept: false } });
  });

  it('tell of a slot that a mesh leaves, and of one whose mesh cannot be reckoned', () => {
    const slotted = (slot: string) => figures(read(wholeDrive.replace('module: 1 mm,', `module: 1 mm, centre: ${slot},`)));
    // By hand: (17 + 136)/2 = 76.5 mm.
    expect(compareWindows(slotted('76 to 77 mm'), slotted('74 to 75 mm'))).toMatchObject([{ before: { value: expect.closeTo(0.0765, 9), kept: true }, after: { kept: false } }]);
    const [unknown] = compareWindows(figures(read(wholeDrive.replace('module: 1 mm,', 'centre: 76 to 77 mm,'))), slotted('76 to 77 mm'));
    expect(unknown!.before).not.toHaveProperty('kept');
    expect(unknown!.after).toMatchObject({ kept: true });
  });
});

describe('margins before and after', () => {
  const marginsOf = (text: string) => margins(figures(read(text)));
  const today = marginsOf(loaded);
  const crossings = (from: string, to: string) => compareMargins(today, marginsOf(loaded.replace(from, to)));

  it('are none when nothing crosses one, whichever way it moves', () => {
    expect(compareMargins(today, today)).toEqual([]);
    expect(crossings('static: 5000 N', 'static: 4500 N')).toEqual([]);
  });

  it('name what falls below one, with what governs it, and the way back', () => {
    // By hand: grip and blade pull 2,000 rpm² · 1.21 · (0.18 · 0.36 + 0.08 · 0.05) kg·m = 3,653 N.
    const weak = marginsOf(loaded.replace('static: 5000 N', 'static: 3600 N'));
    expect(compareMargins(today, weak)).toMatchObject([{ word: 'exceeded', before: { word: 'holds' }, after: { name: 'margin bearing-static grip.A/thrust', value: expect.closeTo(3600 / 3653, 3), loadCase: 'overspeed' } }]);
    expect(compareMargins(weak, today)).toMatchObject([{ word: 'freed', before: { word: 'exceeded' }, after: { word: 'holds' } }]);
  });

  it('say what nobody can tell any more, and nothing of what was not known before either', () => {
    expect(crossings('static: 5000 N', 'balls: 9')).toMatchObject([{ word: 'unknown', before: { word: 'holds' }, after: { name: 'margin bearing-static grip.A/thrust', word: 'unknown' } }]);
    const unknown = marginsOf(loaded.replace('static: 5000 N', 'balls: 9'));
    expect(compareMargins(unknown, today)).toEqual([]);
  });

  it('leave limits to the windows', () => {
    expect(crossings('at-most: 2100 rpm', 'at-most: 1900 rpm')).toEqual([]);
  });
});

describe('what a change newly finds', () => {
  const flown = wholeDrive.replace('{name: Test stand}', '{name: Test stand, mass: 6 kg}').concat('\nflown:\n  hover: {collective: 4 °}\n');
  const coded = (from: string, to: string): readonly string[] => newFindings(figures(read(from)), figures(read(to))).map(({ code }) => code);

  it('is a measured flight that another mass reads anew, and nothing while it stays', () => {
    expect(coded(flown, flown.replace('mass: 6 kg', 'mass: 7 kg'))).toEqual(['flown/mass']);
    expect(coded(flown, `# a line above\n${flown}`)).toEqual([]);
  });

  it('is a limit of a figure that is no more, but no limit that is left: that is a window', () => {
    const limited = wholeDrive.concat('\nlimits:\n  fast: {of: tip-speed tail, at-most: 300 m/s}\n  slow: {of: speed mast, at-most: 1 rpm}\n');
    expect(coded(wholeDrive, limited)).toEqual([]);
    expect(coded(limited, limited.replace('  tail: {on: tail-rotor, blades: 2, diameter: 260 mm}\n', ''))).toEqual(['ref/unknown']);
  });
});
