import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { figures, margins, working } from '../../src/index.ts';
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

describe('what hover leaves', () => {
  test('thin, warm air takes power from the engine, thrust from the reserve, and climb', () => {
    const high = figures(whimbrel, { altitude: 2000, temperatureOffset: 20 });
    for (const name of ['power-available', 'power-in-hand hover', 'thrust-reserve main', 'climb-rate']) expect(value(name, high), name).toBeLessThan(value(name));
    // Independent route: ISO 1585 by hand, 794.95 hPa and 275.15 K + 20 K (ISO 2533, table 5: 2,000 m).
    expect(value('power-available', high) / value('power-available')).toBeCloseTo((794.95 / 1013.25) ** 1.2 * (288.15 / 295.15) ** 0.6, 4);
  });

  test('at the most thrust hover takes just the power that there is (law)', () => {
    // Fuselage and all: what the wake takes grows with the thrust.
    const mass = (whimbrel.mass! * value('thrust-most main')) / value('hover-thrust main');
    const laden = figures(whimbrel, { mass });
    // 30 elements instead of 60.
    expect(value('hover-power main', laden) / value('rotor-power-available hover')).toBeCloseTo(1, 2);
    expect(value('thrust-reserve main')).toBeCloseTo(mass / whimbrel.mass!, 6);
    expect(value('hover-thrust main', laden)).toBeCloseTo(value('thrust-most main'), 9);
  });

  test('a tank lasts as long as its fuel flow says (law), and longer on less power', () => {
    // By hand: 680 cm³ of 740 kg/m³, of which 85 % are flown.
    expect(value('endurance hover') * value('fuel-flow hover')).toBeCloseTo(0.68e-3 * 740 * 0.85, 9);
    expect(value('endurance-low hover')).toBeLessThan(value('endurance hover'));
    expect(value('endurance-high hover')).toBeGreaterThan(value('endurance hover'));
  });

  test('a pack lasts as long as its current says', () => {
    const set = figures(read(textOf('sanderling')));
    // By hand: 3,900 mAh, of which 80 % are flown; the voltage is taken as even.
    expect(value('endurance hover', set)).toBeCloseTo((3.9 * 3600 * 0.8) / value('pack-current hover', set), 3);
    expect(value('governor-headroom hover', set)).toBeGreaterThan(0);
    expect(value('governor-headroom hover', set)).toBeLessThan(1);
  });

  test('what the file lacks for the tank is named', () => {
    const set = figures(read(textOf('whimbrel').replace(/    consumption: .*\n/u, '')));
    expect(set.get('endurance hover')!.missing).toEqual(['power.engine.consumption']);
    expect(set.get('power-in-hand hover')!.value).toBeDefined();
  });
});

describe('what the file says of the fuselage and the blades', () => {
  const withMachine = (lines: string) => figures(read(textOf('whimbrel').replace(/ {2}(?:vertical-drag-area|rotor-height): .*\n/gu, '').replace('  drag-area: 0.026 m²\n', `  drag-area: 0.026 m²\n${lines}`)));
  const bare = withMachine('');

  test('just off the ground hover takes less power, and the induced part alone shrinks (by hand)', () => {
    const near = withMachine('  rotor-height: 500 mm\n');
    const share = 1 - (0.773 / (4 * 0.5)) ** 2;
    expect(value('hover-power-ground main', near)).toBeCloseTo(value('hover-profile-power main', bare) + share * value('hover-induced-power main', bare), 6);
    expect(bare.get('hover-power-ground main')).toBeUndefined();
    expect(withMachine('  rotor-height: 300 mm\n').get('hover-power-ground main')!.warnings.join(' ')).toMatch(/begins at a height of half a radius/u);
  });

  test('a fuselage in the wake asks for more thrust, everywhere that hover is asked for (by hand)', () => {
    const blown = withMachine('  vertical-drag-area: 0.05 m²\n');
    const thrust = (whimbrel.mass! * 9.80665) / (1 - 0.05 / (Math.PI * 0.773 ** 2));
    expect(value('hover-thrust main', blown)).toBeCloseTo(thrust, 9);
    expect(value('hover-power main', blown)).toBeGreaterThan(value('hover-power main', bare));
    expect(blown.get('thrust-reserve main')!.title).toMatch(/over that of hover$/u);
    expect(value('thrust-reserve main', blown)).toBeCloseTo(value('thrust-most main', blown) / thrust, 6);
  });

  test('rough blades have more drag, in hover and in fast flight', () => {
    const [smooth, rough] = ['', 'roughness: 1.4, '].map((more) => figures(read(textOf('sanderling').replace('roughness: 1.05, ', more)))) as [typeof filed, typeof filed];
    // Nothing was measured on this machine: what the file says of its blades stands.
    expect(value('hover-profile-power main', rough) / value('hover-profile-power main', smooth)).toBeCloseTo(1.4 / 1.1, 1);
    expect(value('range-speed-power', rough)).toBeGreaterThan(value('range-speed-power', smooth));
    expect(JSON.stringify(working(rough, 'hover-power main'))).toContain('rotors.main.roughness');
  });
});

