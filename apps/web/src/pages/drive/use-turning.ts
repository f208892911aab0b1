import { useCallback, useEffect, useRef, useSyncExternalStore } from 'react';
import type { Live } from './live.ts';

/** How much slower than the machine the picture turns. */
export const slower = 600;

const less = matchMedia('(prefers-reduced-motion: reduce)');
const subscribe = (told: () => void): (() => void) => {
  less.addEventListener('change', told);
  return () => less.removeEventListener('change', told);
};

/** Whether the system asks for less motion: then nothing turns by itself. */
export const useLessMotion = (): boolean => useSyncExternalStore(subscribe, () => less.matches);

/**
 * Turns the train while a hand holds it, and not otherwise.
 *
 * @param angle  of the source, rad
 * @param speed  of the source, rad/s
 * @returns a function that begins or ends the turning
 */
export function useTurning(angle: Live, speed: Live): (held: boolean) => void {
  const frame = useRef(0);
  const lessMotion = useLessMotion();
  const stop = useCallback(() => {
    cancelAnimationFrame(frame.current);
    frame.current = 0;
  }, []);
  useEffect(() => stop, [stop]);
  return useCallback((held) => {
    stop();
    if (!held || lessMotion) return;
    let last = performance.now();
    const turn = (now: number): void => {
      // A page that was away does not make up for it in one leap.
      const passed = Math.min(now - last, 50) / 1000;
      last = now;
      angle.set(angle.get() + (speed.get() * passed) / slower);
      frame.current = requestAnimationFrame(turn);
    };
    frame.current = requestAnimationFrame(turn);
  }, [angle, speed, stop, lessMotion]);
}
