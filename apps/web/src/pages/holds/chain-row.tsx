import { chainTitle, chanceWords, listLengths, stepsOf, worstState, type Chain, type SinglePoint, type WayOfWorking } from '@rotorwright/build';
import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../data/index.ts';
import { dayOf, keptAt, StateMark, stepAt } from '../../sheet/index.ts';
import { ChainLinks } from './chain-links.tsx';
import { ChanceBar } from './chance-bar.tsx';
import { missedRange } from './chance-scale.ts';

export interface ChainRowProps {
  readonly open: ReadableMachine;
  readonly chain: Chain;
  readonly way: WayOfWorking;
  readonly points: readonly SinglePoint[];
  readonly onMiss: (step: string) => void;
}

/** What a chain keeps, its links, the signature that guards it, and the chance that it is missed. */
export function ChainRow({ open, chain, way, points, onMiss }: ChainRowProps): ReactNode {
  const { held, machine, state } = open;
  const { part, on } = chainTitle(machine, chain);
  const worst = worstState(stepsOf(chain), state.steps);
  const single = singleWords(points);
  const body = chain.keeps[0];
  return (
    <li className={single === undefined ? 'chain-row' : 'chain-row single'}>
      <div className="chain-part">
        <StateMark state={worst} label={worst} />
        <div>
          <strong>{body === undefined ? part : <Link href={keptAt(open.id, body)}>{part}</Link>}</strong>
          {on !== '' && <span className="soft small">on {on.charAt(0).toLowerCase()}{on.slice(1)}</span>}
          {chain.backup && <span className="soft small">second line</span>}
          {single !== undefined && <span className="small single-words">{single}</span>}
        </div>
      </div>
      <ChainLinks chain={chain} state={state} onMiss={onMiss} />
      <Guard open={open} chain={chain} />
      <Missed {...{ worst, way }} items={stepsOf(chain).map(listLengths(held))} />
    </li>
  );
}

/** A broken or open chain is missing now; what might be missed is a question for the others. */
function Missed({ worst, way, items }: { readonly worst: string; readonly way: WayOfWorking; readonly items: readonly number[] }): ReactNode {
  const range = missedRange(way, items);
  return (
    <div className="chain-chance">
      {worst === 'undone' ? <strong className="missing-now">missing now</strong> : <ChanceBar range={range} label="Chance missed" />}
      {worst !== 'undone' && <span className="small soft">{chanceWords(range)}</span>}
    </div>
  );
}

function Guard({ open, chain }: Pick<ChainRowProps, 'open' | 'chain'>): ReactNode {
  const { plan, state } = open;
  const steps = stepsOf(chain);
  const worst = worstState(steps, state.steps);
  const step = steps.find((id) => (state.steps.get(id)?.state ?? 'open') === worst) ?? steps[0]!;
  return (
    <div className="chain-guard">
      <Link href={stepAt(open.id, step)}>{plan.steps.get(step)?.title ?? step}</Link>
      <span className="soft small">{signatureWords(open, step)}{steps.length > 1 && ` · one of ${steps.length} steps`}</span>
    </div>
  );
}

export function signatureWords({ state }: ReadableMachine, step: string): string {
  const found = state.steps.get(step);
  if (found === undefined || found.state === 'open') return 'not signed';
  const by = found.by === undefined ? '' : ` ${found.by}`;
  const at = found.at === undefined ? '' : `, ${dayOf(found.at)}`;
  if (found.state === 'undone') return `signature lost;${by}${at}`;
  const look = found.secondLook;
  const seen = look === undefined ? '' : look.state === 'wanted' ? ', second look due' : look.alone ? ', seen again alone' : `, second look ${look.by}`;
  return `${found.state}${by}${at}${seen}`;
}

export function singleWords(points: readonly SinglePoint[]): string | undefined {
  if (points.length === 0) return undefined;
  return points.some(({ oneIsEnough }) => oneIsEnough) ? 'single point' : 'single point when the whole step is missed';
}
