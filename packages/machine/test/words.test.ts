import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { findingCodes, isFindingCode, severityOf, wordFinding, type Finding, type FindingCode } from '../src/index.ts';

type Values = Finding['values'];

// For each code what the rooms that raise it give.
const samples: Readonly<Record<FindingCode, readonly Values[]>> = {
  'yaml/syntax': [{ reason: 'A tab stands where spaces are wanted.', remedy: 'Indent with spaces.' }],
  'yaml/too-large': [{ size: '2.3', largest: 2 }, { aliased: 20_000 }],
  'yaml/too-deep': [{ deepest: 48 }],
  'yaml/alias': [{ name: 'a' }],
  'version/unknown': [{ version: 2, known: 1 }],
  'key/unknown': [{ key: 'roters', section: 'the file', nearest: 'rotors', known: ['rotors'] }, { key: 'colour', section: 'machine', known: ['name', 'mass'] }, { key: 'then back', sentence: 'then back', after: 'tip', section: 'x' }],
  'key/missing': [{ section: 'drive.clutch', key: 'driver', about: 'the side that drives.', example: 'driver: {on: crank}' }],
  'key/name': [{ key: 'a b', suggestion: 'a-b' }],
  'key/one-of': [{ section: 'hazards.x.when', keys: ['any', 'all'], count: 'both' }],
  'type/wrong': [{ wanted: 'a whole number', example: '14' }],
  'value/number': [{ reason: 'Write a decimal point, not a comma: 1.5.', example: '1.5 mm' }],
  'value/range': [{ wanted: 'it must be more than 0 mm', example: '58 mm' }, { wanted: 'there are 3 of this joint', remedy: 'Write a number from 1 to 3.' }],
  'unit/missing': [{ example: '58 mm' }],
  'unit/unknown': [{ unit: 'gr', nearest: 'g' }],
  'unit/misplaced': [{ unit: '°C', reason: 'Use K.', example: '1/K' }],
  'unit/wrong': [{ unit: 'g', is: 'a mass', wanted: 'a length', example: '58 mm' }],
  'id/twice': [{ id: 'mass', line: 6 }, { id: 'blade', section: 'grip' }],
  'ref/unknown': [{ ref: 'bel', wanted: 'shaft', nearest: 'bell' }, { ref: 'x', wanted: 'shaft' }],
  'ref/which': [{ ref: 'grip/blade', copies: ['grip.A/blade', 'grip.B/blade'] }],
  'ref/kind': [{ ref: 'nut', is: 'joint', wanted: 'part', nearest: 'hub' }, { ref: 'nut', is: 'joint', wanted: 'part' }],
  'copies/mismatch': [{ has: ['front', 'right'], copies: ['front', 'left'] }],
  'fact/derived': [{ key: 'speed', from: 'the tooth counts' }],
  'choice/not-sold': [{ teeth: 16, choices: ['13', '14'] }],
  'curve/order': [{}],
  'table/shape': [{ rows: 2, columns: 5 }],
  'variant/nothing': [{}],
  'drive/loop': [{ loop: ['mast', 'tail'], ratioOne: '23/5', ratioTwo: '4' }],
  'drive/undriven': [{ shaft: 'tail' }],
  'drive/twist': [{ coupling: 'belt' }],
  'drive/side': [{ coupling: 'rear-bevel' }],
  'drive/axis': [{ shaft: 'tail' }],
  'gear/impossible': [{ coupling: 'ring', reason: 'the pinion has more teeth than the ring' }],
  'stack/side-unknown': [{ part: 'tail-grip/shim', stack: 'tail-grip/feathering' }],
  'stack/no-load-path': [{ stack: 'mast/mast' }, { stack: 'mast/mast', towards: 'up' }],
  'stack/load-shared': [{ stack: 'mast/mast', part: 'mast/bearing' }],
  'stack/thrust-idle': [{ stack: 'mast/mast', part: 'mast/thrust' }],
  'stack/order': [{ stack: 'grip/feathering', part: 'Shim (grip/shim)', member: 'spindle', against: 'Blade grip (grip/grip)' }],
  'stack/facing': [{ part: 'grip/thrust', says: 'inboard', computed: 'outboard', reason: 'the grip pulls outboard.' }],
  'load/end': [{ stack: 'mast/mast', towards: 'left', ends: 'down or up' }],
  'thread/sense-unknown': [{ joint: 'clutch/pinion', needs: 'goes-in' }],
  'thread/loosens': [{ joint: 'clutch/pinion', when: 'when driven' }],
  'lock/unstated': [{ joint: 'clutch/nut' }],
  'lock/one-line': [{ joint: 'clutch/nut' }],
  'lock/forbidden': [{ joint: 'clutch/nut', reason: 'compound cracks this plastic' }],
  'access/cycle': [{ loop: ['a', 'b', 'a'] }],
  'order/cycle': [{ loop: ['a', 'b', 'a'] }],
  'hazard/gap': [{ hazard: 'tail-lost', reason: 'nothing drives the tail' }],
  'place/unknown': [{ part: 'mast/hub' }],
  'hold/circle': [{ joint: 'tail-case/cross-pin' }],
  'flown/mass': [{ path: 'flown.hover', mass: '6.3 kg' }],
  'flown/rotor-speed': [{ path: 'flown.hover', speed: '1,765 rpm' }],
  'limit/exceeded': [{ figure: 'speed bell', value: '17,200 rpm', limit: '17,000 rpm' }],
  'edit/path': [{ reason: 'the list is empty' }, { reason: 'it is a section with entries of its own, and “15” is none', right: 'Write one of its entries: drive.mesh.driver.teeth.' }],
  'edit/alias': [{ name: 'a' }],
};

