import { readFile, type ReadFile } from './view.ts';

/** What a text says, as far as it can be handed over: a plan makes its words when they are read. */
export type Reading = Pick<ReadFile, 'machine' | 'findings'>;

// One text after the other. Whoever started this worker ends it.
addEventListener('message', ({ data: text }: MessageEvent<string>) => {
  const { machine, findings } = readFile(text);
  postMessage({ ...(machine && { machine }), findings } satisfies Reading);
});
