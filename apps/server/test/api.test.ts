import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { verifyChain, type Entry, type EntryBody, type MachineChange, type MachineOnBoard, type NewEntry, type WireError } from '@rotorwright/logbook';
import { plover, signature, stepOf, workshop } from './fixtures.ts';

type Json = Readonly<Record<string, unknown>>;
type Measured = NonNullable<Extract<EntryBody, { kind: 'signed' }>['measured']>;
type Inputs = Extract<EntryBody, { kind: 'balanced' }>['inputs'];

/** Invented readings of two blades. */
const blades: Inputs = { mass1: '200 g', centre1: '400 mm', mass2: '198 g', centre2: '400 mm', tapeRadius: '700 mm', speed: 180, tipLead: '2 mm', boltRadius: '80 mm', tipRadius: '780 mm' };
const trial = (inputs: Inputs, more: { readonly of?: string; readonly calculation?: string } = {}): NewEntry => ({ id: 'trial-0001', machine: 'plover', at: '2026-03-01T18:30:00Z', by: 'Maren', body: { kind: 'balanced', version: 1, calculation: 'blade-match', inputs, ...more } });

const send = (url: string, method: string, body: unknown, headers: Readonly<Record<string, string>> = {}) =>
  fetch(url, { method, headers: { 'content-type': 'application/json', ...headers }, body: typeof body === 'string' ? body : JSON.stringify(body) });
const board = async (url: string, id = 'plover') => (await (await fetch(`${url}api/machines/${id}`)).json()) as MachineOnBoard;

/** Status and code of an error answer; fails when the answer is not of the one shape. */
async function refusal(answer: Response): Promise<{ readonly status: number; readonly code: string; readonly message: string; readonly details: readonly string[]; readonly current: MachineOnBoard | undefined }> {
  const { error, current } = (await answer.json()) as WireError;
  expect(error).toEqual({ code: expect.stringMatching(/^[a-z-]+\/[a-z-]+$/), message: expect.stringMatching(/\.$/), ...(error.details && { details: expect.any(Array) }) });
  return { status: answer.status, code: error.code, message: error.message, details: error.details ?? [], current };
}

/** Sends exactly this path and these headers; fetch would tidy both. */
function raw(url: string, requested: string, headers: Readonly<Record<string, string>> = {}, method = 'GET'): Promise<{ readonly status: number; readonly body: string; readonly headers: Readonly<Record<string, unknown>> }> {
  return new Promise((resolve, reject) => {
    const { hostname, port } = new URL(url);
    const asked = request({ hostname, port, path: requested, method, headers }, (answer) => {
      let body = '';
      answer.setEncoding('utf8').on('data', (text: string) => (body += text));
      answer.on('end', () => resolve({ status: answer.statusCode ?? 0, body, headers: answer.headers }));
    });
    asked.on('error', reject);
    asked.end();
  });
}

