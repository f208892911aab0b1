import type { ReactNode } from 'react';
import { useLive, type Live } from './live.ts';

/** Text that follows a live value. */
export function LiveText({ live, text, className }: { readonly live: Live; readonly text: (value: number) => string; readonly className?: string }): ReactNode {
  const ref = useLive<HTMLSpanElement>(live, (element, value) => {
    const next = text(value);
    if (element.textContent !== next) element.textContent = next;
  });
  return <span ref={ref} className={className} />;
}
