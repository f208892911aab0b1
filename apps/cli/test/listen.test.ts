import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { wavOf } from '../../../tests/recordings/wav.ts';
import { shell, temporaryFolder } from './shell.ts';

const whimbrel = 'examples/whimbrel/machine.yaml';

function recordingOf(name: string, bytes: Uint8Array | string): string {
  const file = path.join(temporaryFolder(), name);
  writeFileSync(file, bytes);
  return file;
}

describe('a recording that holds no answer', () => {
  it('of silence is not heard: status 1, and what to do', async () => {
    const { status, out, err } = await shell(['listen', whimbrel, recordingOf('silence.wav', wavOf(new Float64Array(16_000), 8000))]);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toMatch(/^Not heard: nothing in this recording fits/u);
  });

  it('is told in JSON too', async () => {
    const { out } = await shell(['listen', whimbrel, recordingOf('silence.wav', wavOf(new Float64Array(16_000), 8000)), '--json']);
    expect(JSON.parse(out)).toMatchObject({ id: 'whimbrel', verdict: 'not-heard', groups: [], seconds: 2 });
  });
});

describe('what is no recording is refused: status 2, and why', () => {
  it.each<[string, () => string, RegExp]>([
    ['a file that is not there', () => 'nowhere.wav', /There is no file “nowhere\.wav”/u],
    ['a text', () => recordingOf('a.wav', 'hello'), /no WAV file: it does not begin with RIFF/u],
    ['half a second', () => recordingOf('b.wav', wavOf(new Float64Array(4000), 8000)), /lasts 0\.5 s; at least 1 s/u],
    ['a table without acceleration', () => recordingOf('c.csv', 'time,speed\n0,1\n1,2\n'), /acceleration/u],
  ])('%s', async (_, file, words) => {
    const { status, out, err } = await shell(['listen', whimbrel, file()]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(words);
  });

  it('a machine without rotors', async () => {
    const machine = recordingOf('bare.yaml', 'rotorwright: 1\nmachine: {name: Bare}\n');
    expect(await shell(['listen', machine, 'x.wav'])).toMatchObject({ status: 2, err: expect.stringMatching(/no main rotor whose sound could be known/u) as string });
  });
});

describe('a recording that is kept', () => {
  const demo = 'examples/whimbrel/hover.wav';

  it('is what later ones are held against; the suspect comes with its step', async () => {
    const home = temporaryFolder();
    const first = await shell(['listen', whimbrel, demo, '--home', home, '--keep', 'healthy', '--by', 'Maren']);
    expect(first).toMatchObject({ status: 0, err: expect.stringMatching(/Kept as entry 1 of whimbrel, by Maren/u) as string });
    const { out } = await shell(['listen', whimbrel, demo, '--home', home, '--json']);
    const { trends, flaws } = JSON.parse(out) as { trends: { verdict: string; change: number }[]; flaws: { explained: { title: string; step: string } }[] };
    expect(trends.length).toBeGreaterThan(5);
    expect(trends.every(({ verdict, change }) => verdict === 'as before' && change === 0)).toBe(true);
    expect(flaws[0]!.explained).toMatchObject({ title: expect.stringMatching(/^Bearing strikes: .*outer race/u) as string, step: expect.stringMatching(/^tail-end\//u) as string });
  }, 90_000);

  it('needs a name, and one of two words', async () => {
    expect(await shell(['listen', whimbrel, demo, '--keep', 'healthy'])).toMatchObject({ status: 2, err: expect.stringMatching(/Say who keeps it: --by NAME/u) as string });
    expect(await shell(['listen', whimbrel, demo, '--keep', 'perhaps', '--by', 'Maren'])).toMatchObject({ status: 2, err: expect.stringMatching(/neither healthy nor flight/u) as string });
  });
});