describe('machines', () => {
  it('are listed with text, revision and entries', async () => {
    const { url } = await workshop();
    const found = (await (await fetch(`${url}api/machines`)).json()) as readonly MachineOnBoard[];
    // SHA-256 is checked by another implementation: the one of the system's web cryptography.
    const digest = Buffer.from(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(plover))).toString('hex');
    expect(found).toEqual([{ id: 'plover', text: plover, revision: digest, demo: true, entries: [] }]);
  });

  it('answer 404 when they are not there, and say which are', async () => {
    const { url } = await workshop();
    expect(await refusal(await fetch(`${url}api/machines/plovr`))).toMatchObject({ status: 404, code: 'machine/unknown', details: ['plover'] });
  });

  it('are made from a text, under the id of the file', async () => {
    const { url, home } = await workshop();
    const text = plover.replace('name: Plover', 'name: Stone Curlew');
    const answer = await send(`${url}api/machines`, 'POST', { text });
    expect(answer.status).toBe(201);
    expect(await answer.json()).toMatchObject({ id: 'stone-curlew', text, demo: false });
    expect(readFileSync(path.join(home, 'machines', 'stone-curlew', 'machine.yaml'), 'utf8')).toBe(text);
  });

  it('are not made twice under one id', async () => {
    const { url } = await workshop();
    expect(await refusal(await send(`${url}api/machines`, 'POST', { text: plover.replace('4.1', '4.2') }))).toMatchObject({ status: 409, code: 'machine/exists', current: { text: plover } });
  });

  it('are changed by whoever saw the present revision', async () => {
    const { url, home } = await workshop();
    const { revision } = await board(url);
    const text = plover.replace('teeth: 9', 'teeth: 10');
    const answer = await send(`${url}api/machines/plover`, 'PUT', { text, revision });
    expect(answer.status).toBe(200);
    expect(((await answer.json()) as MachineOnBoard).text).toBe(text);
    expect(readFileSync(path.join(home, 'machines', 'plover', 'machine.yaml'), 'utf8')).toBe(text);
    expect(readdirSync(path.join(home, 'machines', 'plover')).sort()).toEqual(['.demo', 'machine.yaml']);
  });

  it('are not overwritten unseen: the answer brings the present text', async () => {
    const { url, home } = await workshop();
    const { revision } = await board(url);
    const byHand = `${plover}# by hand\n`;
    writeFileSync(path.join(home, 'machines', 'plover', 'machine.yaml'), byHand);
    expect(await refusal(await send(`${url}api/machines/plover`, 'PUT', { text: plover, revision }))).toMatchObject({ status: 409, code: 'machine/changed', current: { text: byHand } });
    expect((await board(url)).text).toBe(byHand);
  });

  it('of two changes of one revision at once, one is taken', async () => {
    const { url } = await workshop();
    const { revision } = await board(url);
    const texts = ['10', '11'].map((teeth) => plover.replace('teeth: 9', `teeth: ${teeth}`));
    const answers = await Promise.all(texts.map((text) => send(`${url}api/machines/plover`, 'PUT', { text, revision })));
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
  });

  it('are kept with mistakes in them: the file is the builder\'s', async () => {
    const { url } = await workshop();
    const { revision } = await board(url);
    const text = plover.replace('teeth: 9', 'teeth: nine');
    expect((await send(`${url}api/machines/plover`, 'PUT', { text, revision })).status).toBe(200);
    expect((await board(url)).text).toBe(text);
  });

  it('are refused when the text is no YAML, with line and column', async () => {
    const { url } = await workshop();
    const { revision } = await board(url);
    const text = 'machine: { name: Plover\npower: [';
    const { details, ...rest } = await refusal(await send(`${url}api/machines/plover`, 'PUT', { text, revision }));
    expect(rest).toMatchObject({ status: 422, code: 'machine/unreadable' });
    expect(details[0]).toMatch(/machine\.yaml:\d+:\d+/);
    expect((await board(url)).text).toBe(plover);
  });

  it('are put away, not deleted', async () => {
    const { url, home } = await workshop();
    expect((await fetch(`${url}api/machines/plover`, { method: 'DELETE' })).status).toBe(204);
    expect((await fetch(`${url}api/machines/plover`)).status).toBe(404);
    const [kept = ''] = readdirSync(path.join(home, 'removed'));
    expect(readFileSync(path.join(home, 'removed', kept, 'machine.yaml'), 'utf8')).toBe(plover);
  });

  it.each<[string, unknown, number, string]>([
    ['no JSON', '{"text": ', 400, 'body/malformed'],
    ['an empty body', '', 400, 'body/malformed'],
    ['a list', [], 400, 'body/shape'],
    ['null', 'null', 400, 'body/shape'],
    ['no text', {}, 400, 'body/shape'],
    ['a text that is a number', { text: 7 }, 400, 'body/shape'],
    ['something more', { text: plover, force: true }, 400, 'body/shape'],
    ['half a character', '{"text": "machine: {name: Pl\\ud800ver}"}', 422, 'machine/unreadable'],
    ['a text of 2 MB and more', { text: `${plover}#${'x'.repeat(2_100_000)}\n` }, 413, 'body/too-large'],
    ['a body of 5 MB', { text: 'x'.repeat(5_000_000) }, 413, 'body/too-large'],
  ])('are not made from %s', async (_, body, status, code) => {
    const { url, home } = await workshop();
    expect(await refusal(await send(`${url}api/machines`, 'POST', body))).toMatchObject({ status, code });
    expect(readdirSync(path.join(home, 'machines'))).toEqual(['plover']);
  });
});

