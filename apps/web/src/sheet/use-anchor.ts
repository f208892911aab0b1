import { useEffect } from 'react';
import { useLocation, useSearch } from 'wouter';
import { useLocationProperty } from 'wouter/use-browser-location';

/** State of the address when it was asked for in Find, which is gone by then: the keyboard begins at the sheet. */
export const askedFor = { askedFor: true } as const;

const wasAskedFor = (state: unknown): boolean => typeof state === 'object' && state !== null && 'askedFor' in state;

/** Brings the part of the sheet that the address names after `#` to the top, with the keyboard at it. */
export function useAnchor(): void {
  const [address] = useLocation();
  const search = useSearch();
  const hash = useLocationProperty(() => location.hash);
  useEffect(() => {
    const part = hash.length > 1 ? document.getElementById(hash.slice(1)) : null;
    part?.scrollIntoView();
    part?.focus({ preventScroll: true });
  }, [address, search, hash]);
  useEffect(() => {
    // What the sheet itself has brought the keyboard to comes first.
    if (wasAskedFor(history.state) && document.activeElement === document.body) document.getElementById('sheet')?.focus({ preventScroll: true });
  }, [address]);
}