describe('a mass that is not that of the file', () => {
  test('that is tried stands in place of that of the file, and one that was flown as that of the flight', () => {
    const laden = figures(whimbrel, { mass: 7 });
    for (const name of ['hover-thrust main', 'endurance-speed']) expect(laden.get(name)!.inputs['mass'], name).toMatchObject({ entry: 'machine.mass', value: 7 });
    expect(laden.get('flown hover-thrust main')!.inputs['mass']).toMatchObject({ entry: 'flown.hover.mass', value: 6.3 });
    expect(filed.get('hover-thrust main')!.inputs['mass']).toMatchObject({ entry: 'machine.mass', value: 6.3 });
  });

  test('is lifted by the mast in every load case (by hand: 7 kg times 9.80665 m/s², 2.2 times in hard collective)', () => {
    const { set } = margins(figures(whimbrel, { mass: 7 }));
    expect(set.get('rotor-thrust main hard-collective')!.value).toBeCloseTo(2.2 * 7 * 9.80665, 9);
    expect(JSON.stringify(working(set, 'rotor-thrust main hard-collective'))).toContain('"tried":true');
  });
});

describe('the tail over the speed band', () => {
  test('at the least speed for full power it gives just what is needed (law: thrust goes with the square of the speed)', () => {
    const least = value('tail-least-speed full-power');
    expect(value('tail-margin full-power')).toBeCloseTo((value('speed mast') / least) ** 2, 9);
    expect(value('tail-least-speed hover')).toBeLessThan(least);
    expect(value('tail-fast-speed')).toBeGreaterThan(value('speed mast'));
  });

  test('lists stand behind the figure', () => {
    const outputs = filed.outputs('tail-least-speed full-power')!;
    const [speeds, available] = [outputs['mainSpeed'] as readonly number[], outputs['available'] as readonly number[]];
    expect(speeds.length).toBe(available.length);
    const here = speeds.findIndex((speed) => speed > value('speed mast'));
    expect(available[here]!).toBeGreaterThan(value('tail-thrust-available'));
    expect(available[here - 1]!).toBeLessThanOrEqual(value('tail-thrust-available') * (1 + 1e-9));
  });
});

test('beyond the points of its curve the engine is not known; what does not ask for its power is', () => {
  const slow = figures(whimbrel, { sourceSpeed: 930 });
  expect(slow.get('power-available')!.warnings.join(' ')).toMatch(/wanted a speed within the points of the curve, 9000 to 16000 rpm/u);
  for (const name of ['power-in-hand hover', 'tail-least-speed full-power', 'top-speed']) expect(slow.get(name)!.value, name).toBeUndefined();
  for (const name of ['power-needed hover', 'tail-least-speed hover', 'endurance-speed']) expect(slow.get(name)!.value, name).toBeDefined();
});

describe('fast flight', () => {
  test('the longest flight is slower than the farthest, and takes less power; both are slower than the fastest', () => {
    expect(value('endurance-speed')).toBeLessThan(value('range-speed'));
    expect(value('endurance-speed-power')).toBeLessThan(value('range-speed-power'));
    expect(value('endurance-speed-power')).toBeLessThan(value('hover-power main'));
    expect(value('top-speed')).toBeGreaterThan(value('range-speed'));
  });

  test('without a drag area it says so', () => {
    const set = figures(read(textOf('whimbrel').replace(/  drag-area: .*\n/u, '')));
    expect(set.get('range-speed')!.missing).toEqual(['machine.drag-area']);
  });
});
