import { hear, hearAll, isUnreadable, leastSeconds, readAccelerationTable, readWav, waterfall, type HearingProgress, type Recording, type Unreadable } from '@rotorwright/signals';
import { drawnUpTo } from './drawn-up-to.ts';
import type { Asked, Question, Told } from './messages.ts';
import { practiceRecording } from './practice-recording.ts';

/** Hears one recording, away from the page, which can stop it by ending it. */
self.addEventListener('message', ({ data }: MessageEvent<Asked>): void => {
  if ('practice' in data) return void hear(practiceRecording(data.practice), data.practice);
  const tell = (told: Told): void => self.postMessage(told, { transfer: [] });
  tell({ progress: { part: 0.02, words: 'Reading' } });
  const recording = recordingOf(data);
  if (isUnreadable(recording)) return tell(recording);
  const seconds = (recording.channels[0]?.length ?? 0) / recording.rate;
  if (seconds < leastSeconds) return tell({ problem: `The recording lasts ${Number(seconds.toFixed(2))} s; at least ${leastSeconds} s are wanted.` });
  const onProgress = (progress: HearingProgress): void => tell({ progress });
  const pieces = data.whole ? [...hearAll(recording, data.sound, onProgress)] : [hear(recording, data.sound, onProgress)];
  tell({ progress: { part: 0.97, words: 'Drawing what was recorded' } });
  // The piece that says most stands for the whole; the others have their speed over time.
  const hearing = pieces.reduce((best, each) => (each.margin > best.margin ? each : best));
  tell({ hearing, pieces, waterfall: waterfall(recording, drawnUpTo), warnings: recording.warnings, seconds });
});

function recordingOf(asked: Question): Recording | Unreadable {
  if ('recording' in asked) return asked.recording;
  const bytes = new Uint8Array(asked.bytes);
  return asked.kind === 'wav' ? readWav(bytes) : readAccelerationTable(new TextDecoder().decode(bytes));
}
