import { createHash } from 'node:crypto';
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Entry, WireError } from '@rotorwright/logbook';
import { backupLines, BackupError, Home, isPhotoName, linesOf, restoreBackup } from '../src/index.ts';
import { plover, signature, stepOf, temporaryFolder, workshop } from './fixtures.ts';

/** Not a picture that anybody could look at, but one by its first bytes (ISO/IEC 10918-1, annex B). */
const jpeg = (rest = 'post screw'): Uint8Array<ArrayBuffer> => new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0x00, 0x0a, 0x0d, ...new TextEncoder().encode(rest)]);
const nameOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const put = (url: string, name: string, bytes: Uint8Array<ArrayBuffer>, type = 'image/jpeg') => fetch(`${url}api/photos/${name}`, { method: 'PUT', headers: { 'content-type': type }, body: bytes });
const refusal = async (answer: Response) => ({ status: answer.status, ...((await answer.json()) as WireError).error });
const photosIn = (home: string): readonly string[] => (existsSync(path.join(home, 'photos')) ? readdirSync(path.join(home, 'photos')) : []);

describe('a photo', () => {
  it('is kept under its SHA-256, once, and comes back byte for byte, to be asked for no more', async () => {
    const { url, home } = await workshop();
    const [bytes, name] = [jpeg(), nameOf(jpeg())];
    expect([(await put(url, name, bytes)).status, (await put(url, name, bytes)).status]).toEqual([201, 200]);
    expect(photosIn(home)).toEqual([`${name}.jpg`]);
    const answer = await fetch(`${url}api/photos/${name}`);
    expect(new Uint8Array(await answer.arrayBuffer())).toEqual(bytes);
    expect(Object.fromEntries(['content-type', 'cache-control', 'x-content-type-options'].map((header) => [header, answer.headers.get(header)]))).toEqual({ 'content-type': 'image/jpeg', 'cache-control': 'private, max-age=31536000, immutable', 'x-content-type-options': 'nosniff' });
  });

  it('that was damaged on the disk is put right when it is sent again', async () => {
    const { url, home } = await workshop();
    const [bytes, name] = [jpeg(), nameOf(jpeg())];
    await put(url, name, bytes);
    writeFileSync(path.join(home, 'photos', `${name}.jpg`), 'half of i');
    expect((await put(url, name, bytes)).status).toBe(201);
    expect(new Uint8Array(readFileSync(path.join(home, 'photos', `${name}.jpg`)))).toEqual(bytes);
  });

  const large = jpeg('x'.repeat(4 * 1024 * 1024));
  const text = new TextEncoder().encode('<svg onload="alert(1)"/>');
  it.each<[string, string, Uint8Array<ArrayBuffer>, string, number, string]>([
    ['under the hash of another', nameOf(jpeg('other')), jpeg(), 'image/jpeg', 422, 'photo/refused'],
    ['that is none by its first bytes', nameOf(text), text, 'image/jpeg', 422, 'photo/refused'],
    ['that is empty', nameOf(new Uint8Array()), new Uint8Array(), 'image/jpeg', 422, 'photo/refused'],
    ['sent as something else', nameOf(jpeg()), jpeg(), 'text/plain', 415, 'body/type'],
    ['above 4 MB', nameOf(large), large, 'image/jpeg', 413, 'body/too-large'],
    ['under a path out of the folder', '..%2F..%2Fsecret.txt', jpeg(), 'image/jpeg', 400, 'photo/name'],
    ['under a backward path', '..%5C..%5Csecret', jpeg(), 'image/jpeg', 400, 'photo/name'],
    ['under a hash in capitals', nameOf(jpeg()).toUpperCase(), jpeg(), 'image/jpeg', 400, 'photo/name'],
  ])('%s is refused, and nothing is written', async (_, name, bytes, type, status, code) => {
    const { url, home } = await workshop();
    expect(await refusal(await put(url, name, bytes, type))).toMatchObject({ status, code });
    expect(photosIn(home)).toEqual([]);
  });

  it('is not sent out of another folder, nor when it is not there', async () => {
    const { url } = await workshop();
    expect(await refusal(await fetch(`${url}api/photos/..%2F..%2Fsecret.txt`))).toMatchObject({ status: 400, code: 'photo/name' });
    expect(await refusal(await fetch(`${url}api/photos/${'0'.repeat(64)}`))).toMatchObject({ status: 404, code: 'photo/unknown' });
  });

  it('must be there before the entry that names it', async () => {
    const { url } = await workshop();
    const bytes = jpeg();
    const signed = signature('entry-0001', stepOf(plover, 'head/post-screw'));
    const entries = [{ ...signed, body: { ...signed.body, photo: nameOf(bytes) } }];
    const record = () => fetch(`${url}api/machines/plover/entries`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ entries }) });
    expect(await refusal(await record())).toMatchObject({ status: 422, code: 'photo/unknown', details: [expect.stringContaining('entry-0001')] });
    await put(url, nameOf(bytes), bytes);
    const answer = await record();
    expect([answer.status, ((await answer.json()) as readonly Entry[])[0]?.body]).toEqual([201, entries[0]?.body]);
  });
});

