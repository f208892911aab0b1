import type { Reach } from '@rotorwright/build';
import type { Machine } from '@rotorwright/machine';
import { useEffect, useState } from 'react';
import type { Wanted } from './way-worker.ts';

/** What was found of which thing in which machine, or why nothing was. */
type Found = Wanted & ({ readonly reach: Reach } | { readonly trouble: string });

/** Has the ways to a thing looked for beside the page: in a large machine that takes a second. Undefined: not there yet. */
export function useWays(machine: Machine, thing: string): Reach | { readonly trouble: string } | undefined {
  const [found, setFound] = useState<Found>();
  useEffect(() => {
    if (!machine.thingOf.has(thing) && !machine.modules.has(thing)) {
      setFound({ machine, thing, trouble: `The machine has nothing called ${thing}.` });
      return undefined;
    }
    const worker = new Worker(new URL('./way-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<Reach>) => setFound({ machine, thing, reach: data }));
    worker.addEventListener('error', ({ message }) => setFound({ machine, thing, trouble: `The search broke off: ${message}. Open it again.` }));
    // oxlint-disable-next-line unicorn/require-post-message-target-origin -- a worker has no origin
    worker.postMessage({ machine, thing } satisfies Wanted);
    return () => worker.terminate();
  }, [machine, thing]);
  // What was found for another is nothing for this one.
  if (found === undefined || found.machine !== machine || found.thing !== thing) return undefined;
  return 'reach' in found ? found.reach : found;
}
