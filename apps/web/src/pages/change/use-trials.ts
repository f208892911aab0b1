import { useEffect, useRef, useState } from 'react';
import { keyOf, type Idea } from './ideas.ts';
import { tryOut, type Refusal, type Today, type Trial } from './trial.ts';

/** Works the ideas out one after the other, between two pictures, so that the page never stands still. Undefined: not there yet. */
export function useTrials(today: Today, ideas: readonly Idea[]): readonly (Trial | Refusal | undefined)[] {
  const [known, setKnown] = useState<ReadonlyMap<string, Trial | Refusal>>(new Map());
  const of = useRef(today.text);
  const fresh = of.current === today.text ? known : new Map<string, Trial | Refusal>();
  const next = ideas.find((idea) => !fresh.has(keyOf(idea)));
  useEffect(() => {
    if (next === undefined) return undefined;
    const timer = setTimeout(() => {
      const result = tryOut(today, next);
      setKnown((before) => new Map(of.current === today.text ? before : []).set(keyOf(next), result));
      of.current = today.text;
    }, 0);
    return () => clearTimeout(timer);
  }, [today, next]);
  return ideas.map((idea) => fresh.get(keyOf(idea)));
}
