import { keyOf, type Idea } from './ideas.ts';
import { readToday, tryOut, type Refusal, type Tried } from './trial.ts';

/** What comes back for each idea. */
export interface Answer {
  readonly key: string;
  readonly result: Tried | Refusal;
}

// The text of today's file comes first, then one idea after the other. A stop is the end of this worker: whoever started it terminates it.
addEventListener('message', ({ data: text }: MessageEvent<string>) => {
  const today = readToday(text);
  addEventListener('message', ({ data: idea }: MessageEvent<Idea>) => postMessage({ key: keyOf(idea), result: tryOut(today, idea) } satisfies Answer));
}, { once: true });
