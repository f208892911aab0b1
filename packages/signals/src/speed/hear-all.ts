import type { Recording } from '../recording/index.ts';
import type { LineComb } from './comb.ts';
import { hear } from './hear.ts';
import type { Hearing, HearingProgress } from './hearing.ts';
import { stretchSeconds, wholeUpTo } from './prepare.ts';

/**
 * Hears a long recording piece after piece, each as long as the others and short enough for `hear`. Each piece is heard by
 * itself: what it says does not lean on those before.
 *
 * @param onProgress called before each piece of work, with its part of the whole
 * @returns          one hearing a piece, in the order of time; `from` says where it begins
 * @throws RangeError as `hear` does
 */
export function* hearAll(recording: Recording, comb: LineComb, onProgress: (progress: HearingProgress) => void = () => undefined): Generator<Hearing> {
  const samples = recording.channels[0]?.length ?? 0;
  const seconds = samples / recording.rate;
  const pieces = seconds <= wholeUpTo ? 1 : Math.ceil(seconds / stretchSeconds);
  for (let piece = 0; piece < pieces; piece += 1) {
    const start = Math.floor((piece * samples) / pieces);
    const end = Math.floor(((piece + 1) * samples) / pieces);
    const own: Recording = { ...recording, channels: recording.channels.map((channel) => channel.subarray(start, end)) };
    const hearing = hear(own, comb, ({ part, words }) => onProgress({ part: (piece + part) / pieces, words: pieces === 1 ? words : `Piece ${piece + 1} of ${pieces}: ${words.charAt(0).toLowerCase()}${words.slice(1)}` }));
    yield { ...hearing, from: start / recording.rate };
  }
}
