import { formatFinding, wordFinding } from '@rotorwright/machine';
import { figures, solveDrive, threadSense } from '@rotorwright/figures';
import { describe, expect, test } from 'vitest';
import { clutchStack, onePair, ring, wholeDrive } from './machines.ts';
import { read } from './read.ts';

const found = (text: string) => {
  const machine = read(text);
  const drive = solveDrive(machine);
  return [...figures(machine, { teeth: { 'drive.main.driver.teeth': 19 } }).findings, ...threadSense(machine, drive).findings];
};

describe('every finding is worded in full, and says where', () => {
  test.each([
    ['drive/loop', ring([41, 60])],
    ['drive/undriven', wholeDrive.replace('  mast: {axis: up}', '  mast: {axis: up}\n  spare: {axis: up}')],
    ['drive/axis', wholeDrive.replace('tail-tube: {axis: aft}', 'tail-tube: {title: Tube}')],
    ['drive/axis', onePair('kind: rigid, driver: {on: a}, driven: {on: b}', ['up', 'left'])],
    ['drive/side', wholeDrive.replace(', lies: down', '')],
    ['drive/side', wholeDrive.replace('lies: down', 'lies: left')],
    ['drive/twist', onePair('kind: belt, driver: {on: a, teeth: 60}, driven: {on: b, teeth: 12}', ['up', 'left'])],
    ['drive/twist', onePair('kind: belt, twist: 90 °, driver: {on: a, teeth: 60}, driven: {on: b, teeth: 12}', ['up', 'left'])],
    ['gear/impossible', onePair('kind: external, driver: {on: a, teeth: 60}, driven: {on: b, teeth: 12}', ['up', 'left'])],
    ['thread/loosens', clutchStack('M12x1 LH')],
    ['thread/sense-unknown', clutchStack('M12x1', '')],
    ['limit/exceeded', `${wholeDrive}\nlimits:\n  bell: {of: speed bell, at-most: 13000 rpm}\n`],
    ['flown/mass', `${wholeDrive.replace('{name: Test stand}', '{name: Test stand, mass: 6 kg}')}\nflown:\n  hover: {collective: 4 °}\n`],
    ['ref/unknown', `${wholeDrive}\nlimits:\n  bell: {of: speed bel, at-most: 13000 rpm}\n`],
  ])('%s', (code, text) => {
    const finding = found(text).find((each) => each.code === code)!;
    const { problem, remedy } = wordFinding(finding);
    for (const sentence of [problem, remedy]) expect(sentence).toMatch(/^[^…{}]*[.?]$/);
    expect(`${problem} ${remedy}`).not.toMatch(/undefined|NaN|\.\.$/);
    expect(formatFinding(finding, 'stand.yaml')).toMatch(/^stand\.yaml:\d+:\d+ /);
  });
});

test('a limit of a figure that does not exist is told the nearest one', () => {
  expect(found(`${wholeDrive}\nlimits:\n  bell: {of: speed bel, at-most: 13000 rpm}\n`).find((each) => each.path.startsWith('limits'))).toMatchObject({ code: 'ref/unknown', values: { ref: 'speed bel', nearest: 'speed bell' } });
});
