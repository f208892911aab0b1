import type { ReactNode } from 'react';
import { timeLeft, wedge } from './cure-clock.ts';

export interface CureDialProps {
  readonly title: string;
  /** ms since 1970 */
  readonly until: number;
  /** Whole length of the cure, s. */
  readonly cure: number;
  readonly now: number;
}

/** What is left of a cure: a dial whose wedge shrinks, and the time in words. */
export function CureDial({ title, until, cure, now }: CureDialProps): ReactNode {
  // The clock of the page ticks in steps: what is left is never more than the whole cure.
  const left = Math.min(Math.max(0, until - now), cure * 1000);
  return (
    <section className="bench-cure" aria-label={`Curing: ${title}`}>
      <svg viewBox="-40 -40 80 80" role="img" aria-label={`${timeLeft(left)} left`}>
        <circle r="36" />
        <path d={wedge(left / Math.max(cure * 1000, 1), 33)} />
        {Array.from({ length: 12 }, (_, hour) => <line key={hour} y1="-36" y2="-29" transform={`rotate(${hour * 30})`} />)}
      </svg>
      <div>
        <p><b className="curing">curing</b> {title}</p>
        <p className="left">{timeLeft(left)} left</p>
      </div>
    </section>
  );
}