describe('entries', () => {
  const step = () => stepOf(plover, 'head/post-screw');
  const post = (url: string, entries: unknown) => send(`${url}api/machines/plover/entries`, 'POST', { entries });

  it('are recorded, chained, and there after a restart', async () => {
    const { url, home, web, demos, close } = await workshop();
    const answer = await post(url, [signature('entry-0001', step()), signature('entry-0002', step())]);
    expect(answer.status).toBe(201);
    const recorded = (await answer.json()) as readonly Entry[];
    expect(recorded.map(({ number }) => number)).toEqual([1, 2]);
    expect(verifyChain(recorded)).toMatchObject({ ok: true, length: 2 });
    await close();
    const { serve } = await import('../src/index.ts');
    const again = await serve({ port: 0, home, web, demos });
    expect((await board(again.url)).entries).toEqual(recorded);
    await again.close();
  });

  it('make a state that can be asked for at any moment', async () => {
    const { url } = await workshop();
    await post(url, [signature('entry-0001', step())]);
    const at = async (moment?: string) => (await fetch(`${url}api/machines/plover/state${moment === undefined ? '' : `?at=${moment}`}`)).json() as Promise<{ readonly states: Readonly<Record<string, { readonly state: string }>>; readonly readiness: unknown }>;
    expect((await at('2026-03-01T18:29:00Z')).states['head/post-screw']?.state).toBe('open');
    expect((await at('2026-03-01T18:35:00Z')).states['head/post-screw']?.state).toBe('curing');
    expect((await at('2026-03-01T18:40:00Z')).states['head/post-screw']?.state).toBe('signed');
    expect(await at()).toMatchObject({ id: 'plover', readiness: { assessed: false, objections: [] } });
    const wrong = await fetch(`${url}api/machines/plover/state?at=yesterday`);
    expect({ status: wrong.status, body: await wrong.json() }).toMatchObject({ status: 400, body: { error: { code: 'query/at' } } });
  });

  it('sent twice are recorded once, also when the step has changed in between', async () => {
    const { url } = await workshop();
    const entry = signature('entry-0001', step());
    const first = await (await post(url, [entry])).json();
    const { revision } = await board(url);
    await send(`${url}api/machines/plover`, 'PUT', { text: plover.replace('lock: medium', 'lock: high'), revision });
    const answer = await post(url, [entry]);
    expect({ status: answer.status, body: await answer.json() }).toEqual({ status: 201, body: first });
    expect((await board(url)).entries).toHaveLength(1);
  });

  it('of a step that has changed are refused, and none of those sent with it is recorded', async () => {
    const { url } = await workshop();
    const old = step();
    const { revision } = await board(url);
    const text = plover.replace('lock: medium', 'lock: high');
    await send(`${url}api/machines/plover`, 'PUT', { text, revision });
    const { details, ...rest } = await refusal(await post(url, [signature('entry-0001', stepOf(text, 'head/post-screw')), signature('entry-0002', old)]));
    expect(rest).toMatchObject({ status: 409, code: 'step/changed' });
    expect(details).toEqual([expect.stringContaining('entry-0002')]);
    expect((await board(url)).entries).toEqual([]);
  });

  it('of a step that is not in the plan are refused', async () => {
    const { url } = await workshop();
    expect(await refusal(await post(url, [signature('entry-0001', { ...step(), id: 'head/no-such' })]))).toMatchObject({ status: 422, code: 'step/unknown' });
  });

  it('of a bag that is not in the file are refused, of one that is are kept', async () => {
    const { url } = await workshop();
    const count = (bag: string): NewEntry => ({ id: `count-${bag.replace('/', '-')}`, machine: 'plover', at: '2026-03-01T18:30:00Z', by: 'Maren', body: { kind: 'counted', bag, lines: [{ item: 'head/post', wanted: 1, sound: 1 }] } });
    expect(await refusal(await post(url, [count('bag-9')]))).toMatchObject({ status: 422, code: 'bag/unknown' });
    expect((await post(url, [count('rest/head')])).status).toBe(201);
    expect((await board(url)).entries.map(({ body }) => body.kind)).toEqual(['counted']);
  });

  it('of readings for what the file does not balance are refused, of blades are kept', async () => {
    const { url } = await workshop();
    const readings = (of?: string): NewEntry => trial(blades, of === undefined ? {} : { of });
    expect(await refusal(await post(url, [readings('propeller')]))).toMatchObject({ status: 422, code: 'trial/wrong', details: [expect.stringMatching(/^trial-0001: The file has no “propeller” under balance\.spun/u)] });
    expect((await post(url, [readings()])).status).toBe(201);
    expect((await board(url)).entries.map(({ body }) => body.kind)).toEqual(['balanced']);
  });

  it.each<[string, Inputs, string, RegExp]>([
    ['an input that the calculation does not have', { ...blades, mass3: '200 g' }, 'blade-match', /mass3/u],
    ['a reading in another unit', { ...blades, mass1: '200 mm' }, 'blade-match', /^trial-0001: mass1: given .*200 mm.*; right would be/u],
    ['a reading out of range', { ...blades, mass1: '-200 g' }, 'blade-match', /^trial-0001: mass1: given .*-200 g.*; right would be/u],
    ['no number', { ...blades, mass1: 'NaN' }, 'blade-match', /^trial-0001: mass1: given .*NaN/u],
    ['a reading missing', { mass1: '200 g' }, 'blade-match', /^trial-0001: centre1/u],
    ['a calculation that nothing is balanced by', blades, 'involute', /^trial-0001: Nothing is balanced by “involute”/u],
  ])('of readings with %s are refused by name', async (_, inputs, calculation, words) => {
    const { url } = await workshop();
    const answer = await refusal(await post(url, [trial(inputs, { calculation })]));
    expect(answer).toMatchObject({ status: 422, code: 'trial/wrong' });
    expect(answer.details[0]).toMatch(words);
    expect((await board(url)).entries).toEqual([]);
  });

  it.each<[string, string, Measured, RegExp]>([
    ['a window in another unit', 'head/play', { value: 0.0002, unit: 'rad' }, /head\/play is measured in m; given: 0\.0002 rad$/u],
    ['a window with a word', 'head/play', { feel: 'free' }, /head\/play is measured in m, not felt; given: free$/u],
    ['a question with a number', 'head/free', { value: 1, unit: 'm' }, /head\/free is answered with no or yes; given: 1 m$/u],
    ['a question with another word', 'head/free', { feel: 'snug' }, /head\/free is answered with no or yes; given: snug$/u],
    ['what is not measured at all', 'head/post-screw', { value: 1, unit: 'm' }, /head\/post-screw asks for no measurement$/u],
  ])('that answer %s are refused by name', async (_, id, measured, words) => {
    const { url } = await workshop();
    const { revision } = await board(url);
    const text = `${plover}    measurements:\n      free: { of: drag plate, ask: Does it turn freely? }\n      play: { of: drag plate, window: 0.1 to 0.3 mm }\n`;
    await send(`${url}api/machines/plover`, 'PUT', { text, revision });
    const { body, ...entry } = signature('entry-0001', stepOf(text, id));
    const sent = (answered: Measured): NewEntry => ({ ...entry, body: { ...body, measured: answered } as EntryBody });
    const answer = await refusal(await post(url, [sent(measured)]));
    expect(answer).toMatchObject({ status: 422, code: 'step/measured-wrong', details: [expect.stringMatching(words)] });
    expect((await board(url)).entries).toEqual([]);
    if (id === 'head/play') expect((await post(url, [sent({ value: 0.0002, unit: 'm' })])).status).toBe(201);
  });

  it('of a measured step without what was measured are refused', async () => {
    const { url } = await workshop();
    const { revision } = await board(url);
    const text = `${plover}    measurements:\n      free: { of: drag plate, ask: Does it turn freely? }\n`;
    await send(`${url}api/machines/plover`, 'PUT', { text, revision });
    const unmeasured = signature('entry-0001', stepOf(text, 'head/free'));
    expect(await refusal(await post(url, [unmeasured]))).toMatchObject({ status: 422, code: 'step/unmeasured' });
    expect((await board(url)).entries).toEqual([]);
    expect((await post(url, [{ ...unmeasured, body: { ...unmeasured.body, measured: { feel: 'yes' } } }])).status).toBe(201);
  });

  it('under a used id with other content are refused', async () => {
    const { url } = await workshop();
    const entry = signature('entry-0001', step());
    await post(url, [entry]);
    expect(await refusal(await post(url, [{ ...entry, by: 'Oda' }]))).toMatchObject({ status: 409, code: 'entry/conflict' });
  });

  it.each<[string, unknown, number, string]>([
    ['no list', 7, 400, 'body/shape'],
    ['an empty list', [], 400, 'body/shape'],
    ['a thousand entries', Array.from({ length: 1000 }, () => 0), 400, 'body/shape'],
    ['a number', [7], 422, 'entry/malformed'],
    ['another machine\'s', [{ ...signature('entry-0001', { id: 'head/post-screw', fingerprint: `f1:${'0'.repeat(64)}` }), machine: 'whimbrel' }], 422, 'entry/malformed'],
    ['a made-up hash', [{ ...signature('entry-0001', { id: 'head/post-screw', fingerprint: `f1:${'0'.repeat(64)}` }), hash: '0'.repeat(64) }], 422, 'entry/malformed'],
    ['more than 64 kB', [{ note: 'x'.repeat(70_000) }], 413, 'body/too-large'],
  ])('that are %s are refused', async (_, entries, status, code) => {
    const { url } = await workshop();
    expect(await refusal(await post(url, entries))).toMatchObject({ status, code });
    expect((await board(url)).entries).toEqual([]);
  });
});

