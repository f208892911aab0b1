import { shimsAhead, type ShimReach, type ShimTask } from '@rotorwright/build';
import { endPlays } from '@rotorwright/figures';
import type { Machine, Window } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { useMemo, type ReactNode } from 'react';

/** A length at the bench: to a hundredth of a millimetre, rounded to the nearest. */
const hundredths = (length: number): string => showQuantity(length, 'mm', { decimals: 2 });
const mm = (length: number): string => showQuantity(length, 'mm', { significant: 4 });
export const shimWords = ({ shims }: Pick<ShimReach, 'shims'>): string => (shims.length === 0 ? 'no shim' : shims.map(({ thickness, count }) => `${count > 1 ? `${count} × ` : ''}${mm(thickness)}`).join(' + '));

interface ExpectedPlayProps {
  readonly machine: Machine;
  /** The stack that is put together or measured. */
  readonly stack: string;
  /** The shim that its play decides. */
  readonly task: ShimTask | undefined;
}

/** What the sizes of the file let expect of a stack, and which shims of the bag to have ready. */
export function ExpectedPlay({ machine, stack, task }: ExpectedPlayProps): ReactNode {
  const play = useMemo(() => endPlays(machine).find((one) => one.stack.id === stack), [machine, stack]);
  const [least, low, high, most] = [play?.least?.value, play?.low?.value, play?.high?.value, play?.most?.value];
  if (!play || least === undefined || low === undefined || high === undefined || most === undefined) return undefined;
  const shims = play.shims.length > 0;
  const ahead = task && shims ? shimsAhead(task.bag, { min: low, max: high }, task.window) : undefined;
  return (
    <section className="bench-expected" aria-label="What to expect">
      <h2>What to expect</h2>
      <p><b>{range(low, high)}</b>{shims && ' before shims'} in 99.7 of 100; {range(least, most)} at the worst.{low < 0 && ' Below 0 the rings press on each other.'}</p>
      {!ahead && play.wanted && <p>{wantedWords(play.wanted)}{play.share?.value !== undefined && ` ${Math.floor(play.share.value * 100)} of 100 come out so.`}</p>}
      {ahead && <Ahead {...ahead} />}
    </section>
  );
}

function Ahead({ reaches, gaps }: ReturnType<typeof shimsAhead>): ReactNode {
  // What is narrower than a dial gauge shows is no gap at the bench.
  const wide = gaps.filter(({ from, to }) => hundredths(from) !== hundredths(to));
  return (
    <>
      <p>From the bag have ready:</p>
      <ul>{reaches.map((reach) => <li key={reach.total}><b>{shimWords(reach)}</b> for {range(reach.from, reach.to)}</li>)}</ul>
      {wide.length > 0 && <p>Nothing in the bag does for {wide.map(({ from, to }) => range(from, to)).join(', ')}.</p>}
    </>
  );
}

const range = (from: number, to: number): string => `${hundredths(from).replace(' mm', '')} to ${hundredths(to)}`;

function wantedWords({ min, max }: Window): string {
  if (max !== undefined && max <= 0 && min !== undefined) return `Preload is wanted: pressed by ${range(Math.abs(max), -min)}.`;
  if (min === undefined || max === undefined) return min === undefined ? `At most ${hundredths(max ?? 0)} is wanted.` : `At least ${hundredths(min)} is wanted.`;
  return `${range(min, max)} is wanted.`;
}
