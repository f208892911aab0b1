import { useMemo, useRef, useState, type ReactNode } from 'react';
import { bagsFromList, bagsOf, needs } from '@rotorwright/build';
import { countBags, wantedOf, type BagCount, type Wanted } from '@rotorwright/logbook';
import { wordsOf, type ReadableMachine } from '../../../data/index.ts';
import { Button, StateMark, type MarkState } from '../../../sheet/index.ts';
import { FastenerTable, NeedTable } from '../need-tables.tsx';
import { BagView } from './bag-view.tsx';
import './counting.css';

const marks = { uncounted: 'open', short: 'exceeded', complete: 'signed' } as const satisfies Readonly<Record<BagCount['state'], MarkState>>;
const words = { uncounted: 'not counted', short: 'short', complete: 'complete' } as const;

export interface CountingProps {
  readonly open: ReadableMachine;
  /** Bag that is open; undefined shows the summary alone, 'all' the list of bags. */
  readonly bag: string | undefined;
  readonly onOpen: (bag: string | undefined) => void;
}

/** A kit arrives in bags: what is there, what is short, what this build will need. */
export function Counting({ open, bag: asked, onOpen }: CountingProps): ReactNode {
  const bags = useMemo(() => countBags(bagsOf(open.machine), open.entries), [open.machine, open.entries]);
  const wanted = wantedOf(bags);
  const counted = bags.filter(({ state }) => state !== 'uncounted').length;
  const bag = bags.find(({ id }) => id === asked);
  if (bags.length === 0) return undefined;
  return (
    <>
      <section className="area count-summary" id="counting" tabIndex={-1} aria-label="Counting in">
        <h2>Counting in</h2>
        <p>{counted} of {bags.length} {open.machine.bags.size === 0 ? 'modules' : 'bags'} counted{wanted.length > 0 && <>, <strong>{wanted.length} {wanted.length === 1 ? 'kind' : 'kinds'} short</strong></>}</p>
        <Button aria-expanded={asked !== undefined} onClick={() => onOpen(asked === undefined ? 'all' : undefined)}>{asked === undefined ? 'Count the bags' : 'Close the bags'}</Button>
      </section>
      {asked !== undefined && (
        <div className={bag ? 'counting one' : 'counting'}>
          <section className="area" aria-label="Bags">
            <ul className="count-bags">
              {bags.map((one) => (
                <li key={one.id}><button type="button" aria-pressed={one.id === bag?.id} onClick={() => onOpen(one.id)}><StateMark state={marks[one.state]} size={22} /><span>{one.title}<small>{one.lines.length} kinds, {words[one.state]}</small></span></button></li>
              ))}
            </ul>
            {open.machine.bags.size === 0 && <FromList open={open} />}
          </section>
          {bag ? <BagView key={bag.id} open={open} bag={bag} onAll={() => onOpen('all')} onDone={() => onOpen(bags[bags.indexOf(bag) + 1]?.id ?? 'all')} /> : <Shopping open={open} wanted={wanted} />}
        </div>
      )}
    </>
  );
}

function Shopping({ open, wanted }: { readonly open: ReadableMachine; readonly wanted: readonly Wanted[] }): ReactNode {
  const needed = useMemo(() => needs(open.plan.steps.values()), [open.plan]);
  return (
    <section className="area count-shopping" aria-label="Shopping list">
      <h2>Shopping list</h2>
      {wanted.length === 0 ? <p className="soft">Nothing that was counted is short. Press a bag to count it.</p> : (
        <table>
          <thead><tr><th scope="col" className="number">Buy</th><th scope="col">What</th><th scope="col">Code</th><th scope="col">Price</th><th scope="col">Bag</th></tr></thead>
          <tbody>{wanted.map((line) => <tr key={`${line.bag} ${line.item}`}><td className="number">{line.buy}</td><th scope="row">{line.title} {line.size}{line.fromDrawer > 0 && <small> and {line.fromDrawer} from the drawer</small>}</th><td>{line.code}</td><td>{line.price}</td><td>{line.bag}</td></tr>)}</tbody>
        </table>
      )}
      <h2>What this build will need</h2>
      <FastenerTable wanted={needed.fasteners} />
      <NeedTable title="Compounds, greases, cleaners" wanted={needed.consumables} />
      <NeedTable title="Tools" wanted={needed.tools} />
    </section>
  );
}

/** A maker's parts list becomes the bags of the file. */
function FromList({ open }: { readonly open: ReadableMachine }): ReactNode {
  const input = useRef<HTMLInputElement>(null);
  const [told, setTold] = useState<readonly string[]>([]);
  const take = async (file: File): Promise<void> => {
    try {
      const read = bagsFromList(open.text, await file.text());
      if (read.ok) await open.save(read.text, `bags from ${file.name}`);
      else setTold(read.problems.slice(0, 8));
    } catch (error) {
      setTold([wordsOf(error)]);
    }
  };
  return (
    <div className="count-list">
      <p className="soft">The file names no bags, so its modules are counted. A list with the columns part, count, bag makes bags of it.</p>
      <input ref={input} type="file" accept=".csv,text/csv,text/plain" className="unseen" tabIndex={-1} aria-label="List of parts" onChange={(event) => {
        const [file] = event.target.files ?? [];
        if (file) void take(file);
      }} />
      <Button onClick={() => input.current?.click()}>Take a list of parts …</Button>
      {told.length > 0 && <div role="alert" className="field-problem"><ul>{told.map((line) => <li key={line}>{line}</li>)}</ul></div>}
    </div>
  );
}
