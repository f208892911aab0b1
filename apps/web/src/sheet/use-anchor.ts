import { useEffect } from 'react';
import { useLocation, useSearch } from 'wouter';
import { useLocationProperty } from 'wouter/use-browser-location';

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
}
