import { describe, expect, it } from 'vitest';
import { readMachine } from '@rotorwright/machine';
import { planBuild, type Plan } from '@rotorwright/build';
import { replay } from '@rotorwright/logbook';
import { signed } from './entries.ts';
import { bookOf } from './plans.ts';

// Invented, as everything in it.
const file = `
machine: {name: Dunlin}
shafts: {input: {axis: up}, output: {axis: up}}
drive:
  mesh: {kind: external, module: 1 mm, width: 8 mm, driver: {on: input, teeth: 12, part: case/pinion}, driven: {on: output, teeth: 60}}
consumables:
  medium: {kind: threadlocker, strength: medium, cure: 24 h, undo: hand tools}
modules:
  case:
    parts:
      shaft: {material: steel, mass: 20 g}
      pinion: {material: steel, mass: 11 g}
      cover: {material: aluminium 7075}
    joints:
      pin: {kind: pin, in: shaft, holds: pinion, diameter: 2 mm, fit: slide}
      pin-screw: {kind: set-screw, thread: M4, in: shaft, holds: pin, lock: medium, torque: 1.2 N·m, tip: Feel it meet the pin.}
      cover-screw: {kind: screw, head: socket, thread: M3, copies: 3, in: shaft, holds: cover, lock: medium, torque: 1.1 N·m}
    measurements:
      runout: {of: runout shaft, with: dial gauge, window: 0 to 0.03 mm}
`;

function planFrom(text: string): Plan {
  const { machine, findings } = readMachine(text);
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  if (machine === undefined) throw new Error('no machine');
  return planBuild(machine);
}

const plan = planFrom(file);
const book = bookOf([...plan.steps.values()].map((step, at) => signed(at + 1, step.id, { fingerprint: step.fingerprint, cure: step.cure })));
const [evening, nextWeek] = [new Date('2026-03-01T20:00:00Z'), new Date('2026-03-08T20:00:00Z')];

function states(text: string, now = nextWeek): Readonly<Record<string, string>> {
  return Object.fromEntries([...replay(planFrom(text), book, now).steps].map(([id, { state }]) => [id, state]));
}
const all = { 'case/pin': 'signed', 'case/pin-screw': 'signed', 'case/cover-screw': 'signed', 'case/runout': 'signed' };

describe('from the file to the state', () => {
  it('what was signed cures first where compound was used, and stands then', () => {
    expect(states(file, evening)).toEqual({ ...all, 'case/pin-screw': 'curing', 'case/cover-screw': 'curing' });
    expect(states(file)).toEqual(all);
  });

  it.each([
    ['a tip', 'Feel it meet the pin.', 'Feel for the pin.'],
    ['a mass', 'mass: 11 g', 'mass: 12 g'],
    ['a window', '0 to 0.03 mm', '0 to 0.05 mm'],
    ['the spelling of a unit', 'diameter: 2 mm', 'diameter: 0.2 cm'],
    ['a cure time', 'cure: 24 h', 'cure: 12 h'],
    ['the teeth of the mate', 'teeth: 60', 'teeth: 61'],
  ])('changing %s keeps every signature', (_, from, to) => {
    expect(file).toContain(from);
    expect(states(file.replace(from, to))).toEqual(all);
  });

  it.each([
    ['a thread', 'thread: M4', 'thread: M5', ['case/pin-screw']],
    ['a torque', 'torque: 1.1 N·m', 'torque: 1.0 N·m', ['case/cover-screw']],
    ['a lock', 'holds: pin, lock: medium', 'holds: pin, lock: high', ['case/pin-screw']],
    ['the teeth of the gear that is pinned', 'teeth: 12', 'teeth: 13', ['case/pin', 'case/pin-screw']],
  ])('changing %s undoes what rests on it, and nothing else', (_, from, to, fallen) => {
    expect(file).toContain(from);
    expect(states(file.replace(from, to))).toEqual({ ...all, ...Object.fromEntries(fallen.map((id) => [id, 'undone'])) });
  });

  it('a renamed joint keeps its signature with was, and is open without', () => {
    const renamed = file.replace('pin-screw: {', 'pin-lock: {');
    expect(states(renamed)['case/pin-lock']).toBe('open');
    expect(states(renamed.replace('pin-lock: {', 'pin-lock: {was: pin-screw, '))['case/pin-lock']).toBe('signed');
  });
});

describe('signatures of an older rule', () => {
  it('stand while what they were made for is the same, and fall with it', () => {
    const before = planFrom(file);
    const old = bookOf([...before.steps.values()].map((step, at) => signed(at + 1, step.id, { fingerprint: before.olderFingerprint?.(step.id) ?? '', cure: step.cure })));
    const stateOf = (text: string) => Object.fromEntries([...replay(planFrom(text), old, nextWeek).steps].map(([id, { state }]) => [id, state]));
    expect(old.every(({ body }) => body.kind === 'signed' && body.fingerprint.startsWith('f1:'))).toBe(true);
    expect(stateOf(file)).toEqual(all);
    expect(stateOf(file.replace('thread: M4', 'thread: M5'))).toEqual({ ...all, 'case/pin-screw': 'undone' });
  });
});
