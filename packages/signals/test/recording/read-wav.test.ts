import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isUnreadable, readWav, type Recording } from '../../src/index.ts';

interface Wanted {
  readonly code?: number;
  readonly bits: number;
  readonly channels?: number;
  readonly rate?: number;
  readonly extensible?: boolean;
  /** Chunks between header and sound: name and number of bytes. */
  readonly between?: readonly (readonly [name: string, size: number, padded: boolean])[];
  /** Length that the sound is said to have. */
  readonly stated?: number;
}

/** A WAV file, written by hand. */
function wav(samples: readonly number[], { code = 1, bits, channels = 1, rate = 8000, extensible = false, between = [], stated }: Wanted): Uint8Array {
  const bytes = Math.ceil(bits / 8);
  const out: number[] = [];
  const text = (word: string) => out.push(...[...word].map((letter) => letter.charCodeAt(0)));
  const whole = (value: number, size: number) => {
    for (let at = 0; at < size; at += 1) out.push(Math.floor(value / 256 ** at) & 255);
  };
  text('RIFF');
  whole(0, 4);
  text('WAVE');
  text('fmt ');
  whole(extensible ? 40 : 16, 4);
  whole(extensible ? 0xfffe : code, 2);
  whole(channels, 2);
  whole(rate, 4);
  whole(rate * bytes * channels, 4);
  whole(bytes * channels, 2);
  whole(bits, 2);
  if (extensible) {
    whole(22, 2);
    whole(bits, 2);
    whole(0, 4);
    whole(code, 2);
    for (let at = 0; at < 14; at += 1) out.push(at);
  }
  for (const [name, size, padded] of between) {
    text(name);
    whole(size, 4);
    for (let at = 0; at < size + (padded ? size % 2 : 0); at += 1) out.push(0);
  }
  text('data');
  whole(stated ?? samples.length * bytes, 4);
  const one = new DataView(new ArrayBuffer(8));
  for (const sample of samples) {
    if (code === 3 && bits === 32) one.setFloat32(0, sample, true);
    else if (code === 3) one.setFloat64(0, sample, true);
    else if (bytes === 1) one.setUint8(0, Math.round(sample * 128) + 128);
    else one.setInt32(0, Math.round(sample * 2 ** (8 * bytes - 1)), true);
    for (let at = 0; at < bytes; at += 1) out.push(one.getUint8(at));
  }
  return Uint8Array.from(out);
}

const read = (bytes: Uint8Array): Recording => {
  const found = readWav(bytes);
  if (isUnreadable(found)) throw new Error(found.problem);
  return found;
};
const tone = [0, 0.5, -0.5, 0.25, -0.25, 0.75, -0.75, -1];

describe('a WAV file', () => {
  it.each<[string, Wanted, number]>([
    ['8 bits', { bits: 8 }, 1 / 128],
    ['16 bits', { bits: 16 }, 2 ** -15],
    ['24 bits', { bits: 24 }, 2 ** -23],
    ['32 bits', { bits: 32 }, 2 ** -31],
    ['32 bits of floating point', { bits: 32, code: 3 }, 1e-7],
    ['64 bits of floating point', { bits: 64, code: 3 }, 1e-15],
    ['an extensible header', { bits: 24, extensible: true }, 2 ** -23],
    ['an extensible header of floating point', { bits: 32, code: 3, extensible: true }, 1e-7],
    ['an odd chunk before the sound', { bits: 16, between: [['LIST', 7, true]] }, 2 ** -15],
    ['an odd chunk whose padding was left out', { bits: 16, between: [['LIST', 7, false]] }, 2 ** -15],
    ['many chunks', { bits: 16, between: [['JUNK', 28, true], ['bext', 5, true], ['fact', 4, true]] }, 2 ** -15],
    ['a recorder that never wrote the length', { bits: 16, stated: 0 }, 2 ** -15],
    ['a length of everything', { bits: 16, stated: 0xffff_ffff }, 2 ** -15],
  ])('of %s is read to the last bit', (_, wanted, step) => {
    const { channels, rate, warnings } = read(wav(tone, wanted));
    expect(rate).toBe(8000);
    expect(warnings).toEqual([]);
    tone.forEach((value, index) => expect(Math.abs(channels[0]![index]! - value)).toBeLessThanOrEqual(step));
  });

  it('keeps its channels apart', () => {
    const { channels } = read(wav([0.5, -0.5, 0.25, -0.25], { bits: 16, channels: 2, rate: 44_100 }));
    expect(channels.map((each) => [...each])).toEqual([[0.5, 0.25], [-0.5, -0.25]]);
  });

  it('that breaks off is read as far as it goes, and says so', () => {
    const whole = wav(tone, { bits: 16 });
    const { channels, warnings } = read(whole.slice(0, whole.length - 5));
    expect(channels[0]).toHaveLength(tone.length - 3);
    expect(warnings).toEqual([expect.stringMatching(/breaks off: 16 bytes of sound were announced, 11 are there/u)]);
  });

  it('with samples that are no numbers takes them as silence, and says so', () => {
    const { channels, warnings } = read(wav([0.5, Number.NaN, Infinity, 0.25], { bits: 32, code: 3 }));
    expect([...channels[0]!]).toEqual([0.5, 0, 0, 0.25]);
    expect(warnings[0]).toMatch(/2 samples are no numbers/u);
  });

  it.each<[string, Uint8Array, RegExp]>([
    ['an empty file', new Uint8Array(), /no WAV file/u],
    ['another format', Uint8Array.from([...'OggS and so on'].map((letter) => letter.charCodeAt(0))), /does not begin with RIFF/u],
    ['compressed sound', wav(tone, { bits: 16, code: 85 }), /compressed \(format 85\)/u],
    ['no channels', wav(tone, { bits: 16, channels: 0 }), /claims 0 channels/u],
    ['a rate of nothing', wav(tone, { bits: 16, rate: 3 }), /claims 3 samples a second/u],
    ['no sound', wav([], { bits: 16 }), /holds no sound/u],
    ['a cut header', wav(tone, { bits: 16 }).slice(0, 30), /cut short/u],
  ])('%s is refused in words', (_, bytes, words) => {
    const found = readWav(bytes);
    expect(isUnreadable(found) && found.problem).toMatch(words);
  });

  it('never throws and never gives what is no number, whatever the bytes', () => {
    const start = wav(tone, { bits: 16 });
    fc.assert(fc.property(fc.array(fc.tuple(fc.nat(start.length - 1), fc.nat(255)), { maxLength: 12 }), fc.nat(start.length), (changes, length) => {
      const bytes = start.slice(0, length);
      for (const [at, value] of changes) if (at < length) bytes[at] = value;
      const found = readWav(bytes);
      if (!isUnreadable(found)) expect(found.channels.every((channel) => channel.every(Number.isFinite))).toBe(true);
    }), { numRuns: 500 });
  });
});
