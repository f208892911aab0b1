import { useEffect, useState } from 'react';
import type { Machine } from '@rotorwright/machine';

/** How many margins of a machine are exceeded, reckoned beside the page; undefined while nobody knows. */
export function useExceeded(machine: Machine | undefined): number | undefined {
  const [known, setKnown] = useState<{ readonly machine: Machine; readonly exceeded: number }>();
  useEffect(() => {
    if (machine === undefined) return;
    const worker = new Worker(new URL('./exceeded-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data: exceeded }: MessageEvent<number>) => {
      setKnown({ machine, exceeded });
      worker.terminate();
    });
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no origin
    worker.postMessage(machine);
    return () => worker.terminate();
  }, [machine]);
  return known !== undefined && known.machine === machine ? known.exceeded : undefined;
}