describe('a backup', () => {
  const homeWith = (...photos: readonly Uint8Array[]): Home => {
    const home = new Home(temporaryFolder(), { demos: null });
    for (const bytes of photos) home.photos.keep(nameOf(bytes), bytes);
    return home;
  };
  const textOf = (home: Home): string => [...backupLines(home, new Date('2026-03-01T18:30:00Z'))].join('');
  const restored = (home: Home, text: string) => restoreBackup(home, () => text.split('\n'), { replace: false, now: new Date('2026-03-02T18:30:00Z') });
  /** The same backup with a line changed, and a hash at its end that is right again. */
  const changed = (text: string, change: (body: string) => string): string => {
    const body = change(text.slice(0, text.lastIndexOf('{"end"')));
    return `${body}${JSON.stringify({ end: {}, sha256: createHash('sha256').update(body).digest('hex') })}\n`;
  };

  it('carries photos byte for byte, and twice is the same as once', () => {
    const all = Uint8Array.from({ length: 256 }, (_, value) => value);
    const photos = [jpeg(), new Uint8Array([...jpeg(''), ...all])];
    const text = textOf(homeWith(...photos));
    const fresh = homeWith();
    expect([restored(fresh, text), restored(fresh, text)]).toEqual([{ machines: 0, entries: 0, photos: 2 }, { machines: 0, entries: 0, photos: 0 }]);
    expect(fresh.photos.names()).toEqual(photos.map(nameOf).sort());
    for (const bytes of photos) expect(fresh.photos.read(nameOf(bytes))).toEqual(bytes);
    expect(textOf(fresh)).toBe(text);
  });

  it('of version 1, from before there were photos, still restores', () => {
    const body = `${JSON.stringify({ 'rotorwright-backup': 1, made: '2026-01-01T00:00:00.000Z', demos: ['plover'] })}\n${JSON.stringify({ machine: 'plover', demo: true, text: plover })}\n`;
    const text = `${body}${JSON.stringify({ end: { machines: 1, entries: 0 }, sha256: createHash('sha256').update(body).digest('hex') })}\n`;
    const fresh = homeWith();
    expect(restored(fresh, text)).toEqual({ machines: 1, entries: 0, photos: 0 });
    expect(fresh.machines.read('plover')?.text).toBe(plover);
  });

  it.each<[string, (body: string) => string, RegExp]>([
    ['another picture under its name', (body) => body.replace(Buffer.from(jpeg()).toString('base64'), Buffer.from(jpeg('other')).toString('base64')), /damaged photo.*SHA-256/],
    ['a name that is a path', (body) => body.replace(nameOf(jpeg()), '../../secret'), /a line that this program does not know/],
  ])('with %s is refused, and nothing is restored', (_, change, words) => {
    const fresh = homeWith();
    expect(() => restored(fresh, changed(textOf(homeWith(jpeg())), change))).toThrow(words);
    expect(fresh.photos.names()).toEqual([]);
  });

  it('is not made of a damaged photo: the builder is told which', () => {
    const home = homeWith(jpeg());
    writeFileSync(home.photos.fileOf(nameOf(jpeg())), jpeg('rotten'));
    expect(() => textOf(home)).toThrow(BackupError);
    expect(() => textOf(home)).toThrow(nameOf(jpeg()));
  });

  it('keeps one line in memory at a time: lines longer and shorter than a chunk come back as they were', () => {
    const file = path.join(temporaryFolder(), 'long.txt');
    const lines = ['first', 'é'.repeat(700_000), '', 'x'.repeat(3_000_000), 'last'];
    writeFileSync(file, lines.join('\n'));
    expect([...linesOf(file)]).toEqual(lines);
    writeFileSync(file, '');
    expect([...linesOf(file)]).toEqual([]);
  });

  it('that was cut short at any line is refused', () => {
    const whole = textOf(homeWith(jpeg(), jpeg('other'))).split('\n').slice(0, -1);
    for (let kept = 0; kept < whole.length; kept += 1) expect(() => restored(homeWith(), whole.slice(0, kept).join('\n')), `${kept} lines`).toThrow(BackupError);
    expect(() => restored(homeWith(), whole.filter((_, at) => at !== 1).join('\n'))).toThrow(/changed after it was made/);
  });

  it('knows a name of a photo from any other', () => {
    expect([nameOf(jpeg()), nameOf(jpeg()).slice(1), `${nameOf(jpeg())}\n`, ''].map(isPhotoName)).toEqual([true, false, false, false]);
  });
});
