import { describe, expect, it } from 'vitest';
import { formatFinding, readMachine, wordFinding } from '../src/index.ts';
import { broken, fixture } from './fixture.ts';

interface BrokenFile {
  readonly what: string;
  /** What is replaced, and by what. */
  readonly from: string;
  readonly to: string;
  readonly code: string;
  /** A piece of the line at which the finding stands. */
  readonly line: string;
  /** The text under the finding, where it has one. */
  readonly given?: string;
  /** What the two sentences must say. */
  readonly says: RegExp;
}

// Expected: what MACHINE-FILE's list of codes calls each mistake, and what a person would write instead.
const files: readonly BrokenFile[] = [
  { what: 'a unit of nobody', from: 'displacement: 21 cm³', to: 'displacement: 21 cc', code: 'unit/unknown', line: 'engine:', given: '21 cc', says: /“cc” in “21 cc”.*Write cm³,/s },
  { what: 'grams spelt gr', from: 'blade-mass: 150 g', to: 'blade-mass: 150 gr', code: 'unit/unknown', line: 'main: {on: mast', given: '150 gr', says: /“gr” in “150 gr”.*Write g,/s },
  { what: 'a bare number where a length is wanted', from: 'chord: 54 mm', to: 'chord: 54', code: 'unit/missing', line: 'chord: 54', given: '54', says: /“54” has no unit.*58 mm/s },
  { what: 'a mass where a length is wanted', from: 'diameter: 1400 mm', to: 'diameter: 1400 g', code: 'unit/wrong', line: 'main: {on: mast', given: '1400 g', says: /g measures a mass; a length is wanted.*1550 mm/s },
  { what: 'a frequency for a speed of rotation', from: 'idle: 3500 rpm', to: 'idle: 58 Hz', code: 'unit/wrong', line: 'idle: 58 Hz', says: /a frequency; a speed of rotation is wanted/ },
  { what: 'a decimal comma', from: 'mass: 4.2 kg', to: 'mass: 4,2 kg', code: 'value/number', line: 'mass: 4,2', given: '4,2 kg', says: /decimal point, not a comma: 4\.2/ },
  { what: 'Celsius in a product', from: 'expansion: 2e-6 1/K', to: 'expansion: 2e-6 1/°C', code: 'unit/misplaced', line: 'carbon plate:', says: /use K/ },
  { what: 'a window with its ends swapped', from: '0.05 to 0.1 mm', to: '0.1 to 0.05 mm', code: 'value/number', line: 'backlash: {', says: /smaller end comes first/ },
  { what: 'a negative diameter', from: 'tail: {on: tail, blades: 2, diameter: 250 mm}', to: 'tail: {on: tail, blades: 2, diameter: -250 mm}', code: 'value/range', line: 'diameter: -250', given: '-250 mm', says: /more than 0 mm/ },
  { what: 'half a tooth', from: 'teeth: 14,', to: 'teeth: 14.5,', code: 'type/wrong', line: 'teeth: 14.5', given: '14.5', says: /“14\.5” is not a whole number/ },
  { what: 'no teeth', from: 'driven: {on: mast, teeth: 116}', to: 'driven: {on: mast, teeth: 0}', code: 'value/range', line: 'teeth: 0', says: /from 3 to 2000/ },
  { what: 'a misspelt key', from: '\nrotors:\n  main:', to: '\nroters:\n  main:', code: 'key/unknown', line: 'roters:', given: 'roters', says: /“roters” is no entry of the file\. Write rotors/ },
  { what: 'a key of nowhere', from: 'comes: assembled', to: 'colour: red', code: 'key/unknown', line: 'colour: red', says: /“colour”.*Write one of title, tip/s },
  { what: 'a sentence split by its comma', from: 'do: Turn the bell by hand.', to: 'do: Turn the bell by hand, then back.', code: 'key/unknown', line: 'turn: {do', given: 'then back.', says: /comma in an unquoted sentence.*Put the whole sentence of do in "quotes"/s },
  { what: 'a coupling without a driver', from: 'clutch: {kind: centrifugal-clutch, driver: {on: crank}, driven', to: 'clutch: {kind: centrifugal-clutch, driven', code: 'key/missing', line: 'clutch: {kind', says: /drive\.clutch wants driver.*Add driver:/s },
  { what: 'an unknown kind of coupling', from: 'kind: belt', to: 'kind: bellt', code: 'type/wrong', line: 'tail-belt', given: 'bellt', says: /external, internal, bevel.*Write it like this: belt/s },
  { what: 'an axis without a name', from: 'tail: {axis: left}', to: 'tail: {axis: sideways}', code: 'type/wrong', line: 'axis: sideways', says: /up, down, fore, aft, left, right/ },
  { what: 'a sense of rotation seen from nowhere', from: 'counter-clockwise from above', to: 'counter-clockwise', code: 'type/wrong', line: 'speed: 14000 rpm, best', says: /from where it is seen.*counter-clockwise from above/s },
  { what: 'a helix without a hand', from: 'helix: 12 ° left', to: 'helix: 12 °', code: 'type/wrong', line: 'helix: 12', says: /hand of the driver.*12 ° left/s },
  { what: 'the same key twice', from: '  mass: 4.2 kg', to: '  mass: 4.2 kg\n  mass: 4.3 kg', code: 'id/twice', line: 'mass: 4.3 kg', given: 'mass', says: /second time; the first is in line 6/ },
  { what: 'one id for a part and a joint', from: 'blade-bolt: {kind: bolt', to: 'blade: {kind: bolt', code: 'id/twice', line: 'blade: {kind: bolt', given: 'blade', says: /“blade” names two things of grip/ },
  { what: 'an id with a space', from: 'bag-1: {title', to: 'bag 1: {title', code: 'key/name', line: 'bag 1:', given: 'bag 1', says: /cannot be an id.*such as bag-1/s },
  { what: 'a shaft that is not there', from: 'sensors:\n  governor: {reads: bell', to: 'sensors:\n  governor: {reads: bel', code: 'ref/unknown', line: 'governor:', given: 'bel', says: /no shaft “bel”\. Write bell/ },
  { what: 'a part that is not there', from: 'part: mast/hub}', to: 'part: mast/hup}', code: 'ref/unknown', line: 'part: mast/hup', given: 'mast/hup', says: /no part “mast\/hup”\. Write mast\/hub/ },
  { what: 'a copy that is not there', from: 'on: mast/stud, holds', to: 'on: mast/stud.C, holds', code: 'ref/unknown', line: 'link: {kind: ball-link', says: /no part or joint “mast\/stud\.C”/ },
  { what: 'one of two copies, unsaid', from: 'part: clutch/cap, gap', to: 'part: grip/blade, gap', code: 'ref/which', line: 'governor:', given: 'grip/blade', says: /not clear which.*grip\.A\/blade, grip\.B\/blade and grip\.\*\/blade/s },
  { what: 'a joint where a part is wanted', from: 'spindle: bell', to: 'spindle: nut', code: 'ref/kind', line: 'spindle: nut', given: 'nut', says: /“nut” is a joint; a part is wanted/ },
  { what: 'a lock of nobody', from: 'lock: insert, torque: 2 N·m', to: 'lock: insret, torque: 2 N·m', code: 'ref/unknown', line: 'bolt: {kind: bolt, thread: M4, on: tube', given: 'insret', says: /“insret”\. Write insert/ },
  { what: 'grease for a lock', from: 'lock: [medium, wire]', to: 'lock: grease', code: 'ref/kind', line: 'mount-screw', given: 'grease', says: /is a grease; a threadlocker/ },
  { what: 'values for other copies', from: 'azimuth: {front: 0 °, left: 120 °}', to: 'azimuth: {front: 0 °, right: 120 °}', code: 'copies/mismatch', line: 'cyclic:', says: /for front and right; the copies are front and left/ },
  { what: 'a fact that is computed', from: 'tube: {axis: aft}', to: 'tube: {axis: aft, speed: 5000 rpm}', code: 'fact/derived', line: 'tube: {axis', given: 'speed', says: /“speed” is computed.*under expect/s },
  { what: 'teeth on a part', from: 'cap: {material: aluminium 7075}', to: 'cap: {material: aluminium 7075, teeth: 20}', code: 'fact/derived', line: 'cap: {', given: 'teeth', says: /coupling that the gear belongs to/ },
  { what: 'a pinion that nobody sells', from: 'teeth: 14, part', to: 'teeth: 16, part', code: 'choice/not-sold', line: 'driver: {on: bell', given: '16', says: /16 teeth are fitted, but the choices are 13, 14 and 15/ },
  { what: 'more needed than there are', from: 'enough: 2', to: 'enough: 4', code: 'value/range', line: 'cap-screw', given: '4', says: /there are 3 of this joint.*from 1 to 3/s },
  { what: 'a screw without a word on its lock', from: 'holds: body, lock: medium, behind', to: 'holds: body, behind', code: 'lock/unstated', line: 'screw: {type: screw-m3, in: mast/hub', given: 'screw', says: /does not say how grip\.A\/screw is locked.*lock: none/s },
  { what: 'two things each behind the other', from: 'cap: {material: aluminium 7075}', to: 'cap: {material: aluminium 7075, behind: nut}', code: 'access/cycle', line: 'cap: {', says: /clutch\/nut, clutch\/cap and clutch\/nut|clutch\/cap, clutch\/nut and clutch\/cap/ },
  { what: 'a load towards no end', from: 'loads: [main-mesh]', to: 'loads: [{pushes: bell, towards: left}]', code: 'load/end', line: 'loads:', given: 'left', says: /“left” is no end of clutch\/main\. Write down or up/ },
  { what: 'a variant that changes nothing', from: 'diameter: 1250 mm', to: 'diameter: 1400 mm', code: 'variant/nothing', line: 'rotors: {main: {diameter: 1400 mm, wanted: null}}', given: 'diameter', says: /changes nothing/ },
  { what: 'a broken variant', from: 'diameter: 1250 mm', to: 'diamter: 1250 mm', code: 'key/unknown', line: 'diamter: 1250', says: /Write diameter/ },
  { what: 'a quantity to measure of nobody', from: 'of: backlash main-mesh', to: 'of: backlsh main-mesh', code: 'ref/unknown', line: 'backlash: {of', says: /quantity to measure “backlsh”\. Write backlash/ },
  { what: 'a condition of two kinds', from: 'when: {comes-off: grip/blade}', to: 'when: {comes-off: grip/blade, jams: clutch/bell}', code: 'key/one-of', line: 'blade-lost', says: /exactly one of/ },
  { what: 'a future format', from: 'rotorwright: 1', to: 'rotorwright: 7', code: 'version/unknown', line: 'rotorwright: 7', given: '7', says: /format 7; this program reads format 1/ },
  { what: 'a tab', from: '  mass: 4.2 kg', to: '\tmass: 4.2 kg', code: 'yaml/syntax', line: '\tmass', says: /tab/i },
  { what: 'a bracket that is never closed', from: 'tail: {axis: left}', to: 'tail: {axis: left', code: 'yaml/syntax', line: 'tail: {axis: left', given: '{', says: /bracket is opened and never closed.*Close it/s },
  { what: 'a colon in a sentence', from: 'origin: mast axis, top', to: 'origin: mast axis: top', code: 'yaml/syntax', line: 'origin:', says: /"quotes"/ },
  { what: 'an alias without an anchor', from: 'mass: 4.2 kg', to: 'mass: *weight', code: 'yaml/syntax', line: 'mass: *weight', says: /anchor/ },
  { what: 'a quote that is never closed', from: 'name: Test Petrel', to: 'name: "Test Petrel', code: 'yaml/syntax', line: 'name: "Test Petrel', given: '"', says: /quote is opened and never closed/ },
];

