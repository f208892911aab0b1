import type { MachineSound } from '@rotorwright/figures';
import type { Unreadable } from '@rotorwright/signals';
import type { Question } from './messages.ts';

/** More than ten minutes of sound in four channels of floating point; the page would not hold more. */
const mostBytes = 512 * 2 ** 20;
/** What a phone records is unpacked at this rate, Hz. */
const unpackedRate = 48_000;

/**
 * A file made ready for the worker. WAV and tables go as they are; what else the browser can play, it unpacks.
 *
 * @returns what to ask, or why the file is none that can be heard
 */
export async function takeFile(file: File, sound: MachineSound, whole: boolean): Promise<Question | Unreadable> {
  if (file.size === 0) return { problem: `${file.name} is empty.` };
  if (file.size > mostBytes) return { problem: `${file.name} is larger than ${mostBytes / 2 ** 20} MB. Cut it to ten minutes or less.` };
  const bytes = await file.arrayBuffer();
  const head = new TextDecoder('latin1').decode(bytes.slice(0, 4));
  if (head === 'RIFF' || head === 'RIFX') return { sound, whole, bytes, kind: 'wav' };
  if (/\.(?:csv|tsv|txt)$/iu.test(file.name) || file.type.startsWith('text/')) return { sound, whole, bytes, kind: 'table' };
  try {
    const unpacked = await new OfflineAudioContext(1, 1, unpackedRate).decodeAudioData(bytes);
    const channels = Array.from({ length: unpacked.numberOfChannels }, (_, index) => Float64Array.from(unpacked.getChannelData(index)));
    return { sound, whole, recording: { rate: unpacked.sampleRate, channels, warnings: [] } };
  } catch {
    return { problem: `${file.name} is no recording that this browser can unpack. Wanted: WAV, what a phone records, or a table of time and acceleration (CSV).` };
  }
}
