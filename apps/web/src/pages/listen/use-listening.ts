import type { MachineSound } from '@rotorwright/figures';
import type { HearingProgress } from '@rotorwright/signals';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Heard, Told } from './messages.ts';
import { takeFile } from './take-file.ts';

export type Listening =
  | { readonly at: 'nothing' }
  | { readonly at: 'work'; readonly name: string; readonly progress: HearingProgress }
  | ({ readonly at: 'answer'; readonly name: string; readonly file: File } & Heard)
  | { readonly at: 'refused'; readonly name: string; readonly problem: string };

/** Hears recordings in a worker, one at a time; a new one, or `stop`, ends what is under way. */
export function useListening(sound: MachineSound | undefined): { readonly listening: Listening; readonly take: (file: File, whole?: boolean) => void; readonly stop: () => void; readonly refuse: (name: string, problem: string) => void } {
  const [listening, setListening] = useState<Listening>({ at: 'nothing' });
  const worker = useRef<Worker>(undefined);
  const turn = useRef(0);
  const end = useCallback((): number => {
    worker.current?.terminate();
    worker.current = undefined;
    return ++turn.current;
  }, []);
  useEffect(() => () => void end(), [end]);

  const take = useCallback((file: File, whole = false): void => {
    if (sound === undefined) return;
    const own = end();
    const name = file.name;
    setListening({ at: 'work', name, progress: { part: 0, words: 'Opening' } });
    void takeFile(file, sound, whole).then((asked) => {
      if (turn.current !== own) return;
      if ('problem' in asked) return setListening({ at: 'refused', name, problem: asked.problem });
      const hired = new Worker(new URL('./listen-worker.ts', import.meta.url), { type: 'module' });
      worker.current = hired;
      hired.addEventListener('message', ({ data }: MessageEvent<Told>): void => {
        if ('progress' in data) return setListening({ at: 'work', name, progress: data.progress });
        end();
        setListening('problem' in data ? { at: 'refused', name, problem: data.problem } : { at: 'answer', name, file, ...data });
      });
      hired.addEventListener('error', ({ message }): void => {
        end();
        setListening({ at: 'refused', name, problem: `Listening broke off: ${message === '' ? 'the worker could not be loaded. Load the page again' : message}.` });
      });
      hired.postMessage(asked, 'bytes' in asked ? [asked.bytes] : asked.recording.channels.map(({ buffer }) => buffer));
    }).catch((error: unknown) => setListening({ at: 'refused', name, problem: `The file could not be read: ${error instanceof Error ? error.message : String(error)}.` }));
  }, [sound, end]);

  const stop = useCallback((): void => {
    end();
    setListening({ at: 'nothing' });
  }, [end]);
  const refuse = useCallback((name: string, problem: string): void => {
    end();
    setListening({ at: 'refused', name, problem });
  }, [end]);
  return { listening, take, stop, refuse };
}