describe('broken files', () => {
  it.each(files)('$what: $code', ({ from, to, code, line, given, says }) => {
    const text = broken(from, to);
    const { findings } = readMachine(text, { file: 'test.yaml' });
    const finding = findings.find((one) => one.code === code);
    if (!finding) throw new Error(`no ${code} among:\n${findings.map((one) => formatFinding(one, 'test.yaml')).join('\n')}`);
    expect(text.split('\n')[(finding.place?.line ?? 0) - 1]).toContain(line);
    if (given !== undefined) expect(finding.given).toBe(given);
    const { problem, remedy } = wordFinding(finding);
    expect(`${problem} ${remedy}`).toMatch(says);
    expect(`${problem} ${remedy}`).not.toMatch(/\{\w+\}|…|undefined|\[object/);
  });

  it('one mistake gives one finding, unless it takes others with it', () => {
    // A missing part, an unreadable text or a split sentence rightly has followers; all others stand alone.
    const alone = files.filter((file) => !['yaml/syntax', 'key/unknown', 'access/cycle', 'id/twice', 'key/name', 'ref/unknown', 'type/wrong', 'key/missing'].includes(file.code));
    for (const { what, from, to } of alone) expect(readMachine(broken(from, to)).findings.map((one) => one.code), what).toHaveLength(1);
  });

  it('reports all mistakes at once, in the order of the file', () => {
    const text = fixture.replace('mass: 4.2 kg', 'mass: 4.2').replace('axis: aft', 'axis: aft, speed: 1 rpm').replace('reads: bell', 'reads: bel').replace('60 h', '60 g');
    expect(readMachine(text).findings.map((finding) => finding.code)).toEqual(['unit/missing', 'fact/derived', 'ref/unknown', 'unit/wrong']);
  });

  it('leaves out what is wrong and keeps the rest', () => {
    const { machine } = readMachine(broken('chord: 54 mm', 'chord: 54'));
    expect(machine?.rotors.get('main')?.chord).toBeUndefined();
    expect(machine?.rotors.get('main')?.blades).toBe(2);
  });

  it('gives no machine when the text cannot be trusted', () => {
    expect(readMachine(broken('rotorwright: 1', 'rotorwright: 2')).machine).toBeUndefined();
    expect(readMachine('a: [1').machine).toBeUndefined();
  });

  it('writes a finding as one line that editors and terminals can follow', () => {
    const [finding] = readMachine(broken('chord: 54 mm', 'chord: 54 gr')).findings;
    if (!finding) throw new Error('no finding');
    expect(formatFinding(finding, 'petrel.yaml')).toBe(`petrel.yaml:${finding.place?.line}:${finding.place?.column} unit/unknown The unit “gr” in “54 gr” is not known. Write g, or another listed unit.`);
  });
});

describe('bounds', () => {
  it('refuses more than 2 MB and says how much it is', () => {
    const { findings, machine } = readMachine(`# ${'x'.repeat(2 * 1024 * 1024)}`);
    expect(machine).toBeUndefined();
    expect(findings).toMatchObject([{ code: 'yaml/too-large', place: { line: 1, column: 1 } }]);
  });

  it('counts bytes, not letters', () => {
    expect(readMachine(`# ${'µ'.repeat(1024 * 1024)}`).findings).toMatchObject([{ code: 'yaml/too-large' }]);
    expect(readMachine(`# ${'x'.repeat(1024 * 1024)}`).findings).toEqual([]);
  });

  it.each([
    ['brackets', `a: ${'['.repeat(100_000)}`],
    ['braces', `a: ${'{a: '.repeat(100_000)}`],
    ['dashes', `${'- '.repeat(100_000)}a`],
    ['a stair of lines', Array.from({ length: 400 }, (_, i) => `${' '.repeat(i)}a:`).join('\n')],
  ])('refuses deep nesting of %s, at its place, at once', (_, text) => {
    const start = performance.now();
    const { findings } = readMachine(text);
    expect(findings).toMatchObject([{ code: 'yaml/too-deep' }]);
    expect(performance.now() - start).toBeLessThan(2000);
  });

  it('takes many brackets in quotes and comments', () => {
    expect(readMachine(`machine: {name: "${'['.repeat(100)}"} # ${'{'.repeat(100)}`).findings).toEqual([]);
  });

  it('stops an alias bomb', () => {
    const bomb = ['a0: &a0 [x, x, x, x, x, x, x, x, x, x]', ...Array.from({ length: 8 }, (_, i) => `a${i + 1}: &a${i + 1} [${Array.from({ length: 10 }, () => `*a${i}`).join(', ')}]`)].join('\n');
    const start = performance.now();
    expect(readMachine(bomb).findings.map((finding) => finding.code)).toContain('yaml/too-large');
    expect(performance.now() - start).toBeLessThan(2000);
  });

  it('stops an alias inside its own anchor', () => {
    expect(readMachine('shafts: &a {crank: *a}').findings.map((finding) => finding.code)).toContain('yaml/alias');
  });

  it('reads honest aliases, each where it was written', () => {
    const { machine, findings } = readMachine('machine: {name: Plover}\nshafts:\n  a: &up {axis: up}\n  b: *up\n');
    expect(findings).toEqual([]);
    expect(machine?.shafts.get('b')?.axis).toEqual([0, 0, 1]);
    expect(machine?.places.get('shafts.b.axis')?.line).toBe(3);
  });

  it('knows no magic keys', () => {
    const { findings } = readMachine('__proto__: {a: 1}\nshafts: {__proto__: {axis: up}, constructor: {axis: up}}\nrotors: {toString: {on: constructor}}\n');
    expect(findings.map((finding) => finding.code)).toEqual(['key/unknown', 'key/name']);
    expect(({} as Record<string, unknown>)['axis']).toBeUndefined();
  });
});
