import { describe, expect, it } from 'vitest';
import { lastAct, withAct, withoutAct, type Act } from '../apps/web/src/data/undo.ts';
import { search, type Found } from '../apps/web/src/sheet/find-index.ts';
import { figureAt, lineAt, machineAt, placeOf, sheets, stepAt, worksheetAt } from '../apps/web/src/sheet/sheets.ts';
import { countsOf, stateOf } from '../apps/web/src/sheet/standing.ts';

describe('addresses', () => {
  it('carry ids with strokes and signs there and back', () => {
    const address = stepAt('long ear/2', 'tail-grip.A/retaining-screw');
    expect(address).toBe('/m/long%20ear%2F2/bench/tail-grip.A%2Fretaining-screw'); // by hand: RFC 3986 escapes
    expect(placeOf(address)).toEqual({ machine: 'long ear/2', sheet: 'bench' });
  });

  it.each(sheets.map(({ key }) => key))('lead to the sheet %s', (key) => {
    expect(placeOf(machineAt('whimbrel', key))).toEqual({ machine: 'whimbrel', sheet: key });
  });

  it('name lines, figures and calculations', () => {
    expect(lineAt('whimbrel', 57)).toBe('/m/whimbrel/file#L57');
    expect(figureAt('whimbrel', 'speed mast')).toBe('/m/whimbrel/drive?figure=speed%20mast');
    expect([worksheetAt('whimbrel', 'gear-pair'), worksheetAt(undefined, 'gear-pair')]).toEqual(['/m/whimbrel/worksheet/gear-pair', '/worksheet/gear-pair']);
  });

  it('that lead nowhere name no sheet, and broken escapes do not stop the page', () => {
    expect(placeOf('/elsewhere')).toEqual({ sheet: undefined });
    expect(placeOf('/m/%E0%A4%A/drive')).toEqual({ machine: '%E0%A4%A', sheet: 'drive' });
    expect(placeOf('/')).toEqual({ sheet: 'machines' });
  });

  it('number the sheets through their groups without a gap', () => {
    expect(sheets.map(({ number }) => number)).toEqual(sheets.map((_, index) => index + 1));
  });
});

describe('find', () => {
  const index: readonly Found[] = [
    { kind: 'part', title: 'thrust bearing', of: 'tail-grip.A/thrust', to: '/part' },
    { kind: 'figure', title: 'Speed of tail rotor', of: 'speed tail-rotor', to: '/figure' },
    { kind: 'step', title: 'Grease the thrust bearing', of: 'tail-grip.A/grease', to: '/step' },
    { kind: 'sheet', title: 'Bench', of: 'sheet 3', to: '/bench' },
  ];
  it('wants every word, and puts what begins with it first', () => {
    expect(search(index, 'thrust').map(({ to }) => to)).toEqual(['/part', '/step']);
    expect(search(index, 'grip thrust grease').map(({ to }) => to)).toEqual(['/step']);
    expect(search(index, 'propeller')).toEqual([]);
  });
  it('offers sheets and machines before anything is asked', () => {
    expect(search(index, '  ').map(({ to }) => to)).toEqual(['/bench']);
  });
  it('puts questions before sheets, and shows whole what there is to choose from', () => {
    const asked: Found = { kind: 'question', title: 'Which way round does it go?', of: 'asks for what', to: { which: 'faced' }, words: 'washer' };
    expect(search([...index, asked], '').map(({ kind }) => kind)).toEqual(['question', 'sheet']);
    expect(search(index.slice(0, 1), '').map(({ to }) => to)).toEqual(['/part']);
  });
  it('takes a question and the thing it is asked of in one line', () => {
    const out: Found = { kind: 'question', title: 'I want it out: what comes apart?', of: 'asks for what', to: { which: 'reached' }, words: 'reach' };
    const round: Found = { kind: 'question', title: 'Which way round does it go?', of: 'asks for what', to: { which: 'faced' }, words: 'bearing' };
    const figure: Found = { kind: 'figure', title: 'Play of the pinion without load', of: 'play', to: '/play' };
    const things: readonly Found[] = [
      { kind: 'part', title: 'pinion', of: 'clutch/pinion', to: '/pinion' },
      { kind: 'part', title: 'mast', of: 'mast/mast', to: '/mast' },
    ];
    const asked = (words: string): readonly string[] => search([figure, out, round], words, (which) => (which === 'reached' ? things : [])).map(({ to }) => (typeof to === 'string' ? to : to.which));
    expect(asked('pinion out')).toEqual(['/pinion', '/play']);
    expect(asked('I want the pinion out')).toEqual(['/pinion']);
    expect(asked('which way round pinion')).toEqual(['faced']); // nothing of that name to choose: the question itself says so
    expect(asked('propeller out')).toEqual([]);
    expect(asked('pinion')).toEqual(['/play']);
  });
  it('takes a question by two of its words, and what is called so by one', () => {
    const asked: Found = { kind: 'question', title: 'Where is the centre of mass?', of: 'Balance', to: '/balance' };
    const figure: Found = { kind: 'figure', title: 'Centre of mass ahead of the mast', of: 'centre x', to: '/ahead' };
    expect(search([figure, asked], 'centre of mass').map(({ to }) => to)).toEqual(['/balance', '/ahead']);
    expect(search([figure, asked], 'centre').map(({ to }) => to)).toEqual(['/ahead', '/balance']);
    expect(search([figure, asked], 'centre of mass ahead').map(({ to }) => to)).toEqual(['/ahead']);
  });
  it('takes a name before what is found by other words', () => {
    const washer: Found = { kind: 'part', title: 'End washer', of: 'tail-grip.A/washer', to: '/washer' };
    const faced: Found = { kind: 'step', title: 'Bearings of the grip', of: 'tail-grip.A/thrust', to: '/faced', words: 'Tight-bore washer outboard.' };
    expect(search([faced, washer], 'washer').map(({ to }) => to)).toEqual(['/washer', '/faced']);
  });
});

