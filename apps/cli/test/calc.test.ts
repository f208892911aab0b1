import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { catalogue } from '@rotorwright/calculations';
import { shell, temporaryFolder, widest } from './shell.ts';

interface Answer {
  readonly id: string;
  readonly outputs: Readonly<Record<string, { readonly value: number; readonly unit: string }>>;
  readonly working: readonly unknown[];
  readonly source: string;
  readonly warnings: readonly string[];
  readonly error?: string;
}

const calc = async (id: string, inputs: unknown): Promise<Answer> => JSON.parse((await shell(['calc', id, '-'], { input: JSON.stringify(inputs) })).out) as Answer;

describe('one calculation', () => {
  it('answers with outputs in SI, working, source and warnings', async () => {
    // by hand: 77/9 = 8.5555…; 12400 rpm = 12400·2π/60 = 1298.525 rad/s; over 8.5556: 151.776 rad/s
    const answer = await calc('drive-ratio', { stages: [{ driver: 9, driven: 77 }], inputSpeed: '12400 rpm' });
    expect(Object.keys(answer).sort()).toEqual(['id', 'outputs', 'source', 'warnings', 'working']);
    expect(answer.outputs['ratio']).toEqual({ value: expect.closeTo(8.55556, 5), unit: '-' });
    expect(answer.outputs['outputSpeed']).toEqual({ value: expect.closeTo(151.776, 3), unit: 'rad/s' });
  });

  it('reads its inputs from a file', async () => {
    const folder = temporaryFolder();
    writeFileSync(path.join(folder, 'input.json'), '{"magnets": 2, "shaftSpeed": "1800 rpm"}');
    const { status, out } = await shell(['calc', 'sensor-pulses', 'input.json'], { folder });
    expect(status).toBe(0);
    // by hand: 1800 rpm = 30 turns a second, 2 pulses each
    expect((JSON.parse(out) as Answer).outputs['frequency']).toEqual({ value: expect.closeTo(60, 9), unit: 'Hz' });
  });

  it.each<[string, readonly string[], string, RegExp]>([
    ['an unknown id', ['calc', 'drive-ration', '-'], '{}', /drive-ration.*drive-ratio/s],
    ['no inputs', ['calc', 'drive-ratio'], '', /needs its inputs/],
    ['a file that is not there', ['calc', 'drive-ratio', 'nowhere.json'], '', /no file nowhere\.json/],
    ['a folder', ['calc', 'drive-ratio', '.'], '', /is a folder/],
    ['no JSON', ['calc', 'drive-ratio', '-'], '{', /standard input holds no JSON/],
    ['a missing input', ['calc', 'sensor-pulses', '-'], '{"magnets": 2}', /shaftSpeed: given nothing; right would be .*rpm/],
    ['a wrong unit', ['calc', 'sensor-pulses', '-'], '{"magnets": 2, "shaftSpeed": "3 mm"}', /shaftSpeed: given "3 mm"/],
    ['a number that is none', ['calc', 'sensor-pulses', '-'], '{"magnets": "two", "shaftSpeed": 3}', /magnets: given "two"/],
    ['an unknown option', ['calc', '--descibe'], '', /unknown option '--descibe'/],
    ['too many arguments', ['calc', 'drive-ratio', '-', '-'], '', /too many arguments/],
    ['a description of nothing', ['calc', '--describe'], '', /needs the id/],
  ])('refuses %s: status 2, nothing on standard output', async (_, args, input, complaint) => {
    const { status, out, err } = await shell(args, { input });
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(complaint);
  });

  it('names every wrong input at once', async () => {
    const { err } = await shell(['calc', 'sensor-pulses', '-'], { input: '{"magnets": 0.5, "shaftSped": 3}' });
    for (const name of ['magnets', 'shaftSped', 'shaftSpeed']) expect(err).toMatch(new RegExp(`^${name}: given`, 'm'));
  });
});

