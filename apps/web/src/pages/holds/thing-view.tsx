import { chainsFrom, keeps, missing, thingTitle, waysOfWorking, type Chain, type SinglePoint, type WayOfWorking } from '@rotorwright/build';
import { useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../data/index.ts';
import { Empty, keptAt, LinkButton, lineAt, machineAt, reachAt, Segmented, StateWord } from '../../sheet/index.ts';
import { ChainRow } from './chain-row.tsx';
import { ChainTable } from './chain-table.tsx';

export interface ThingViewProps {
  readonly open: ReadableMachine;
  /** Part, joint or stack, or a copy of one. */
  readonly thing: string;
  readonly onMiss: (step: string) => void;
}

/** What keeps one part, or what a joint hangs on. */
export function ThingView({ open, thing, onMiss }: ThingViewProps): ReactNode {
  const { held, machine } = open;
  const [shown, setShown] = useState<'drawing' | 'table'>('drawing');
  const [way, setWay] = useState<WayOfWorking>('ticked list');
  const id = machine.thingOf.get(thing);
  const kept = keeps(held, thing);
  const chains = kept.length > 0 ? kept.flatMap((each) => each.chains) : id === undefined ? [] : chainsFrom(held, [id]);
  if (kept.length === 0 && chains.length === 0) {
    return <Empty title="The file has no such part or joint" next={<LinkButton to={machineAt(open.id, 'holds')}>All hazards</LinkButton>}><p><code>{thing}</code> is not in the machine file. It may have been renamed.</p></Empty>;
  }
  const restsOn = [...new Set(kept.flatMap((each) => each.restsOn))];
  const line = id === undefined ? undefined : machine.places.get((machine.parts.get(id) ?? machine.joints.get(id) ?? machine.stacks.get(id))?.path ?? '')?.line;
  const pointsOf = (chain: Chain): readonly SinglePoint[] => (missing(held, [chain.joint]).hazards.length > 0 ? [{ step: chain.joint, events: [], oneIsEnough: chain.least === 1 }] : []);
  return (
    <section className="area holds-chains" aria-label={thingTitle(machine, thing)}>
      <div className="area-head">
        <h2>{thingTitle(machine, thing)}</h2>
        <span className="small soft"><code>{thing}</code>{line !== undefined && <> · <Link href={lineAt(open.id, line)}>line {line}</Link></>} · <Link href={reachAt(open.id, id ?? thing)}>the way in</Link></span>
      </div>
      {kept.some(({ state }) => state === 'ground') && <p>Everything else is mounted on it.</p>}
      {kept.some(({ state }) => state === 'unknown') && <p><StateWord state="unknown">unknown</StateWord> The file does not say what keeps it. Add a joint that holds it.</p>}
      {chains.length > 0 && (
        <>
          <div className="holds-controls">
            <Segmented label="Show the chains as" options={[{ value: 'drawing', title: 'As a drawing' }, { value: 'table', title: 'As a table' }]} value={shown} onChange={setShown} />
            <span className="small soft" aria-hidden="true">chance missed with</span>
            <Segmented label="Way of working" options={waysOfWorking.map((value) => ({ value, title: value }))} value={way} onChange={setWay} />
          </div>
          {shown === 'table'
            ? <ChainTable open={open} chains={chains} pointsOf={pointsOf} way={way} label={`What keeps ${thingTitle(machine, thing)}`} />
            : <div className="holds-rows plain"><ol>{chains.map((chain, i) => <ChainRow key={`${chain.joint} ${i}`} {...{ open, chain, way, onMiss }} points={pointsOf(chain)} />)}</ol></div>}
        </>
      )}
      {restsOn.length > 0 && <p className="rests-on">It rests on {restsOn.map((body, i) => <span key={body}>{i > 0 && ', '}<Link href={keptAt(open.id, body)}>{thingTitle(machine, body)}</Link></span>)}: when one of them goes, it goes.</p>}
    </section>
  );
}