describe('who may ask', () => {
  it.each(['evil.example', 'evil.example:80', '127.0.0.1.evil.example', 'localhost.evil.example:8420', '192.168.1.4'])('a request to the host “%s” is refused', async (host) => {
    const { url } = await workshop();
    const answer = await raw(url, '/api/machines', { host });
    expect([400, 421]).toContain(answer.status);
    expect(answer.body).not.toContain('Plover');
  });

  it.each(['localhost', 'LOCALHOST', '127.0.0.1', '[::1]'])('a request to the host %s is answered', async (name) => {
    const { url } = await workshop();
    expect((await raw(url, '/api/machines', { host: `${name}:${new URL(url).port}` })).status).toBe(200);
  });

  it.each<[string, Readonly<Record<string, string>>]>([
    ['another site', { origin: 'https://evil.example' }],
    ['another port of this machine', { origin: 'http://127.0.0.1:1' }],
    ['a sandboxed frame', { origin: 'null' }],
    ['a page across sites', { 'sec-fetch-site': 'cross-site' }],
  ])('a change from %s is refused', async (_, headers) => {
    const { url } = await workshop();
    expect(await refusal(await send(`${url}api/machines/plover`, 'DELETE', '', headers))).toMatchObject({ status: 403, code: 'origin/foreign' });
    expect((await fetch(`${url}api/machines/plover`)).status).toBe(200);
  });

  it('a change from the server\'s own page is taken', async () => {
    const { url } = await workshop();
    expect((await fetch(`${url}api/machines/plover`, { method: 'DELETE', headers: { origin: new URL(url).origin } })).status).toBe(204);
  });

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x'])('a body of type %s, which a foreign form can send, is refused', async (type) => {
    const { url } = await workshop();
    expect(await refusal(await send(`${url}api/machines`, 'POST', { text: plover }, { 'content-type': type }))).toMatchObject({ status: 415, code: 'body/type' });
  });
});

