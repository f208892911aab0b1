import { useState, type ReactNode } from 'react';
import type { BagCount, LineCount } from '@rotorwright/logbook';
import type { ReadableMachine } from '../../../data/index.ts';
import { dayOf, useRecord } from '../../../sheet/index.ts';
import { allThere, keepTallies, lineOf, pressed, readTallies, talliesOf, type Tallies, type Tally } from './tally.ts';

export interface BagViewProps {
  readonly open: ReadableMachine;
  readonly bag: BagCount;
  /** Back to the list of bags. */
  readonly onAll: () => void;
  readonly onDone: () => void;
}

/** One bag: each kind of part is there, or missing, damaged, replaced; then the whole bag is put on record. */
export function BagView({ open, bag, onAll, onDone }: BagViewProps): ReactNode {
  const [tallies, setTallies] = useState<Tallies>(() => readTallies(localStorage, open.id, bag.id) ?? talliesOf(bag.lines));
  const book = useRecord(open);
  const left = bag.lines.filter(({ item }) => tallies[item] === undefined).length;

  const tally = (item: string, after: Tally): void => {
    const next = { ...tallies, [item]: after };
    setTallies(next);
    keepTallies(localStorage, open.id, bag.id, next);
  };
  const record = async (): Promise<void> => {
    if (!(await book.enter({ kind: 'counted', bag: bag.id, lines: bag.lines.map((line) => lineOf(line, tallies[line.item] ?? allThere)) }, `count of ${bag.title}`))) return;
    keepTallies(localStorage, open.id, bag.id, undefined);
    onDone();
  };
  return (
    <section className="area count-bag" aria-label={bag.title}>
      <div className="area-head"><h2>{bag.title}</h2><span className="soft small">{bag.by === undefined ? 'not on record yet' : `last counted by ${bag.by}, ${dayOf(bag.at ?? '')}`}</span></div>
      <button type="button" className="count-all" onClick={onAll}>All bags, shopping list</button>
      <ol>{bag.lines.map((line) => <Line key={line.item} line={line} tally={tallies[line.item]} onTally={(after) => tally(line.item, after)} />)}</ol>
      {book.panel}
      {book.trouble && <p role="alert" className="field-problem">{book.trouble}</p>}
      <div className="count-foot">
        <button type="button" onClick={book.ask} aria-expanded={book.asking}>{book.by === undefined ? 'Who counts?' : <>as <b>{book.by}</b></>}</button>
        <button type="button" className="ink" disabled={book.busy || left > 0} onClick={() => void record()}>{book.busy ? 'Recording …' : 'Put this bag on record'}{left > 0 && <small>{left === 1 ? '1 kind' : `${left} kinds`} still to count</small>}</button>
      </div>
    </section>
  );
}

function Line({ line, tally, onTally }: { readonly line: LineCount; readonly tally: Tally | undefined; readonly onTally: (after: Tally) => void }): ReactNode {
  const name = [line.title, line.size].filter((word) => word !== undefined).join(' ');
  const short = tally === undefined ? 0 : tally.missing + tally.damaged - tally.replaced;
  const there = tally !== undefined && tally.missing + tally.damaged === 0;
  return (
    <li>
      <p className="count-name"><b>{line.count} ×</b> {name}<small className="soft"> {line.item}{line.code === undefined ? '' : `, ${line.code}`}</small>{short > 0 && <strong className="state-word exceeded">short of {short}</strong>}</p>
      <div className="count-buttons" role="group" aria-label={name}>
        <button type="button" aria-pressed={there} onClick={() => onTally(allThere)}>All there</button>
        {(['missing', 'damaged', 'replaced'] as const).map((what) => (
          <button key={what} type="button" aria-pressed={(tally?.[what] ?? 0) > 0} disabled={what === 'replaced' && (tally === undefined || tally.missing + tally.damaged === 0)} onClick={() => onTally(pressed(tally, what, line.count))}>
            {words[what]}{(tally?.[what] ?? 0) > 0 && ` ${tally?.[what]}`}
          </button>
        ))}
      </div>
    </li>
  );
}

const words = { missing: 'Missing', damaged: 'Damaged', replaced: 'Replaced' } as const satisfies Readonly<Record<keyof Tally, string>>;
