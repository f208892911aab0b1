import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { describe, expect, it } from 'vitest';
import type { Entry } from '@rotorwright/logbook';
import { bench, plover } from './plover.ts';
import { shell, widest } from './shell.ts';

const commands = ['new', 'check', 'figures', 'options', 'controls', 'plan', 'shims', 'count', 'reach', 'holds', 'change', 'sign', 'log', 'listen', 'calc', 'serve', 'backup', 'restore'];

describe('help', () => {
  it('lists every command, and what the exit status means', async () => {
    const { status, out } = await shell(['--help']);
    expect(status).toBe(0);
    for (const command of commands) expect(out).toMatch(new RegExp(`^  ${command} `, 'm'));
    expect(out).toContain('Exit status: 0 fine, 1 answered with a finding, 2 wrong input');
  });

  it.each(commands)('%s --help has an example and fits 80 columns', async (command) => {
    const { status, out, err } = await shell([command, '--help']);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(new RegExp(`Example:\n  (echo .*\\| )?rotorwright ${command}`));
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it.each(['check', 'figures', 'options', 'plan', 'count', 'reach', 'holds', 'log'])('%s answers in JSON too', async (command) => {
    const { folder, home } = bench();
    const { out } = await shell([command, 'plover.yaml', ...(command === 'reach' ? ['post'] : []), '--json'], { folder, home });
    expect(JSON.parse(out)).toBeTypeOf('object');
  });

  it.each<[string, readonly string[]]>([
    ['nothing', []],
    ['an unknown command', ['figurs']],
    ['an unknown option', ['plan', 'plover.yaml', '--al']],
    ['a missing argument', ['figures']],
    ['a machine that is not there', ['figures', 'plovr.yaml']],
    ['a path out of the home', ['figures', '../home']],
    ['an empty name', ['figures', '']],
  ])('%s is refused: status 2, nothing on standard output', async (_, args) => {
    const { folder, home } = bench();
    const { status, out, err } = await shell(args, { folder, home });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).not.toBe('');
  });

  it('a command that only reads makes no home', async () => {
    const { folder, home } = bench();
    for (const command of ['check', 'figures', 'options', 'plan', 'reach', 'holds', 'log']) await shell([command, 'plover.yaml'], { folder, home });
    expect(existsSync(home)).toBe(false);
  });
});

describe('figures in other air', () => {
  const soundAt = async (...air: readonly string[]): Promise<number> => {
    const { folder } = bench();
    const { out } = await shell(['figures', 'plover.yaml', '--json', ...air], { folder });
    return (JSON.parse(out) as { readonly figures: readonly { readonly name: string; readonly value?: number }[] }).figures.find(({ name }) => name === 'speed-of-sound')!.value!;
  };

  // published: ISO 2533:1975, 340.29 m/s at sea level and 328.58 m/s at 3,000 m
  it('takes the height of the field', async () => {
    expect(await soundAt()).toBeCloseTo(340.29, 1);
    expect(await soundAt('--altitude', '3000 m')).toBeCloseTo(328.58, 1);
  });

  // law: the speed of sound goes with the root of the absolute temperature
  it('takes a warm day', async () => {
    expect((await soundAt('--warmer', '20 K')) / (await soundAt())).toBeCloseTo(Math.sqrt(308.15 / 288.15), 6);
  });

  it('wants a unit', async () => {
    const { folder } = bench();
    expect(await shell(['figures', 'plover.yaml', '--altitude', '400'], { folder })).toMatchObject({ status: 2, out: '' });
  });
});

describe('check', () => {
  it('finds nothing in a good file', async () => {
    const { folder } = bench();
    expect(await shell(['check', 'plover.yaml'], { folder })).toEqual({ status: 0, out: 'Plover (plover.yaml): 0 errors, 0 warnings, 0 notes.\n', err: '' });
  });

  it('names file, line, column, code and remedy of every mistake', async () => {
    const text = plover.replace('12400 rpm', '12400 rmp').replace('lock: medium', 'lok: medium');
    const { folder } = bench(text);
    const { status, out } = await shell(['check', 'plover.yaml'], { folder });
    const line = (part: string): number => text.slice(0, text.indexOf(part)).split('\n').length;
    expect(status).toBe(1);
    expect(out).toMatch(new RegExp(`^plover.yaml:${line('12400 rmp')}:\\d+ error unit/unknown$`, 'm'));
    expect(out).toMatch(new RegExp(`^plover.yaml:${line('lok:')}:\\d+ error key/unknown$`, 'm'));
    expect(out).toContain('rpm');
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('answers about a file that is no YAML', async () => {
    const { folder } = bench('machine: { name: [');
    const { status, out } = await shell(['check', 'plover.yaml'], { folder });
    expect(status).toBe(1);
    expect(out).toMatch(/^plover\.yaml:1:\d+ error yaml\/syntax$/m);
  });
});

describe('figures', () => {
  it('shows speeds and directions within 80 columns', async () => {
    const { folder } = bench();
    const { status, out } = await shell(['figures', 'plover.yaml'], { folder });
    expect(status).toBe(0);
    // by hand: 12400·10/77 = 1610.39 rpm; the external mesh turns the mast the other way
    expect(out).toMatch(/^speed mast\s+1,610 rpm/m);
    expect(out).toMatch(/^mast\s+clockwise from above$/m);
    expect(out).toMatch(/^crank\s+counter-clockwise from above$/m);
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('takes another engine speed', async () => {
    const { folder } = bench();
    // by hand: 7700·10/77 = 1000
    expect((await shell(['figures', 'plover.yaml', '--speed', '7700 rpm'], { folder })).out).toMatch(/^speed mast\s+1,000 rpm/m);
  });

  it('opens a figure down to the line of the file', async () => {
    const { folder } = bench();
    const line = plover.slice(0, plover.indexOf('12400 rpm')).split('\n').length;
    const { status, out } = await shell(['figures', 'plover.yaml', '--open', 'tip-speed main'], { folder });
    expect(status).toBe(0);
    expect(out).toContain(`plover.yaml:${line}`);
    expect(out).toContain('tip-speed');
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('keeps colour out of a pipe, and says the same with it', async () => {
    const { folder } = bench();
    const plain = (await shell(['figures', 'plover.yaml'], { folder })).out;
    const coloured = (await shell(['figures', 'plover.yaml'], { folder, colour: true })).out;
    expect(plain).not.toContain('\u001B');
    expect(coloured).toContain('\u001B');
    expect(stripVTControlCharacters(coloured)).toBe(plain);
  });

  it.each<[string, readonly string[], RegExp]>([
    ['an unknown figure', ['--open', 'speed msat'], /no figure “speed msat”.*speed mast/],
    ['an unknown state', ['--state', 'gliding'], /driven, clutch-open, autorotation/],
    ['a state that the machine has not', ['--state', 'clutch-open'], /has no state clutch-open/],
    ['a speed without unit', ['--speed', '12000'], /--speed: given “12000”: the unit is missing/],
    ['a speed in mm', ['--speed', '12 mm'], /mm is the unit of a length/],
    ['a unit that is none', ['--speed', '12 rmp'], /nearest is rpm/],
  ])('refuses %s', async (_, more, complaint) => {
    const { folder } = bench();
    const { status, out, err } = await shell(['figures', 'plover.yaml', ...more], { folder });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(complaint);
  });
});

describe('options', () => {
  it('ranks what can be bought, says what rules the rest out and what to order', async () => {
    const { folder } = bench();
    const { status, out } = await shell(['options', 'plover.yaml'], { folder });
    expect(status).toBe(0);
    expect(out).toMatch(/nothing: as fitted\s+1,610 rpm\s+holds/);
    expect(out).toContain('PL-11');
    expect(out).toContain('1 of 3 combinations hold.');
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('finds the pinion for a wanted speed', async () => {
    const { folder } = bench();
    const { status, out } = await shell(['options', 'plover.yaml', '--speed', '1770 rpm', '--json'], { folder });
    const { options } = JSON.parse(out) as { readonly options: readonly { readonly teeth: Readonly<Record<string, number>>; readonly mainSpeed: number }[] };
    expect(status).toBe(0);
    // by hand: 12400·11/77 = 1771.43 rpm is nearer than 1610.39
    expect(options[0]?.teeth).toEqual({ 'drive.main-mesh.driver.teeth': 11 });
    expect((options[0]?.mainSpeed ?? 0) * 30 / Math.PI).toBeCloseTo(1771.43, 2);
  });

  it('ends with status 1 when no combination holds', async () => {
    const { folder } = bench();
    expect((await shell(['options', 'plover.yaml', '--speed', '3000 to 3100 rpm'], { folder })).status).toBe(1);
  });

  it('says so when the file offers nothing', async () => {
    const { folder } = bench(plover.replace(/, choices: \[.*\] \}/, ' }'));
    expect((await shell(['options', 'plover.yaml'], { folder })).out).toContain('offers no other gears');
  });

  it('says so when the speed of the rotor is not known', async () => {
    const { folder } = bench(plover.replace('speed: 12400 rpm, ', ''));
    const { status, out } = await shell(['options', 'plover.yaml', '--speed', '1700 rpm'], { folder });
    expect(status).toBe(1);
    expect(out).toContain('does not follow from the file');
  });

  it.each([['--rotor', 'tail'], ['--show', '0'], ['--speed', 'fast']])('refuses %s %s', async (...more) => {
    const { folder } = bench();
    expect(await shell(['options', 'plover.yaml', ...more], { folder })).toMatchObject({ status: 2, out: '' });
  });
});

describe('change', () => {
  it('holds another tooth count against the machine: figures, band, what to sign again', async () => {
    const { folder } = bench();
    const { status, out, err } = await shell(['change', 'plover.yaml', '--set', 'drive.main-mesh.driver.teeth=11'], { folder });
    // By hand: 12,400 rpm × 10/77 = 1,610 rpm; × 11/77 = 1,771 rpm, beyond the wanted 1,700 rpm.
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toMatch(/Speed of mast\s+1,610\.4 rpm\s+1,771\.4 rpm\s+\+10 %/u);
    expect(out).toMatch(/newly exceeded: Speed of mast: 1,610\.4 rpm → 1,771\.4 rpm/u);
    expect(widest(out)).toBeLessThanOrEqual(80);
    expect(readFileSync(path.join(folder, 'plover.yaml'), 'utf8')).toBe(plover);
  });

  it('takes a second file, and says that nothing changes where nothing does', async () => {
    const { folder } = bench();
    writeFileSync(path.join(folder, 'other.yaml'), plover.replace('lock: medium', 'lock: high'));
    const { status, out } = await shell(['change', 'plover.yaml', 'other.yaml', '--json'], { folder });
    expect(status).toBe(0);
    const { edits, work } = JSON.parse(out) as { readonly edits: unknown; readonly work: { readonly again: readonly { readonly step: { readonly id: string }; readonly why: string }[] } };
    expect(edits).toEqual([{ path: 'modules.head.joints.post-screw.lock', before: 'medium', after: 'high' }]);
    expect(work.again.map(({ step, why }) => [step.id, why])).toContainEqual(['head/post-screw', 'changed']);
    expect((await shell(['change', 'plover.yaml', 'plover.yaml'], { folder })).out).toContain('Nothing would change');
  });

  it.each<[string, readonly string[]]>([['', ['flown.hover does not say with which mass']], ['mass: 5 kg, ', []]])('another mass reads a measured hover {%s…} anew, and that is told only where the hover has no mass of its own', async (own, words) => {
    const { folder } = bench();
    writeFileSync(path.join(folder, 'flown.yaml'), `${plover.replace('  invented: true\n', '  invented: true\n  mass: 5 kg\n')}\nflown:\n  hover: {${own}collective: 4 °}\n`);
    const { err } = await shell(['change', 'flown.yaml', '--set', 'machine.mass=6 kg'], { folder });
    for (const each of words) expect(err).toContain(each);
    if (words.length === 0) expect(err).toBe('');
  });

  it.each<[string, readonly string[], RegExp]>([
    ['no change at all', [], /one way/u],
    ['two ways at once', ['--set', 'machine.name=X', '--variant', 'short'], /one way/u],
    ['an entry without a value', ['--set', 'machine.name'], /entry and its value/u],
    ['an entry that cannot be', ['--set', 'machine.name.first=X'], /machine\.name\.first/u],
    ['a value that is wrong', ['--set', 'rotors.main.diameter=long'], /would be wrong/u],
    ['an entry under a name that is not there', ['--set', 'drive.pinion.driver.teeth=11'], /has no drive\.pinion\. (There|The nearest) is .*main-mesh/u],
    ['a variant that is not there', ['--variant', 'short'], /no variant “short”/u],
  ])('%s is refused', async (_, more, words) => {
    const { folder } = bench();
    const { status, out, err } = await shell(['change', 'plover.yaml', ...more], { folder });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(words);
  });
});

describe('sign and log', () => {
  const sign = (world: ReturnType<typeof bench>, ...more: readonly string[]) => shell(['sign', 'plover.yaml', ...more], world);

  it('records who did what, when and with what', async () => {
    const world = bench();
    const { status, out } = await sign(world, 'head/post-screw', '--by', 'Maren', '--note', 'new screw', '--json');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ machine: 'plover', number: 1, by: 'Maren', at: '2026-03-01T18:30:00.000Z', body: { kind: 'signed', step: 'head/post-screw', locks: ['medium'], torque: 1.2, note: 'new screw' } });
    const log = await shell(['log', 'plover.yaml'], world);
    expect(log.out).toMatch(/2026-03-01 18:30\s+Maren\s+signed head\/post-screw; locked medium; 1\.2 N·m/);
    expect((await shell(['log', 'plover.yaml', '--verify'], world)).out).toContain('holds together: 1 entry');
  });

  it('knows the state before and after', async () => {
    const world = bench();
    await sign(world, 'head/swing', '--by', 'Oda', '--feel', 'yes');
    const statesAt = async (...more: readonly string[]) => (JSON.parse((await shell(['log', 'plover.yaml', '--json', ...more], world)).out) as { readonly states: Readonly<Record<string, { readonly state: string }>> }).states;
    expect((await statesAt())['head/swing']?.state).toBe('signed');
    expect((await statesAt('--at', '2026-02-01'))['head/swing']?.state).toBe('open');
    expect((await shell(['plan', 'plover.yaml'], world)).out).toMatch(/^head\/swing\s+signed/m);
  });

  it('takes a feel in four words, and says which is wanted', async () => {
    const world = bench(plover.replace('"Does the post swing freely?"', '"How does the post swing?", wanted: free'));
    await expect(sign(world, 'head/swing', '--by', 'Oda', '--feel', 'yes')).resolves.toMatchObject({ status: 2, out: '', err: expect.stringMatching(/binds or snug or free or loose; given: yes/) as string });
    await expect(sign(world, 'head/swing', '--by', 'Oda', '--feel', 'loose')).resolves.toMatchObject({ status: 1, err: expect.stringContaining('answered with loose; wanted is free') as string });
    await expect(sign(world, 'head/swing', '--by', 'Oda', '--feel', 'free')).resolves.toMatchObject({ status: 0 });
    expect((await shell(['plan', 'plover.yaml'], world)).out).toMatch(/^head\/swing\s+signed/m);
  });

  it('takes a second look by somebody else, and refuses one by the signer on the same evening', async () => {
    const world = bench(`${plover}hazards:\n  post-lost: { ends-in: crash, when: { comes-off: head/post } }\n`);
    await expect(sign(world, 'head/post-screw', '--by', 'Oda', '--second-look', 'good')).resolves.toMatchObject({ status: 2, err: expect.stringMatching(/head\/post-screw is open: there is no signature to look at again/) as string });
    await sign(world, 'head/post-screw', '--by', 'Maren');
    expect(await sign(world, 'head/post-screw', '--by', 'maren', '--second-look', 'good')).toMatchObject({ status: 2, err: expect.stringMatching(/maren signed head\/post-screw\. Let somebody else look, or look again yourself from 2026-03-02T06:30:00\.000Z on/) as string });
    expect(JSON.parse((await sign(world, 'head/post-screw', '--by', 'Oda', '--second-look', 'good', '--json')).out)).toMatchObject({ number: 2, body: { kind: 'looked', found: 'good' } });
    expect(await sign(world, 'head/post-screw', '--by', 'Oda', '--second-look', 'bad')).toMatchObject({ status: 2, err: expect.stringMatching(/body\.note is missing/) as string });
    expect(await sign(world, 'head/post-screw', '--by', 'Oda', '--second-look', 'bad', '--note', 'dry thread')).toMatchObject({ status: 1, err: expect.stringMatching(/undone: set it right and sign again/) as string });
    const log = await shell(['log', 'plover.yaml'], world);
    expect(log.status).toBe(1);
    expect(log.out).toMatch(/undone head\/post-screw: found bad by Oda on 2026-03-01 \(entry 3\): dry thread/);
  });

  it('counts on a slower cure in the cold, and refuses where nothing cures', async () => {
    const world = bench();
    const { out } = await sign(world, 'head/post-screw', '--by', 'Maren', '--temperature', '12 °C', '--json');
    // Common practice, no source: twice the time for every 10 K below 22 °C; 24 h by the usual bottle.
    expect(JSON.parse(out)).toMatchObject({ body: { cure: 172_800, temperature: 285.15 } });
    expect(await sign(world, 'head/post-screw', '--by', 'Maren', '--temperature', '4 °C')).toMatchObject({ status: 2, err: expect.stringMatching(/below 5 °C the compound may never cure/) as string });
    expect(await sign(world, 'head/post-screw', '--by', 'Maren', '--temperature', '4 mm')).toMatchObject({ status: 2, err: expect.stringMatching(/is no temperature/) as string });
  });

  it('says what speaks against flying', async () => {
    const world = bench(`${plover}hazards:\n  post-lost: { ends-in: crash, when: { comes-off: head/post } }\n`);
    expect((await shell(['log', 'plover.yaml'], world)).out).toMatch(/Not to be flown: of what a crash or an injury hangs on, 1 open\.\n {2}open head\/post-screw/);
    expect((await shell(['log', 'plover.yaml'], bench())).out).toMatch(/Not assessed: the file names no hazard/);
  });

  it('a signature is undone by a change of the file: status 1', async () => {
    const world = bench();
    await sign(world, 'head/post-screw', '--by', 'Maren');
    writeFileSync(path.join(world.folder, 'plover.yaml'), plover.replace('lock: medium', 'lock: high'));
    const { status, out } = await shell(['log', 'plover.yaml'], world);
    expect(status).toBe(1);
    expect(out).toMatch(/undone head\/post-screw: the file asks for something else since entry 1/);
  });

  it('a measurement outside of its window is on record, and status 1', async () => {
    const world = bench();
    const { status, out, err } = await sign(world, 'head/gap', '--by', 'Ilse', '--measured', '0.4 mm');
    expect(status).toBe(1);
    expect(out).toContain('as entry 1');
    expect(err).toContain('head/gap measures 0.4 mm; wanted is at most 0.3 mm');
  });

  it('a measurement within its window is kept in SI', async () => {
    const world = bench();
    const { status, out } = await sign(world, 'head/gap', '--by', 'Ilse', '--measured', '150 µm', '--json');
    expect(status).toBe(0);
    const { body } = JSON.parse(out) as Entry;
    expect(body).toMatchObject({ measured: { value: expect.closeTo(0.00015, 12), unit: 'm' } });
  });

  it.each<[string, readonly string[], RegExp]>([
    ['nobody', ['head/post-screw'], /--by/],
    ['an empty name', ['head/post-screw', '--by', ' '], /Nothing was entered.*by/],
    ['a step that is not there', ['head/post-scrw', '--by', 'Maren'], /no step “head\/post-scrw”.*head\/post-screw/],
    ['a measurement of a screw', ['head/post-screw', '--by', 'Maren', '--measured', '1 mm'], /no measurement/],
    ['a gap without a number', ['head/gap', '--by', 'Maren'], /--measured/],
    ['a gap without a unit', ['head/gap', '--by', 'Maren', '--measured', '0.2'], /no number with a unit/],
    ['a gap in newton', ['head/gap', '--by', 'Maren', '--measured', '0.2 N'], /measured in m/],
    ['a feel without an answer', ['head/swing', '--by', 'Maren'], /Does the post swing freely/],
    ['a feel with a maybe', ['head/swing', '--by', 'Maren', '--feel', 'maybe'], /given: maybe/],
  ])('refuses %s, and records nothing', async (_, more, complaint) => {
    const world = bench();
    const { status, out, err } = await sign(world, ...more);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(complaint);
    expect((JSON.parse((await shell(['log', 'plover.yaml', '--json'], world)).out) as { readonly entries: unknown[] }).entries).toEqual([]);
  });

  it('a machine in the home is named by its id, also by the path of its file', async () => {
    const world = bench();
    mkdirSync(path.join(world.home, 'machines', 'old-plover'), { recursive: true });
    writeFileSync(path.join(world.home, 'machines', 'old-plover', 'machine.yaml'), plover);
    await shell(['sign', 'old-plover', 'head/swing', '--by', 'Oda', '--feel', 'yes'], world);
    const byPath = await shell(['sign', 'home/machines/old-plover/machine.yaml', 'head/swing', '--by', 'Oda', '--feel', 'yes', '--json'], world);
    expect(JSON.parse(byPath.out)).toMatchObject({ machine: 'old-plover', number: 2 });
  });

  it('refuses a moment that is none', async () => {
    expect(await shell(['log', 'plover.yaml', '--at', 'yesterday'], bench())).toMatchObject({ status: 2, out: '', err: expect.stringContaining('“yesterday” is no moment') });
  });
});

describe('backup and restore', () => {
  const made = async () => {
    const world = bench();
    await shell(['sign', 'plover.yaml', 'head/swing', '--by', 'Oda', '--feel', 'yes'], world);
    mkdirSync(path.join(world.home, 'machines', 'plover'), { recursive: true });
    writeFileSync(path.join(world.home, 'machines', 'plover', 'machine.yaml'), plover);
    expect((await shell(['backup', 'all.backup'], world)).status).toBe(0);
    return world;
  };
  const machinesOf = (home: string) => readdirSync(path.join(home, 'machines')).sort();

  it('carry machines and logbook into a fresh home, demos that were put away staying away', async () => {
    const world = await made();
    const fresh = path.join(world.folder, 'fresh');
    const { status, out } = await shell(['restore', 'all.backup', '--home', fresh], world);
    expect(status).toBe(0);
    expect(out).toContain('1 entries');
    expect(machinesOf(fresh)).toEqual(machinesOf(world.home));
    const log = async (home: string) => (JSON.parse((await shell(['log', 'plover', '--json'], { ...world, home })).out) as { readonly entries: unknown }).entries;
    expect(await log(fresh)).toEqual(await log(world.home));
    expect((await shell(['log', 'plover', '--verify'], { ...world, home: fresh })).status).toBe(0);
  });

  it('twice is the same as once', async () => {
    const world = await made();
    expect((await shell(['restore', 'all.backup'], world)).out).toContain('Restored 0 machines, 0 entries and 0 photos');
  });

  it('a machine that differs is refused, and put away only when asked', async () => {
    const world = await made();
    const file = path.join(world.home, 'machines', 'plover', 'machine.yaml');
    writeFileSync(file, `${plover}# newer\n`);
    expect(await shell(['restore', 'all.backup'], world)).toMatchObject({ status: 2, out: '', err: expect.stringContaining('plover') });
    expect(readFileSync(file, 'utf8')).toContain('# newer');
    expect((await shell(['restore', 'all.backup', '--replace'], world)).status).toBe(0);
    expect(readFileSync(file, 'utf8')).toBe(plover);
    expect(readdirSync(path.join(world.home, 'removed'))).toHaveLength(1);
  });

  it.each<[string, (text: string) => string, RegExp]>([
    ['was cut short', (text) => text.slice(0, text.lastIndexOf('{"end"')), /cut short/],
    ['was changed', (text) => text.replace('"by":"Oda"', '"by":"Ada"'), /changed after it was made/],
    ['lacks a line', (text) => text.split('\n').toSpliced(1, 1).join('\n'), /changed after it was made, or a line/],
    ['is something else', () => plover, /no backup/],
    ['is empty', () => '', /no backup/],
    ['is of a later version', (text) => text.replace('"rotorwright-backup":2', '"rotorwright-backup":3'), /version 3/],
  ])('a backup that %s is refused, and nothing is restored', async (_, change, complaint) => {
    const world = await made();
    const file = path.join(world.folder, 'all.backup');
    writeFileSync(file, change(readFileSync(file, 'utf8')));
    const fresh = path.join(world.folder, 'fresh');
    const { status, out, err } = await shell(['restore', 'all.backup', '--home', fresh], world);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(complaint);
    expect(machinesOf(fresh)).toEqual([]);
  });

  it('a backup is never written over a file', async () => {
    const world = await made();
    expect(await shell(['backup', 'plover.yaml'], world)).toMatchObject({ status: 2, out: '' });
    expect(readFileSync(path.join(world.folder, 'plover.yaml'), 'utf8')).toBe(plover);
  });
});

describe('evenings', () => {
  // by hand, from the file's times: 3 min to screw, 3 min each to measure; medium threadlocker cures 24 h; both measurements wait for nothing that cures
  it('lists what is left, evening by evening, and says that there is no plan with fewer', async () => {
    const { status, out } = await shell(['plan', 'plover.yaml', '--evenings', '2h30'], bench());
    expect(status).toBe(0);
    expect(out).toMatch(/^Evening 1, .*\d\d:\d\d, 9 min of work$/m);
    expect(out.replaceAll('\n', ' ')).toContain('1 evening of 2.5 h for one. There is no plan with fewer.');
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('answers as JSON with the steps of each evening', async () => {
    const { out } = await shell(['plan', 'plover.yaml', '--evenings', '2 h', '--people', '2', '--json'], bench());
    expect(JSON.parse(out)).toMatchObject({ id: 'plover', count: 1, atLeast: 1, proven: true, evenings: [{ work: 540, steps: expect.arrayContaining([expect.objectContaining({ step: 'head/post-screw', takes: 180 })]) }] });
  });

  it('tonight offers what fits, and names what waits for a tool', async () => {
    const { out } = await shell(['plan', 'plover.yaml', '--tonight', '5 min', '--without', 'torque wrench', '--json'], bench());
    const told = JSON.parse(out) as { readonly steps: readonly { readonly step: string }[]; readonly wantTool: readonly unknown[]; readonly left: number };
    expect(told.steps).toHaveLength(1);
    expect(told.left).toBe(120);
    expect(told.wantTool).toEqual([{ step: 'head/post-screw', tools: ['Torque wrench'] }]);
  });

  it.each<[string, readonly string[], RegExp]>([
    ['an evening too short for a step', ['--evenings', '2 min'], /head\/post-screw takes 3 min.*Right would be 3 min or more/s],
    ['no time', ['--evenings', 'long'], /--evenings: given “long”/],
    ['an evening of more than a day', ['--evenings', '25 h'], /at most 24 h/],
    ['half a person', ['--evenings', '2 h', '--people', '0.5'], /whole number from 1 to 9/],
    ['no time of day', ['--evenings', '2 h', '--from', '25:00'], /--from: given “25:00”/],
    ['a tool that no step needs', ['--tonight', '1 h', '--without', 'kettle'], /no step needs “kettle”/],
  ])('%s is refused', async (_, options, complaint) => {
    const { status, out, err } = await shell(['plan', 'plover.yaml', ...options], bench());
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(complaint);
  });
});

describe('new', () => {
  const facts = ['--speed', '13200 rpm', '--gears', '12/97', '--rotor', '1420 mm'] as const;

  it('writes a file into the home that already gives speeds', async () => {
    const world = bench();
    const { status, out } = await shell(['new', 'Marsh Harrier', ...facts, '--turns', 'clockwise from above', '--tail', 'bevel', '--tail-gears', '53/11', '--tail-rotor', '244 mm', '--json'], world);
    expect(status).toBe(0);
    expect(JSON.parse(out)).toEqual({ id: 'marsh-harrier', file: path.join(world.home, 'machines', 'marsh-harrier', 'machine.yaml') });
    const figures = await shell(['figures', 'marsh-harrier'], world);
    // by hand: 13200·12/97 = 1632.99 rpm at the mast, ·53/11 = 7868.04 rpm at the tail
    expect(figures.out).toMatch(/^speed mast\s+1,633 rpm/m);
    expect(figures.out).toMatch(/^speed tail\s+7,868 rpm/m);
  });

  it('never writes over a machine or a file', async () => {
    const world = bench();
    await shell(['new', 'Harrier', ...facts], world);
    expect(await shell(['new', 'Harrier', ...facts], world)).toMatchObject({ status: 2, out: '' });
    expect(await shell(['new', 'Harrier', ...facts, '--to', 'plover.yaml'], world)).toMatchObject({ status: 2, out: '' });
    expect(readFileSync(path.join(world.folder, 'plover.yaml'), 'utf8')).toBe(plover);
  });

  it.each<[string, readonly string[]]>([
    ['no name', ['', ...facts]],
    ['no gears', ['Harrier', '--speed', '13200 rpm', '--rotor', '1420 mm']],
    ['half a gear', ['Harrier', '--speed', '13200 rpm', '--rotor', '1420 mm', '--gears', '12']],
    ['a standing engine', ['Harrier', '--speed', '0 rpm', '--rotor', '1420 mm', '--gears', '12/97']],
    ['a speed without unit', ['Harrier', '--speed', '13200', '--rotor', '1420 mm', '--gears', '12/97']],
    ['a tail without teeth', ['Harrier', ...facts, '--tail', 'belt']],
    ['a sense that is none', ['Harrier', ...facts, '--turns', 'widdershins']],
  ])('refuses %s, and writes nothing', async (_, args) => {
    const world = bench();
    expect(await shell(['new', ...args, '--to', 'new.yaml'], world)).toMatchObject({ status: 2, out: '' });
    expect(existsSync(path.join(world.folder, 'new.yaml'))).toBe(false);
  });
});
