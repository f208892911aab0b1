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
