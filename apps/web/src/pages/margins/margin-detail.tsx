import { HOLDS_FROM, remedies, remedyWords, showMargin, working, type Margin, type Margins, type Remedy } from '@rotorwright/figures';
import { placeOf } from '@rotorwright/machine';
import { useState, type ReactNode, type Ref } from 'react';
import { Link } from 'wouter';
import { Button, changeAt, keptAt, lineAt, StateWord, WorkingTree } from '../../sheet/index.ts';
import { marginWords } from './words.ts';

/** One margin: its number, what governs, what it leaves out, and its working down to the lines of the file. */
export function MarginDetail({ found, margin, machine, ref }: { readonly found: Margins; readonly margin: Margin; readonly machine: string; readonly ref?: Ref<HTMLElement> }): ReactNode {
  const tree = working(found.set, margin.name);
  const loadCase = found.cases.find(({ id }) => id === margin.loadCase);
  const isThing = found.set.machine.thingOf.has(margin.of);
  return (
    <section ref={ref} className="area margin-detail" aria-label={margin.title}>
      <div className="area-head"><h2>{margin.title}</h2>{isThing && <Link href={keptAt(machine, margin.of)}>what keeps it</Link>}</div>
      <p className="margin-verdict">
        {margin.value !== undefined && <strong className={margin.word}>{showMargin(margin.value)}</strong>}
        <StateWord state={margin.word} size={20}>{marginWords[margin.word]}</StateWord>
        <span className="small soft">{margin.value === undefined ? 'never counts as a pass' : `rounded down; holds from ${HOLDS_FROM}`}</span>
      </p>
      {margin.reason !== undefined && <p>{margin.reason}</p>}
      <dl className="margin-facts">
        {loadCase && <><dt>Governs</dt><dd>{loadCase.title}. {loadCase.about}</dd></>}
        {margin.leavesOut.length > 0 && <><dt>Left out</dt><dd>{margin.leavesOut.join(' ')}</dd></>}
        {margin.improve.length > 0 && <><dt>{margin.value === undefined ? 'Would make it known' : 'Would make it surer'}</dt><dd><Entries found={found} paths={margin.improve} machine={machine} /></dd></>}
      </dl>
      {(margin.word === 'exceeded' || margin.word === 'tight') && <WouldHold key={margin.name} found={found} margin={margin} machine={machine} />}
      {tree && tree.children.length > 0 && <WorkingTree tree={tree} machine={machine} bare levels={1} />}
    </section>
  );
}

/** As many ways are told, the smallest moves. */
const mostTold = 4;

/** What would make it hold, looked for when asked: each entry by itself, with a link that tries it. */
function WouldHold({ found, margin, machine }: { readonly found: Margins; readonly margin: Margin; readonly machine: string }): ReactNode {
  const [asked, setAsked] = useState<{ readonly of: Margins; readonly ways: readonly Remedy[] }>();
  // What was found for other conditions is not told.
  if (asked?.of !== found) return <p><Button onClick={() => setAsked({ of: found, ways: remedies(found, margin.name) })}>What would make it hold?</Button></p>;
  return (
    <section className="would-hold" aria-live="polite">
      <h3>Would hold with</h3>
      {asked.ways.length === 0 && <p>No single entry under it would, moved by half at most. See what asks so much, and ask less.</p>}
      <ul>
        {asked.ways.slice(0, mostTold).map((way) => {
          const place = placeOf(found.set.machine, way.entry);
          return (
            <li key={way.entry}>
              {place ? <Link href={lineAt(machine, place.line)}>{way.entry}</Link> : <code>{way.entry}</code>}: <strong>{remedyWords(way)}</strong>. <Link href={changeAt(machine, way.entry, way.written)}>Try it</Link>
            </li>
          );
        })}
      </ul>
      {asked.ways.length > 0 && <p className="small soft">Each alone, the rest as it is; what the maker allows goes first. What it asks of other parts, Change says.</p>}
    </section>
  );
}

/** Entries of the file, each a link to where it stands or would have to be written. */
export function Entries({ found, paths, machine }: { readonly found: Margins; readonly paths: readonly string[]; readonly machine: string }): ReactNode {
  return (
    <ul className="margin-entries">
      {paths.map((path) => {
        const place = placeOf(found.set.machine, path);
        return <li key={path}>{place ? <Link href={lineAt(machine, place.line)}>{path}</Link> : <code>{path}</code>}</li>;
      })}
    </ul>
  );
}
