import type { Chain, Link } from '@rotorwright/build';
import type { BuildState } from '@rotorwright/logbook';
import type { ReactNode } from 'react';
import { StateMark, type MarkState } from '../../sheet/index.ts';
import { linkHeight, linkPaths, linkWidth } from './link-shape.ts';

export interface ChainLinksProps {
  readonly chain: Chain;
  readonly state: BuildState;
  /** Asks what happens when a link is missed. */
  readonly onMiss: (step: string) => void;
}

/** A chain of retention, from the part to the lock: each link is whole, dashed where it is not signed, cracked where it is undone. */
export function ChainLinks({ chain, state, onMiss }: ChainLinksProps): ReactNode {
  return (
    <ol className="chain">
      {chain.links.map((link, i) => {
        const mark = markOf(link, state);
        const cracked = mark === 'undone' || mark === 'exceeded';
        const width = linkWidth(link.words, cracked);
        return (
          // Two links of one joint may carry the same words; their place tells them apart.
          <li key={`${i} ${link.step} ${link.kind}`} className={`chain-link ${mark}`}>
            {i > 0 && <span className="joiner" aria-hidden="true" />}
            <button type="button" style={{ width, height: linkHeight }} onClick={() => onMiss(link.step)} aria-label={`${link.words}, ${wordOf(mark)}. What if it is missed?`}>
              <svg width={width} height={linkHeight} viewBox={`0 0 ${width} ${linkHeight}`} aria-hidden="true">{linkPaths(width, cracked).map((d) => <path key={d} d={d} />)}</svg>
              <span className="link-words"><StateMark state={mark} size={13} />{link.words}</span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

/** While the compound cures, the joint itself is done. */
function markOf({ kind, step }: Link, { steps }: BuildState): MarkState {
  if (kind === 'nothing') return 'exceeded';
  const state = steps.get(step)?.state ?? 'open';
  return state === 'curing' && kind !== 'lock' ? 'signed' : state;
}

function wordOf(mark: MarkState): string {
  return mark === 'exceeded' ? 'nothing locks it' : mark;
}
