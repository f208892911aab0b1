import { useEffect, useState } from 'react';
import type { Machine } from '@rotorwright/machine';
import { keyOf, type Idea } from './ideas.ts';
import type { Answer } from './trial-worker.ts';
import { withFigures, type Refusal, type Trial } from './trial.ts';

interface Bench {
  readonly worker: Worker;
  /** Ideas that were handed over. */
  readonly asked: Set<string>;
}

/** Has the ideas worked out one after the other beside the page, so that the page never stands still. Undefined: not there yet. */
export function useTrials({ text, machine }: { readonly text: string; readonly machine: Machine }, ideas: readonly Idea[]): readonly (Trial | Refusal | undefined)[] {
  const [bench, setBench] = useState<Bench>();
  const [known, setKnown] = useState<ReadonlyMap<string, Trial | Refusal>>(new Map());
  useEffect(() => {
    const worker = new Worker(new URL('./trial-worker.ts', import.meta.url), { type: 'module' });
    const asked = new Set<string>();
    worker.addEventListener('message', ({ data: { key, result } }: MessageEvent<Answer>) => setKnown((before) => new Map(before).set(key, 'trouble' in result ? result : withFigures(machine, result))));
    worker.addEventListener('error', ({ message }) => {
      const broken: Refusal = { trouble: [`The reckoning broke off: ${message}. Open the page again.`] };
      setKnown((before) => new Map([...[...asked].map((key) => [key, broken] as const), ...before]));
    });
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no origin
    worker.postMessage(text);
    setBench({ worker, asked });
    setKnown(new Map());
    return () => worker.terminate();
  }, [text, machine]);
  useEffect(() => {
    if (bench === undefined) return;
    for (const idea of ideas.filter((each) => !bench.asked.has(keyOf(each)))) {
      bench.asked.add(keyOf(idea));
      // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no origin
      bench.worker.postMessage(idea);
    }
  }, [bench, ideas]);
  return ideas.map((idea) => known.get(keyOf(idea)));
}
