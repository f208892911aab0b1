import { useLayoutEffect, useRef, useState, type RefObject } from 'react';

/** Width of an element, px; 0 before it is measured. */
export function useWidth<Measured extends HTMLElement>(): readonly [RefObject<Measured | null>, number] {
  const ref = useRef<Measured>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    setWidth(Math.floor(element.clientWidth));
    const observer = new ResizeObserver(() => setWidth(Math.floor(element.clientWidth)));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, width];
}
