import { useState, type ReactNode } from 'react';
import type { BagCount, LineCount } from '@rotorwright/logbook';
import { newEntryId, wordsOf, type ReadableMachine } from '../../../data/index.ts';
import { dayOf } from '../../../sheet/index.ts';
import { SignerPanel } from '../../bench/signer-panel.tsx';
import { keepSigners, readSigners, withSigner } from '../../../data/signers.ts';
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
  const [signers, setSigners] = useState(() => readSigners(localStorage));
  const [asking, setAsking] = useState(false);
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const left = bag.lines.filter(({ item }) => tallies[item] === undefined).length;

  const tally = (item: string, after: Tally): void => {
    const next = { ...tallies, [item]: after };
    setTallies(next);
    keepTallies(localStorage, open.id, bag.id, next);
  };
  const record = async (): Promise<void> => {
    if (signers.now === undefined) {
      setAsking(true);
      return;
    }
    setBusy(true);
    setTrouble(undefined);
    try {
      await open.sign([{ id: newEntryId(), machine: open.id, at: new Date().toISOString(), by: signers.now, body: { kind: 'counted', bag: bag.id, lines: bag.lines.map((line) => lineOf(line, tallies[line.item] ?? allThere)) } }], `count of ${bag.title}`);
      keepTallies(localStorage, open.id, bag.id, undefined);
      onDone();
    } catch (error) {
      setTrouble(`Not recorded yet: ${wordsOf(error)} Try again.`);
      setBusy(false);
    }
  };
  return (
    <section className="area count-bag" aria-label={bag.title}>
      <div className="area-head"><h2>{bag.title}</h2><span className="soft small">{bag.by === undefined ? 'not on record yet' : `last counted by ${bag.by}, ${dayOf(bag.at ?? '')}`}</span></div>
      <button type="button" className="count-all" onClick={onAll}>All bags, shopping list</button>
      <ol>{bag.lines.map((line) => <Line key={line.item} line={line} tally={tallies[line.item]} onTally={(after) => tally(line.item, after)} />)}</ol>
      {asking && <SignerPanel signers={signers} onChoose={(name) => {
        const chosen = withSigner(signers, name);
        setSigners(chosen);
        keepSigners(localStorage, chosen);
        setAsking(false);
      }} />}
      {trouble && <p role="alert" className="field-problem">{trouble}</p>}
      <div className="count-foot">
        <button type="button" onClick={() => setAsking(!asking)} aria-expanded={asking}>{signers.now === undefined ? 'Who counts?' : <>as <b>{signers.now}</b></>}</button>
        <button type="button" className="ink" disabled={busy || left > 0} onClick={() => void record()}>{busy ? 'Recording …' : 'Put this bag on record'}{left > 0 && <small>{left === 1 ? '1 kind' : `${left} kinds`} still to count</small>}</button>
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