function finding(code: string, values: Values): Finding {
  return { code, severity: 'error', path: 'rotors.main.chord', given: 'given text', values };
}

describe('words', () => {
  it.each(findingCodes)('%s says what is wrong and what to do, with nothing left open', (code) => {
    for (const values of samples[code]) {
      const { problem, remedy } = wordFinding(finding(code, values));
      for (const sentence of [problem, remedy]) {
        expect(sentence.length).toBeGreaterThan(8);
        expect(sentence).not.toMatch(/\{\w+\}|…|undefined|\[object/);
      }
      expect(problem).toMatch(/[.?!]$/);
    }
  });

  it('has every value that it is given in its sentences, or in the choice of them', () => {
    const { problem, remedy } = wordFinding(finding('drive/loop', { loop: ['mast', 'tube', 'tail'], ratioOne: '23/5', ratioTwo: '4' }));
    expect(problem).toBe('Two ways around mast, tube and tail disagree: one turns 23/5, the other 4.');
    expect(remedy).toContain('tooth count');
  });

  it('keeps remedies short enough to read at the bench: 30 words', () => {
    for (const code of findingCodes) {
      for (const values of samples[code]) expect(wordFinding(finding(code, values)).remedy.split(' ').length, code).toBeLessThanOrEqual(30);
    }
  });

  it('words every code that any file of this room raises', () => {
    const raised = new Set<string>();
    const walk = (folder: string) => {
      for (const entry of readdirSync(folder, { withFileTypes: true })) {
        const path = `${folder}/${entry.name}`;
        if (entry.isDirectory()) walk(path);
        else for (const match of readFileSync(path, 'utf8').matchAll(/(?:add|at|report)\([^)]*?'([a-z]+\/[a-z-]+)'/gu)) raised.add(match[1] as string);
      }
    };
    walk(`${import.meta.dirname}/../src`);
    expect(raised.size).toBeGreaterThan(20);
    for (const code of raised) expect(isFindingCode(code), code).toBe(true);
  });

  it('knows the gravity of each', () => {
    expect(severityOf('unit/unknown')).toBe('error');
    expect(severityOf('lock/unstated')).toBe('warning');
    expect(severityOf('variant/nothing')).toBe('note');
  });

  it('shows a code that nobody has worded, rather than nothing', () => {
    expect(wordFinding(finding('new/code', {})).problem).toContain('new/code');
  });
});
