import { mostSamples, type Recording, type Unreadable } from './recording.ts';

interface Format {
  readonly kind: 'integer' | 'float';
  readonly channels: number;
  readonly rate: number;
  readonly bits: number;
  /** Bytes of one sample of one channel. */
  readonly bytes: number;
}

const supported = 'Wanted: uncompressed WAV of 8, 16, 24 or 32 bits, or 32 or 64 bits of floating point.';

/**
 * Reads an uncompressed WAV file: whole numbers of 8, 16, 24 and 32 bits, floating point of 32 and 64, plain and
 * extensible headers, chunks of any kind around them. A file that breaks off is read as far as it goes, and says so.
 *
 * @param bytes  the whole file
 * @returns      samples between −1 and 1 (floating point may go beyond), or why it cannot be read
 * @source RIFF/WAVE: Microsoft and IBM, Multimedia Programming Interface and Data Specifications 1.0 (1991); WAVEFORMATEXTENSIBLE (from memory)
 */
export function readWav(bytes: Uint8Array): Recording | Unreadable {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tag = (at: number): string => (at + 4 <= bytes.length ? String.fromCharCode(...bytes.subarray(at, at + 4)) : '');
  if (tag(0) === 'RIFX') return { problem: `This WAV file is big-endian. ${supported}` };
  if (tag(0) !== 'RIFF' || tag(8) !== 'WAVE') return { problem: `This is no WAV file: it does not begin with RIFF and WAVE. ${supported}` };
  const warnings: string[] = [];
  let format: Format | undefined;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const name = tag(at);
    const stated = view.getUint32(at + 4, true);
    const start = at + 8;
    const size = Math.min(stated, bytes.length - start);
    if (name === 'fmt ') {
      const read = readFormat(view, start, size);
      if ('problem' in read) return read;
      format = read;
    } else if (name === 'data') {
      if (format === undefined) return { problem: 'This WAV file has sound before it says how the sound is written. Record it again, or save it anew.' };
      // A recorder that was cut off leaves a length of 0, or of everything.
      const open = stated === 0 || stated === 0xffff_ffff;
      if (!open && stated > bytes.length - start) warnings.push(`The file breaks off: ${stated} bytes of sound were announced, ${size} are there.`);
      return samplesOf(view, format, start, open ? bytes.length - start : size, warnings);
    }
    // Chunks begin at even places; some writers leave the padding of an odd one out.
    const next = start + stated;
    at = stated % 2 === 1 && !isTag(tag(next + 1)) && isTag(tag(next)) ? next : next + (stated % 2);
  }
  return { problem: format === undefined ? `This WAV file does not say how its sound is written. ${supported}` : 'This WAV file holds no sound.' };
}

const isTag = (name: string): boolean => /^[A-Za-z][A-Za-z0-9 _]{3}$/u.test(name);

function readFormat(view: DataView, at: number, size: number): Format | Unreadable {
  if (size < 16) return { problem: `The header of this WAV file is cut short: ${size} bytes where at least 16 belong.` };
  const short = view.getUint16(at, true);
  const channels = view.getUint16(at + 2, true);
  const rate = view.getUint32(at + 4, true);
  const block = view.getUint16(at + 12, true);
  const bits = view.getUint16(at + 14, true);
  const code = short === 0xfffe && size >= 26 ? view.getUint16(at + 24, true) : short;
  const kind = code === 1 ? 'integer' : code === 3 ? 'float' : undefined;
  if (kind === undefined) return { problem: `The sound in this WAV file is compressed (format ${code}). ${supported}` };
  if (channels === 0 || channels > 64) return { problem: `This WAV file claims ${channels} channels; 1 to 64 can be.` };
  if (rate < 100 || rate > 1_000_000) return { problem: `This WAV file claims ${rate} samples a second; 100 to 1,000,000 can be.` };
  const bytes = block / channels;
  const fits = kind === 'float' ? (bytes === 4 && bits === 32) || (bytes === 8 && bits === 64) : Number.isInteger(bytes) && bytes >= 1 && bytes <= 4 && bits >= 1 && bits <= 8 * bytes;
  if (!fits) return { problem: `This WAV file claims samples of ${bits} bits in ${Number(bytes.toFixed(2))} bytes. ${supported}` };
  return { kind, channels, rate, bits, bytes };
}

function samplesOf(view: DataView, { kind, channels, rate, bytes }: Format, start: number, size: number, warnings: string[]): Recording | Unreadable {
  const count = Math.floor(size / (bytes * channels));
  if (count === 0) return { problem: 'This WAV file holds no sound.' };
  if (count > mostSamples) return { problem: `This recording has ${count} samples; at most ${mostSamples} are read. Cut it shorter.` };
  const read = readerOf(view, kind, bytes);
  let broken = 0;
  const samples = Array.from({ length: channels }, (_, channel) => {
    const one = new Float64Array(count);
    for (let index = 0, at = start + channel * bytes; index < count; index += 1, at += bytes * channels) {
      const value = read(at);
      if (Number.isFinite(value)) one[index] = value;
      else broken += 1;
    }
    return one;
  });
  if (broken > 0) warnings.push(`${broken} samples are no numbers; they were taken as silence.`);
  return { rate, channels: samples, warnings };
}

function readerOf(view: DataView, kind: Format['kind'], bytes: number): (at: number) => number {
  if (kind === 'float') return bytes === 4 ? (at) => view.getFloat32(at, true) : (at) => view.getFloat64(at, true);
  switch (bytes) {
    // Eight bits alone are without sign, silence at 128.
    case 1: return (at) => (view.getUint8(at) - 128) / 128;
    case 2: return (at) => view.getInt16(at, true) / 32_768;
    case 3: return (at) => (view.getUint16(at, true) + view.getInt8(at + 2) * 65_536) / 8_388_608;
    default: return (at) => view.getInt32(at, true) / 2_147_483_648;
  }
}
