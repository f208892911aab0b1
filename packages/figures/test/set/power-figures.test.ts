import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { figures, working } from '../../src/index.ts';
import { read } from '../read.ts';

const textOf = (name: string): string => readFileSync(new URL(`../../../../examples/${name}/machine.yaml`, import.meta.url), 'utf8');
const whimbrel = read(textOf('whimbrel'));
const filed = figures(whimbrel);
const value = (name: string, set = filed): number => {
  const figure = set.get(name);
  if (figure?.value === undefined) throw new Error(`${name} is not known: ${figure?.missing.join(', ')} ${figure?.warnings.join(' ')}`);
  return figure.value;
};

describe('the tail in hover', () => {
  test('its arm comes from the places of both hubs, unless the file says it', () => {
    // By hand: the tail hub lies 924 mm behind the head; the tail axis lies square to that.
    expect(value('tail-arm')).toBeCloseTo(0.924, 9);
    const said = figures(read(textOf('whimbrel').replace('    blockage: 6 %\n', '    blockage: 6 %\n    arm: 900 mm\n')));
    expect(value('tail-arm', said)).toBeCloseTo(0.9, 12);
  });

  test('its thrust balances the main torque about the mast, less what the fin takes (law)', () => {
    for (const band of ['', '-low', '-high']) expect(value(`tail-thrust${band} hover`) * 0.94 * value('tail-arm')).toBeCloseTo(value(`hover-torque${band} main`), 9);
    expect(value('tail-margin hover')).toBeCloseTo(value('tail-thrust-available') / value('tail-thrust-high hover'), 9);
  });

  test('the demand is known without a stop, what it can give is not', () => {
    const set = figures(read(textOf('whimbrel').replace('    stops: -12 to 24 °\n', '')));
    expect(set.get('tail-thrust hover')!.value).toBeDefined();
    expect(set.get('tail-thrust-available')!.missing).toEqual(['rotors.tail.stops']);
  });
});

describe('power needed in hover', () => {
  test('is what the rotors, the stages and the fan take (independent route: by hand along both ways)', () => {
    const main = value('hover-power main') / 0.98;
    const tail = value('tail-power hover') / (0.98 * 0.98 * 0.97 * 0.97);
    expect(value('power-needed hover')).toBeCloseTo(main + tail + 105, 4);
    expect(value('torque-needed hover')).toBeCloseTo(value('power-needed hover') / value('speed crank'), 9);
    expect(value('power-needed-low hover')).toBeLessThan(value('power-needed hover'));
    expect(value('power-needed-high hover')).toBeGreaterThan(value('power-needed hover'));
  });

  test('an efficiency of the file takes the place of the usual one, and its line stands in the working', () => {
    const set = figures(read(textOf('whimbrel').replace('    helix: 11 ° left', '    efficiency: 90 %\n    helix: 11 ° left')));
    expect(value('power-needed hover', set)).toBeGreaterThan(value('power-needed hover'));
    expect(JSON.stringify(working(set, 'power-needed hover'))).toContain('drive.main-mesh.efficiency');
  });

  test('a heavier machine in thin, damp air needs more', () => {
    expect(value('power-needed hover', figures(whimbrel, { mass: 7.5 }))).toBeGreaterThan(value('power-needed hover'));
    const heavy = working(figures(whimbrel, { mass: 7.5 }), 'hover-power main');
    expect(JSON.stringify(heavy)).toContain('"tried":true');
    expect(value('air-density', figures(whimbrel, { humidity: 0.9, temperatureOffset: 15 }))).toBeLessThan(value('air-density', figures(whimbrel, { temperatureOffset: 15 })));
  });
});
