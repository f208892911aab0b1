import { loadCaseTitle, showMargin, type CrossingWord, type Margin, type MarginCrossing } from '@rotorwright/figures';
import type { ReactNode } from 'react';
import { StateMark } from '../../sheet/index.ts';

const words: Readonly<Record<CrossingWord, string>> = { exceeded: 'newly exceeded', unknown: 'no longer known', freed: 'above one again' };

/** Margins that the change takes over one, with what governs before and after; each opens into its working. */
export function CrossingsList({ crossings, onOpen }: { readonly crossings: readonly MarginCrossing[]; readonly onOpen: (figure: string) => void }): ReactNode {
  if (crossings.length === 0) return <p className="soft">No margin crosses one.</p>;
  return (
    <ul className="windows">
      {crossings.map(({ title, word, before, after }) => (
        <li key={(after ?? before)!.name}>
          <StateMark state={after?.word ?? 'unknown'} label={words[word]} />
          <span><button type="button" className="link" onClick={() => onOpen((after ?? before)!.name)}>{title}</button>: <b>{show(before)} → {show(after)}</b><span className="soft"> · {words[word]}{governing(before, after)}</span></span>
        </li>
      ))}
    </ul>
  );
}

const show = (margin: Margin | undefined): string => (margin === undefined ? 'none' : margin.value === undefined ? 'not assessed' : showMargin(margin.value));

/** "; hover governs, then overspeed" */
function governing(...sides: readonly (Margin | undefined)[]): string {
  const titles = [...new Set(sides.flatMap((margin) => (margin?.value === undefined || margin.loadCase === undefined ? [] : [loadCaseTitle(margin.loadCase)])))];
  return titles.length === 0 ? '' : `; ${titles[0]} governs${titles.length > 1 ? `, then ${titles[1]}` : ''}`;
}
