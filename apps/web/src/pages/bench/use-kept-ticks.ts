import { useState } from 'react';

/** Ticks of a step outlast a reload of the page, as long as the tab is open and the step is the same. */
export function useKeptTicks(fingerprint: string): readonly [ReadonlySet<string>, (tick: string) => void] {
  const key = `rotorwright.ticks.${fingerprint}`;
  const [ticks, setTicks] = useState<ReadonlySet<string>>(() => {
    try {
      const kept: unknown = JSON.parse(sessionStorage.getItem(key) ?? '[]');
      return new Set(Array.isArray(kept) ? kept.filter((one): one is string => typeof one === 'string') : []);
    } catch {
      return new Set();
    }
  });
  const toggle = (tick: string): void => {
    const next = new Set(ticks);
    if (!next.delete(tick)) next.add(tick);
    setTicks(next);
    try {
      sessionStorage.setItem(key, JSON.stringify([...next]));
    } catch {
      // Without storage the ticks are set again after a reload.
    }
  };
  return [ticks, toggle];
}