describe('paths', () => {
  it.each(['/../secret.txt', '/%2e%2e/secret.txt', '/..%2fsecret.txt', '/%2e%2e%2fsecret.txt', '/assets/../../secret.txt', '/assets/..%2f..%2fsecret.txt', '/..%5csecret.txt', '//secret.txt', '/assets/%2e%2e/%2e%2e/secret.txt', '/secret.txt%00.html'])('%s leads out of nowhere', async (requested) => {
    const { url } = await workshop();
    expect((await raw(url, requested, { accept: '*/*' })).body).not.toContain('not for the web');
  });

  it.each(['..', '.', '%2e%2e', '..%2f..', '%00', 'a%2fb', '-', 'x'.repeat(300), '%E0%A4%A'])('the machine id %s is none', async (id) => {
    const { url } = await workshop();
    const { status, body } = await raw(url, `/api/machines/${id}`);
    expect([400, 404]).toContain(status);
    expect((JSON.parse(body) as WireError).error.code).toMatch(/^[a-z]+\/[a-z]+$/);
  });

  it.each(['/api', '/api/', '/api/nothing', '/api/machines/plover/entries'])('GET %s is answered in JSON with 404', async (requested) => {
    const { url } = await workshop();
    expect(await refusal(await fetch(new URL(requested, url)))).toMatchObject({ status: 404, code: 'api/unknown' });
  });

  it.each(['/', '/machines', '/machines/plover/drive', '/machines/plover/bench/tail-grip.A/stud'])('%s is a page', async (requested) => {
    const { url } = await workshop();
    const answer = await fetch(new URL(requested, url), { headers: { accept: 'text/html' } });
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('<title>Rotorwright</title>');
  });

  it('a file that is not there is not answered with the page', async () => {
    const { url } = await workshop();
    expect((await fetch(`${url}assets/old-9f8e7d.js`, { headers: { accept: 'text/html' } })).status).toBe(404);
    expect((await fetch(`${url}missing.png`)).status).toBe(404);
  });

  it('files named by their content are kept for good, pages are asked for again', async () => {
    const { url } = await workshop();
    const asset = await fetch(`${url}assets/main-1a2b3c.js`);
    expect(asset.headers.get('cache-control')).toContain('immutable');
    expect(asset.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect((await fetch(url)).headers.get('cache-control')).toBe('no-cache');
    const again = await fetch(`${url}assets/main-1a2b3c.js`, { headers: { 'if-none-match': asset.headers.get('etag') ?? '' } });
    expect(again.status).toBe(304);
  });

  it('a page may run and load nothing but the server\'s own, and no two share a nonce', async () => {
    const { url } = await workshop();
    const look = async () => {
      const answer = await fetch(url);
      const policy = answer.headers.get('content-security-policy') ?? '';
      const nonce = /'nonce-([^']+)'/.exec(policy)?.[1] ?? '';
      expect(await answer.text()).toContain(`nonce="${nonce}"`);
      return { policy, nonce, answer };
    };
    const [one, two] = [await look(), await look()];
    expect(one.nonce).not.toBe(two.nonce);
    expect(one.policy).toContain(`default-src 'self'`);
    expect(one.policy).not.toMatch(/unsafe|\*|https?:/);
    expect(one.answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(one.answer.headers.get('referrer-policy')).toBe('no-referrer');
  });

  it('other methods are refused', async () => {
    const { url } = await workshop();
    expect(await refusal(await fetch(url, { method: 'PUT', body: 'x' }))).toMatchObject({ status: 405 });
  });
});

