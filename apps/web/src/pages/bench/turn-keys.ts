type Turn = 'next' | 'back';

/** Foot pedals send page keys or arrows, by their make. Up and down are left alone: they scroll. */
const turns: Readonly<Record<string, Turn>> = { PageDown: 'next', ArrowRight: 'next', PageUp: 'back', ArrowLeft: 'back' };

/** Which way a key turns at the bench; undefined when it does not. */
export function turnOf({ key, shiftKey }: { readonly key: string; readonly shiftKey: boolean }): Turn | undefined {
  return key === ' ' ? (shiftKey ? 'back' : 'next') : shiftKey ? undefined : turns[key];
}
