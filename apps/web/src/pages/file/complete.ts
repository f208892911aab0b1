import type { Offered } from './editor.ts';

export const offered = (_text: string, _offset: number): Offered | undefined => undefined;
