import { eventWords, gainWords, importances, shareWords, thingTitle, type HazardHolds, type WayOfWorking } from '@rotorwright/build';
import { useMemo, useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../data/index.ts';
import { Button, stepAt } from '../../sheet/index.ts';
import { signatureWords } from './chain-row.tsx';

/** So many stand there before more is asked for. */
const first = 6;

/** Which omission weighs most in a hazard, and whose signature guards it. */
export function Weights({ open, hazard, way }: { readonly open: ReadableMachine; readonly hazard: HazardHolds; readonly way: WayOfWorking }): ReactNode {
  const [all, setAll] = useState(false);
  const weights = useMemo(() => importances(open.held, hazard, way), [open.held, hazard, way]);
  if (weights === undefined || weights.length === 0) return undefined;
  return (
    <section className="area" aria-label="What weighs most">
      <div className="area-head"><h2>What weighs most</h2><span className="small soft">share of the chance that falls away when the step is never left out, with {way === 'second look' ? 'a second look' : way === 'no list' ? 'no list' : `a ${way}`}</span></div>
      <table className="habits weights">
        <thead><tr><th scope="col">omission</th><th scope="col">does it alone</th><th scope="col">share</th><th scope="col">signature that guards</th></tr></thead>
        <tbody>
          {weights.slice(0, all ? undefined : first).map((weight) => (
            <tr key={weight.step}>
              <th scope="row">{capital(eventWords(open.machine, weight.event))}</th>
              <td>{gainWords(weight)}</td>
              <td>{shareWords(weight.share)}</td>
              <td><Link href={stepAt(open.id, weight.step)}>{thingTitle(open.machine, weight.step)}</Link> <span className="small soft">{signatureWords(open, weight.step)}</span></td>
            </tr>
          ))}
        </tbody>
      </table>
      {weights.length > first && <Button aria-expanded={all} onClick={() => setAll(!all)}>{all ? 'Fewer' : `All ${weights.length}`}</Button>}
    </section>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
