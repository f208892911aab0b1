import { chooseShims, LARGEST_GAP, type ShimTask } from '@rotorwright/build';
import { showQuantity } from '@rotorwright/units';
import { useState, type ReactNode } from 'react';
import { shimWords as words } from './expected-play.tsx';

const mm = (length: number): string => showQuantity(length, 'mm', { significant: 4 });

/** Steps of the play, in µm: whole numbers, so that a hundred touches add up without error. */
const steps = [-100, -10, 10, 100] as const;

/** Which shims of the bag give the play that is wanted, from the play without any. */
export function ShimPanel({ task }: { readonly task: ShimTask }): ReactNode {
  const [gap, setGap] = useState<number>();
  const { bag, window } = task;
  const choice = gap === undefined ? undefined : chooseShims(bag, gap * 1e-6, window);
  const [best, ...others] = choice?.fits ?? [];
  const step = (by: number): void => setGap(Math.min(Math.max((gap ?? 0) + by, 0), LARGEST_GAP * 1e6));
  return (
    <details className="bench-shims">
      <summary>Which shim from the bag?</summary>
      <p>Play without any shim; {mm(window.min)} to {mm(window.max)} is wanted in the end.</p>
      <div className="bench-steps">
        {steps.slice(0, 2).map((by) => <button key={by} type="button" aria-label={`Play less, by ${mm(-by * 1e-6)}`} onClick={() => step(by)}>−{-by / 1000}</button>)}
        <output aria-label="Play without any shim">{gap === undefined ? '—' : (gap / 1000).toFixed(2)} <small>mm</small></output>
        {steps.slice(2).map((by) => <button key={by} type="button" aria-label={`Play more, by ${mm(by * 1e-6)}`} onClick={() => step(by)}>+{by / 1000}</button>)}
      </div>
      <div role="status">
        {choice === undefined && <p>Measure the play with no shim in, and step to it.</p>}
        {best && <p className="bench-pick"><b>Fit {words(best)}.</b> Leaves {mm(best.leaves)}. Measure again with it in.</p>}
        {choice && !best && <p className="bench-pick"><b>None of the bag fits.</b></p>}
        {choice && !best && choice.loose && <p>{words(choice.loose)} leaves {mm(choice.loose.leaves)}: too loose by {mm(choice.loose.leaves - window.max)}.</p>}
        {choice && !best && choice.tight && <p>{words(choice.tight)} leaves {mm(choice.tight.leaves)}: too tight by {mm(window.min - choice.tight.leaves)}.</p>}
        {others.length > 0 && <p>Or {others.slice(0, 3).map((pick) => `${words(pick)} (leaves ${mm(pick.leaves)})`).join(', ')}.</p>}
      </div>
    </details>
  );
}
