import { chainTitle, chanceWords, listLengths, stepsOf, worstState, type Chain, type SinglePoint, type WayOfWorking } from '@rotorwright/build';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../data/index.ts';
import { StateWord, stepAt } from '../../sheet/index.ts';
import { signatureWords, singleWords } from './chain-row.tsx';
import { missedRange } from './chance-scale.ts';

export interface ChainTableProps {
  readonly open: ReadableMachine;
  readonly chains: readonly Chain[];
  readonly pointsOf: (chain: Chain) => readonly SinglePoint[];
  readonly way: WayOfWorking;
  readonly label: string;
}

/** The chains once more, as a table. */
export function ChainTable({ open, chains, pointsOf, way, label }: ChainTableProps): ReactNode {
  const { machine, held, state, plan } = open;
  const lengthOf = listLengths(held);
  return (
    <div className="table-frame" tabIndex={0} role="region" aria-label={label}>
      <table>
        <thead><tr><th scope="col">what is kept</th><th scope="col">link by link</th><th scope="col">state</th><th scope="col">one slip</th><th scope="col">signature that guards</th><th scope="col">chance missed</th></tr></thead>
        <tbody>
          {chains.map((chain, i) => {
            const { part, on } = chainTitle(machine, chain);
            const steps = stepsOf(chain);
            const worst = worstState(steps, state.steps);
            return (
              // A joint may head two chains of one list: as what holds a part, and as what closes a stack.
              <tr key={`${chain.joint} ${i}`}>
                <th scope="row">{part}{on !== '' && ` on ${on.charAt(0).toLowerCase()}${on.slice(1)}`}{chain.backup && ', second line'}</th>
                <td>{chain.links.map(({ words }) => words).join(' → ')}</td>
                <td><StateWord state={worst} size={13}>{worst}</StateWord></td>
                <td>{singleWords(pointsOf(chain)) ?? '–'}</td>
                <td>{steps.map((step) => <div key={step}><Link href={stepAt(open.id, step)}>{plan.steps.get(step)?.title ?? step}</Link> <span className="soft">{signatureWords(open, step)}</span></div>)}</td>
                <td>{chanceWords(missedRange(way, steps.map(lengthOf)))}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