describe('schema and live updates', () => {
  it('the schema is a JSON Schema that knows the sections of the file', async () => {
    const { url } = await workshop();
    const schema = (await (await fetch(`${url}api/schema`)).json()) as { readonly properties: Json };
    expect(Object.keys(schema.properties)).toEqual(expect.arrayContaining(['machine', 'power', 'shafts', 'drive', 'rotors', 'modules']));
  });

  it('tell how things are, then an edit by hand, a signature of another process and a removal', async () => {
    const { url, home } = await workshop();
    const leave = new AbortController();
    const answer = await fetch(`${url}api/events`, { signal: leave.signal });
    expect(answer.headers.get('content-type')).toContain('text/event-stream');
    const changes: MachineChange[] = [];
    const listening = (async () => {
      let text = '';
      const decoder = new TextDecoder();
      for await (const chunk of answer.body ?? []) {
        text += decoder.decode(chunk as Uint8Array, { stream: true });
        for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
          const data = /^event: machine\ndata: (.*)$/m.exec(text.slice(0, end))?.[1];
          if (data !== undefined) changes.push(JSON.parse(data) as MachineChange);
          text = text.slice(end + 2);
        }
      }
    })().catch(() => undefined);
    const next = async (count: number) => {
      await expect.poll(() => changes.length, { timeout: 5000 }).toBe(count);
      return changes[count - 1];
    };

    const before = await board(url);
    expect(await next(1)).toEqual({ id: 'plover', revision: before.revision, entries: 0 });

    writeFileSync(path.join(home, 'machines', 'plover', 'machine.yaml'), `${plover}# by hand\n`);
    expect((await next(2))?.revision).toBe((await board(url)).revision);

    const { openLogStore } = await import('@rotorwright/logbook/store');
    const other = openLogStore(path.join(home, 'logbook.sqlite'));
    other.append(signature('entry-0001', stepOf(plover, 'head/post-screw')));
    other.close();
    expect(await next(3)).toMatchObject({ id: 'plover', entries: 1 });

    await fetch(`${url}api/machines/plover`, { method: 'DELETE' });
    expect(await next(4)).toEqual({ id: 'plover', revision: null, entries: 0 });
    leave.abort();
    await listening;
  });
});

describe('a home', () => {
  it('that cannot be made is told in one sentence', async () => {
    const { home, web } = await workshop();
    const { serve } = await import('../src/index.ts');
    const file = path.join(home, 'demos-copied');
    expect(existsSync(file)).toBe(true);
    await expect(serve({ port: 0, home: path.join(file, 'below'), web })).rejects.toThrow(/home folder .* cannot be used.*--home DIR/);
  });

  it('keeps a machine of the builder\'s own under the name of a demo', async () => {
    const { home, web, demos, close } = await workshop();
    await close();
    const { serve } = await import('../src/index.ts');
    const fresh = `${home}-2`;
    const { mkdirSync } = await import('node:fs');
    mkdirSync(path.join(fresh, 'machines', 'plover'), { recursive: true });
    writeFileSync(path.join(fresh, 'machines', 'plover', 'machine.yaml'), 'machine: { name: Plover }\n');
    const again = await serve({ port: 0, home: fresh, web, demos });
    expect(await board(again.url)).toMatchObject({ text: 'machine: { name: Plover }\n', demo: false });
    await again.close();
  });
});
