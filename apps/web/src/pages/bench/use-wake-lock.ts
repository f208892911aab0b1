import { useEffect, useState } from 'react';

export type WakeState = 'on' | 'off' | 'refused' | 'unknown-here';

/**
 * Keeps the screen awake while wanted and the page is in view. Browsers drop the lock when the page is hidden; it is
 * asked for again when it comes back. A refusal is reported, never thrown.
 */
export function useWakeLock(wanted: boolean): WakeState {
  const possible = typeof navigator !== 'undefined' && 'wakeLock' in navigator;
  const [state, setState] = useState<WakeState>(possible ? 'off' : 'unknown-here');
  useEffect(() => {
    if (!possible || !wanted) {
      setState(possible ? 'off' : 'unknown-here');
      return undefined;
    }
    let lock: WakeLockSentinel | undefined;
    let left = false;
    const ask = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return;
      try {
        const got = await navigator.wakeLock.request('screen');
        if (left) {
          await got.release();
          return;
        }
        lock = got;
        setState('on');
      } catch {
        setState('refused');
      }
    };
    const again = (): void => void ask();
    again();
    document.addEventListener('visibilitychange', again);
    return () => {
      left = true;
      document.removeEventListener('visibilitychange', again);
      lock?.release().catch(() => undefined);
    };
  }, [possible, wanted]);
  return state;
}
