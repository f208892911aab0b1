import { useLayoutEffect, useRef, type RefObject } from 'react';

/** A value that changes many times a second: whoever shows it listens, and nothing else is drawn anew. */
export interface Live {
  readonly get: () => number;
  readonly set: (value: number) => void;
  /** @returns a function that ends it */
  readonly listen: (listener: (value: number) => void) => () => void;
}

export function createLive(initial: number): Live {
  let value = initial;
  const listeners = new Set<(value: number) => void>();
  return {
    get: () => value,
    set: (next) => {
      if (next === value) return;
      value = next;
      for (const listener of listeners) listener(next);
    },
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** Does something to an element now and whenever the value changes, past React. */
export function useLive<Shown extends Element>(live: Live, show: (element: Shown, value: number) => void): RefObject<Shown | null> {
  const element = useRef<Shown>(null);
  const latest = useRef(show);
  latest.current = show;
  useLayoutEffect(() => {
    const apply = (value: number): void => {
      if (element.current) latest.current(element.current, value);
    };
    return live.listen(apply);
  }, [live]);
  // After each drawing by React, which knows nothing of the live value.
  useLayoutEffect(() => {
    if (element.current) latest.current(element.current, live.get());
  });
  return element;
}
