import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { catalogue, answer } from '@rotorwright/calculations';
import { figures, working, workingLines, type FigureInput, type WorkingNode } from '@rotorwright/figures';
import { wholeDrive } from '../machines.ts';
import { read } from '../read.ts';

const machine = read(wholeDrive);
const set = figures(machine);
const leaves = (node: WorkingNode): readonly WorkingNode[] => (node.children.length === 0 ? [node] : node.children.flatMap(leaves));

describe('the working of a figure', () => {
  test('goes down to entries of the file, each with its place', () => {
    const tree = working(set, 'tip-mach main')!;
    const paths = leaves(tree).filter((leaf) => leaf.kind === 'entry').map((leaf) => leaf.path);
    expect(paths).toEqual(['drive.main.driver.teeth', 'drive.main.driven.teeth', 'power.engine.speed', 'rotors.main.diameter']);
    for (const leaf of leaves(tree)) {
      if (leaf.kind === 'entry') expect(leaf.place).toEqual(machine.places.get(leaf.path!));
      else expect(leaf.source).toBeTruthy();
    }
  });

  test('carries formula and source of its calculation', () => {
    const tree = working(set, 'bolt-pull main')!;
    expect(tree.formula).toBe(catalogue.get('blade-loads')!.formulas.find((each) => each.output === 'centrifugalForceBolt')!.tex);
    expect(tree.source).toBe(catalogue.get('blade-loads')!.source);
  });

  test('names what is missing where it would stand, once', () => {
    const missing = leaves(working(set, 'bolt-pull tail')!).filter((leaf) => leaf.kind === 'missing').map((leaf) => leaf.path);
    expect(missing.toSorted()).toEqual(['rotors.tail.blade-centre', 'rotors.tail.blade-mass', 'rotors.tail.bolt-radius']);
  });

  test('of an unknown name is no tree', () => {
    expect(working(set, 'speed of light')).toBeUndefined();
  });
});

test('lines of text: a row of teeth on one line, each with its line in the file', () => {
  const line = (path: string): number => machine.places.get(path)!.line;
  const lines = workingLines(working(set, 'speed mast')!, 'stand.yaml');
  expect(lines[0]).toMatch(/= 1,750 rpm {2}\(1\/8\)$/);
  expect(lines.some((each) => each.includes(`stage 1: driver 17 (stand.yaml:${line('drive.main.driver.teeth')}), driven 136 (stand.yaml:${line('drive.main.driven.teeth')})`))).toBe(true);
  expect(lines.some((each) => each.includes(`14,000 rpm  power.engine.speed  stand.yaml:${line('power.engine.speed')}`))).toBe(true);
});

// Independent route: the inputs of each figure, given to the catalogue from outside as JSON.
test('every figure is what the catalogue answers to its inputs', () => {
  const plain = (input: FigureInput): unknown => {
    if ('figure' in input) return set.get(input.figure)!.value;
    if ('entry' in input) return 'table' in input ? input.table : input.value;
    if ('constant' in input) return input.constant;
    if ('record' in input) return Object.fromEntries(Object.entries(input.record).map(([name, each]) => [name, plain(each)]));
    return input.list.map((row) => Object.fromEntries(Object.entries(row).map(([name, each]) => [name, plain(each)])));
  };
  let compared = 0;
  for (const figure of set.all) {
    if (figure.value === undefined || figure.calculation === undefined) continue;
    const answered = answer(figure.calculation, Object.fromEntries(Object.entries(figure.inputs).map(([name, each]) => [name, plain(each)])));
    if (!('outputs' in answered)) throw new Error(`${figure.name}: ${JSON.stringify(answered.problems)}`);
    expect(answered.outputs[figure.output!], figure.name).toEqual({ value: figure.value, unit: figure.unit });
    compared += 1;
  }
  expect(compared).toBeGreaterThan(30);
});

test('a tooth count that is only tried out is told from what the file says', () => {
  const tried = workingLines(working(figures(machine, { teeth: { 'drive.main.driver.teeth': 19 } }), 'speed mast')!, 'stand.yaml');
  expect(tried.some((line) => line.includes('driver 19 (tried) ('))).toBe(true);
  expect(tried.some((line) => line.includes('driven 136 (stand.yaml:'))).toBe(true);
});

test('a figure is worked out once in a tree; where it stands again, the tree points up', () => {
  const machine = read(readFileSync(new URL('../../../../examples/whimbrel/machine.yaml', import.meta.url), 'utf8'));
  const whole = figures(machine);
  const lines = workingLines(working(whole, 'power-in-hand hover')!);
  const head = lines.filter((line) => /Power of main rotor, hovering; when it was measured = /u.test(line));
  expect(head.length).toBeGreaterThan(0);
  expect(lines.filter((line) => line.includes('Speed of mast = ') && !line.includes('as above') && !line.includes('when it was measured'))).toHaveLength(1);
  expect(lines.filter((line) => line.includes('Speed of mast = ') && line.includes('as above')).length).toBeGreaterThan(0);
});