describe('the catalogue', () => {
  it('is listed whole, within 80 columns', async () => {
    const { status, out } = await shell(['calc']);
    expect(status).toBe(0);
    for (const id of catalogue.keys()) expect(out).toMatch(new RegExp(`^${id}(\\s|$)`, 'm'));
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it.each([...catalogue.keys()])('%s is described with inputs, outputs, source and validity, within 80 columns', async (id) => {
    const { status, out } = await shell(['calc', id, '--describe']);
    expect(status).toBe(0);
    for (const heading of ['Inputs', 'Outputs', 'Source:', 'Validity']) expect(out).toContain(heading);
    expect(widest(out)).toBeLessThanOrEqual(80);
  });

  it('keeps what belongs to a heading indented, also where a line is too long', async () => {
    const { out } = await shell(['calc', 'bearing-life', '--describe']);
    expect(out.split('\n').filter((line) => /^\S/u.test(line))).toHaveLength(7);
  });

  it('is listed and described as JSON too', async () => {
    const list = JSON.parse((await shell(['calc', '--json'])).out) as readonly { readonly id: string }[];
    expect(list.map(({ id }) => id)).toEqual([...catalogue.keys()]);
    expect(JSON.parse((await shell(['calc', 'drive-ratio', '--describe', '--json'])).out)).toMatchObject({ id: 'drive-ratio', inputs: { stages: { kind: 'list' } } });
  });
});

describe('a batch', () => {
  it('is answered line by line, in order, mistakes in their place', async () => {
    const lines = [
      { id: 'sensor-pulses', inputs: { magnets: 2, shaftSpeed: '1800 rpm' } },
      { id: 'no-such', inputs: {} },
      { id: 'sensor-pulses', inputs: { magnets: 2 } },
      'no JSON {',
      7,
      { inputs: {} },
      { id: 'sensor-pulses', inputs: { magnets: 1, shaftSpeed: '600 rpm' } },
    ].map((line) => (typeof line === 'string' ? line : JSON.stringify(line)));
    const { status, out, err } = await shell(['calc', '--batch', '-'], { input: `${lines.join('\r\n')}\n\n` });
    const answers = out.trimEnd().split('\n').map((line) => JSON.parse(line) as Answer);
    expect(status).toBe(0);
    expect(answers.map(({ id, error }) => [id, error !== undefined])).toEqual([
      ['sensor-pulses', false], ['no-such', true], ['sensor-pulses', true], [null, true], [null, true], [null, true], ['sensor-pulses', false],
    ]);
    expect(answers[0]?.outputs['frequency']?.value).toBeCloseTo(60, 9);
    expect(answers[6]?.outputs['frequency']?.value).toBeCloseTo(10, 9);
    expect(err).toContain('5 of 7');
  });

  it('keeps the order of ten thousand lines, at well over a thousand a second', async () => {
    const count = 10_000;
    const folder = temporaryFolder();
    writeFileSync(path.join(folder, 'lines.jsonl'), Array.from({ length: count }, (_, at) => JSON.stringify({ id: 'sensor-pulses', inputs: { magnets: 1, shaftSpeed: `${at + 1} rpm` } })).join('\n'));
    const began = performance.now();
    const { out } = await shell(['calc', '--batch', 'lines.jsonl'], { folder });
    const seconds = (performance.now() - began) / 1000;
    const answers = out.trimEnd().split('\n');
    expect(answers).toHaveLength(count);
    // by hand: at + 1 turns a minute are (at + 1)/60 pulses a second
    for (const at of [0, 1, 4999, 9999]) expect((JSON.parse(answers[at] ?? '') as Answer).outputs['frequency']?.value).toBeCloseTo((at + 1) / 60, 9);
    expect(count / seconds).toBeGreaterThan(1000);
  });

  it.each([['a file that is not there', ['calc', '--batch', 'nowhere.jsonl']], ['an id besides', ['calc', 'drive-ratio', '--batch', '-']]])('is refused with %s', async (_, args) => {
    const { status, out } = await shell(args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
  });
});
