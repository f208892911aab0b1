import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readMachine } from '@rotorwright/machine';
import { figures, working } from '../../src/index.ts';

const read = (change: (text: string) => string = (text) => text) => {
  const { machine } = readMachine(change(readFileSync(new URL('../../../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8')));
  if (!machine) throw new Error('the example is no machine');
  return machine;
};

describe('hover of the main rotor', () => {
  test('power lies in its band, and is torque times speed (law)', () => {
    const set = figures(read());
    const value = (name: string): number => set.get(name)!.value!;
    expect(value('hover-power-low main')).toBeLessThan(value('hover-power main'));
    expect(value('hover-power-high main')).toBeGreaterThan(value('hover-power main'));
    expect(value('hover-torque main') * value('speed mast')).toBeCloseTo(value('hover-power main'), 6);
    expect(value('hover-reserve main')).toBeCloseTo(value('stored-energy main') / value('hover-power main'), 9);
  });

  test('thin air asks for more pitch', () => {
    const machine = read();
    const pitch = (altitude: number): number => figures(machine, { altitude }).get('hover-collective main')!.value!;
    expect(pitch(2000)).toBeGreaterThan(pitch(0));
  });

  test('the working leads down to the mass and the section of the file', () => {
    const set = figures(read());
    const text = JSON.stringify(working(set, 'hover-power main'));
    for (const path of ['machine.mass', 'rotors.main.section', 'rotors.main.chord']) expect(text).toContain(path);
  });

  test('what the file lacks is named, and a section that nobody knows is told', () => {
    const without = figures(read((text) => text.replace('    section: NACA 0012\n', ''))).get('hover-power main')!;
    expect(without.value).toBeUndefined();
    expect(without.missing).toEqual(['rotors.main.section']);
    const unknown = figures(read((text) => text.replace('section: NACA 0012', 'section: home made'))).get('hover-power main')!;
    expect(unknown.value).toBeUndefined();
    expect(unknown.warnings.join(' ')).toContain('home made');
  });

  test('blades that wash out carry the same weight at another collective (law)', () => {
    const plain = figures(read());
    const twisted = figures(read((text) => text.replace('section: NACA 0012\n', 'section: NACA 0012\n    twist: -6 °\n')));
    expect(twisted.get('blade-loading main')!.value).toBeCloseTo(plain.get('blade-loading main')!.value!, 6);
    expect(twisted.get('hover-collective main')!.value).not.toBeCloseTo(plain.get('hover-collective main')!.value!, 4);
  });
});