describe('undo', () => {
  const edit = (machine: string, what: string): Act => ({ kind: 'edit', machine, what, before: '', after: '' });
  it('takes the last act of this machine, not of another', () => {
    const acts = [edit('a', 'first'), edit('a', 'second'), edit('b', 'third')].reduce<readonly Act[]>(withAct, []);
    expect(lastAct(acts, 'a')?.what).toBe('second');
    expect(lastAct(withoutAct(acts, lastAct(acts, 'a')!), 'a')?.what).toBe('first');
    expect(lastAct(acts, 'c')).toBeUndefined();
  });
  it('remembers fifty acts', () => {
    const acts = Array.from({ length: 60 }, (_, index) => edit('a', String(index))).reduce<readonly Act[]>(withAct, []);
    expect([acts.length, acts[0]?.what]).toEqual([50, '10']);
  });
});

describe('the state of a machine in a few words', () => {
  type View = Parameters<typeof stateOf>[0];
  const view = (states: readonly ('open' | 'signed' | 'undone' | 'curing')[], severities: readonly ('error' | 'warning')[] = []): View => ({
    state: { steps: new Map(states.map((state, index) => [String(index), { state, history: [] }])) } as unknown as NonNullable<View['state']>,
    findings: severities.map((severity) => ({ code: 'x', severity, path: '', values: {} })),
  });
  it.each([
    [view(['signed', 'undone', 'open'], ['error', 'warning']), 'exceeded', 'file has an error'],
    [view(['signed', 'undone', 'open']), 'undone', '1 undone'],
    [view(['signed', 'curing', 'open']), 'open', '1 of 3 open'],
    [view(['signed', 'curing']), 'curing', '1 curing'],
    [view(['signed', 'signed'], ['warning']), 'signed', 'all 2 signed'],
    [view([]), 'unknown', 'build not described'],
  ] as const)('%#: what is wrong comes before what is left', (given, mark, words) => {
    expect(stateOf(given)).toEqual({ mark, words });
  });
  it('counts what it saw', () => {
    expect(countsOf(view(['signed', 'undone', 'open', 'open'], ['warning', 'error']))).toEqual({ steps: 4, signed: 1, open: 2, undone: 1, curing: 0, errors: 1, warnings: 1 });
  });
});
