import type { MachineSound } from '@rotorwright/figures';
import type { HearingProgress } from '@rotorwright/signals';
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Asked, Heard, Told } from './messages.ts';
import { takeFile } from './take-file.ts';

export type Listening =
  | { readonly at: 'nothing' }
  | { readonly at: 'work'; readonly name: string; readonly progress: HearingProgress }
  | ({ readonly at: 'answer'; readonly name: string; readonly file: File } & Heard)
  | { readonly at: 'refused'; readonly name: string; readonly problem: string };

/** Hears recordings in a worker, one at a time; a new one, or `stop`, ends what is under way. The worker is hired when the page opens, and practises, so that the first recording need not wait for its program. */
export function useListening(sound: MachineSound | undefined): { readonly listening: Listening; readonly take: (file: File, whole?: boolean) => void; readonly stop: () => void; readonly refuse: (name: string, problem: string) => void } {
  const [listening, setListening] = useState<Listening>({ at: 'nothing' });
  const worker = useRef<Worker>(undefined);
  /** The file that is being heard: what the worker says is of this one. */
  const asked = useRef<File>(undefined);
  const end = useCallback((): void => {
    worker.current?.terminate();
    worker.current = undefined;
    asked.current = undefined;
  }, []);
  const hire = useCallback((): Worker => {
    if (worker.current) return worker.current;
    const hired = new Worker(new URL('./listen-worker.ts', import.meta.url), { type: 'module' });
    worker.current = hired;
    hired.addEventListener('message', ({ data }: MessageEvent<Told>): void => {
      const file = asked.current;
      if (file === undefined) return;
      const { name } = file;
      if ('progress' in data) return setListening({ at: 'work', name, progress: data.progress });
      asked.current = undefined;
      setListening('problem' in data ? { at: 'refused', name, problem: data.problem } : { at: 'answer', name, file, ...data });
    });
    hired.addEventListener('error', ({ message }): void => {
      const file = asked.current;
      end();
      if (file) setListening({ at: 'refused', name: file.name, problem: `Listening broke off: ${message === '' ? 'the worker could not be loaded. Load the page again' : message}.` });
    });
    return hired;
  }, [end]);
  const [first] = useState(sound);
  useEffect(() => {
    if (first !== undefined && first.families.length > 0) hire().postMessage({ practice: first } satisfies Asked, []);
    return end;
  }, [first, hire, end]);

  const take = useCallback((file: File, whole = false): void => {
    if (sound === undefined) return;
    if (asked.current) end();
    asked.current = file;
    const { name } = file;
    setListening({ at: 'work', name, progress: { part: 0, words: 'Opening' } });
    void takeFile(file, sound, whole).then((question) => {
      if (asked.current !== file) return;
      if ('problem' in question) {
        asked.current = undefined;
        return setListening({ at: 'refused', name, problem: question.problem });
      }
      hire().postMessage(question, 'bytes' in question ? [question.bytes] : question.recording.channels.map(({ buffer }) => buffer));
    }).catch((error: unknown) => {
      if (asked.current !== file) return;
      asked.current = undefined;
      setListening({ at: 'refused', name, problem: `The file could not be read: ${error instanceof Error ? error.message : String(error)}.` });
    });
  }, [sound, hire, end]);

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
