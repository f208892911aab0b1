import { useEffect, useRef, useState } from 'react';
import type { Reading } from './reading-worker.ts';
import type { MachineView } from './view.ts';

/** What was read of which text; or why it was not, and what was read before. */
interface Known {
  readonly text: string;
  readonly reading: Reading;
  readonly trouble?: string;
}

/**
 * Has a text that is being changed read beside the page, so that no key waits for it: the newest text, as soon as the one
 * before it has been read.
 *
 * @returns what was read last, and whether it is of this very text
 */
export function useReading(saved: MachineView, text: string): { readonly reading: Reading; readonly current: boolean; readonly trouble?: string | undefined } {
  const [known, setKnown] = useState<Known>();
  const worker = useRef<Worker>(undefined);
  const inHand = useRef<string>(undefined);
  useEffect(() => () => {
    worker.current?.terminate();
    worker.current = undefined;
    inHand.current = undefined;
  }, []);
  useEffect(() => {
    if (text === saved.text || text === known?.text || inHand.current !== undefined) return;
    const read = (reading: (before: Reading) => Reading, trouble?: string): void => {
      const done = inHand.current ?? text;
      inHand.current = undefined;
      setKnown((before) => ({ text: done, reading: reading(before?.reading ?? saved), ...(trouble === undefined ? {} : { trouble }) }));
    };
    if (worker.current === undefined) {
      worker.current = new Worker(new URL('./reading-worker.ts', import.meta.url), { type: 'module' });
      worker.current.addEventListener('message', ({ data }: MessageEvent<Reading>) => read(() => data));
      worker.current.addEventListener('error', ({ message }) => read((before) => before, `The file was not read to its end: ${message}. What stands here is of the text before.`));
    }
    inHand.current = text;
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no origin
    worker.current.postMessage(text);
  }, [saved, text, known]);
  if (text === saved.text) return { reading: saved, current: true };
  return { reading: known?.reading ?? saved, current: known?.text === text, trouble: known?.trouble };
}
