import { chainsOf, chanceWords, hazardChance, stepsOf, waysOfWorking, worstState, type Chain, type HazardHolds, type WayOfWorking } from '@rotorwright/build';
import { useMemo, useState, type ReactNode } from 'react';
import type { ReadableMachine } from '../../data/index.ts';
import { LinkButton, machineAt, Segmented, StateWord } from '../../sheet/index.ts';
import { ChainRow } from './chain-row.tsx';
import { ChainTable } from './chain-table.tsx';
import { ChanceAxis, ChanceBar } from './chance-bar.tsx';
import { HazardGate } from './hazard-gate.tsx';
import { Weights } from './weights.tsx';

export interface HazardViewProps {
  readonly open: ReadableMachine;
  readonly hazard: HazardHolds;
  readonly onMiss: (step: string) => void;
}

/** One hazard: its chains under the gate, or as a table; and the chance that omissions alone bring it about. */
export function HazardView({ open, hazard, onMiss }: HazardViewProps): ReactNode {
  const { held } = open;
  const [shown, setShown] = useState<'drawing' | 'table'>('drawing');
  const [which, setWhich] = useState<'single' | 'all'>('single');
  const [way, setWay] = useState<WayOfWorking>('ticked list');
  const chains = useMemo(() => chainsOf(held, hazard), [held, hazard]);
  const chance = useMemo(() => hazardChance(held, hazard), [held, hazard]);
  const points = new Map(hazard.singlePoints.map((point) => [point.step, point]));
  const pointsOf = (chain: Chain) => stepsOf(chain).flatMap((step) => points.get(step) ?? []);
  const isBroken = (chain: Chain) => worstState(stepsOf(chain), open.state.steps) === 'undone';
  const wanted = which === 'all' ? chains : chains.filter((chain) => pointsOf(chain).length > 0);
  // What is broken is to be seen first; the rest stays in the order of the file.
  const listed = [...wanted.filter(isBroken), ...wanted.filter((chain) => !isBroken(chain))];
  return (
    <>
      <section className="area holds-chains" aria-label={hazard.hazard.title}>
        <div className="area-head">
          <h2>{hazard.hazard.title}</h2>
          <span className="small soft">{hazard.singlePoints.length === 1 ? 'one step' : `${hazard.singlePoints.length} steps`} of which one slip is enough · choose a link to see what happens when it is missed</span>
        </div>
        {hazard.gaps.map((gap) => <p key={gap}><StateWord state="unknown">not followed to its causes</StateWord> {gap}. <LinkButton to={machineAt(open.id, 'file')}>Open the file</LinkButton></p>)}
        <div className="holds-controls">
          <Segmented label="Show the chains as" options={[{ value: 'drawing', title: 'As a drawing' }, { value: 'table', title: 'As a table' }]} value={shown} onChange={setShown} />
          <Segmented label="Which chains" options={[{ value: 'single', title: 'Single points' }, { value: 'all', title: `All ${chains.length} chains` }]} value={which} onChange={setWhich} />
          <span className="small soft" aria-hidden="true">chance missed with</span>
          <Segmented label="Way of working" options={waysOfWorking.map((value) => ({ value, title: value }))} value={way} onChange={setWay} />
        </div>
        {shown === 'table'
          ? <ChainTable open={open} chains={listed} pointsOf={pointsOf} way={way} label={`Chains of ${hazard.hazard.title}`} />
          : (
            <div className="holds-tree">
              <HazardGate hazard={hazard} />
              <div className="holds-rows">
                <div className="chain-head small soft" aria-hidden="true"><span>what is kept</span><span>by what, link by link</span><span>signature that guards</span><span>chance missed <ChanceAxis /></span></div>
                <ol>{listed.map((chain, i) => <ChainRow key={`${chain.joint} ${i}`} {...{ open, chain, way, onMiss }} points={pointsOf(chain)} />)}</ol>
              </div>
            </div>
          )}
      </section>
      <section className="area" aria-label="Chance of omission">
        <div className="area-head"><h2>If something is left out</h2><span className="small soft">chance that omissions alone bring it about</span></div>
        {chance === undefined ? <p className="soft">Omissions alone cannot bring it about, or the tree is too large to be solved exactly.</p> : (
          <table className="habits">
            <thead><tr><th scope="col">way of working</th><th scope="col">range <ChanceAxis /></th><th scope="col">in words</th></tr></thead>
            <tbody>{waysOfWorking.map((each) => <tr key={each}><th scope="row">{each}</th><td><ChanceBar range={chance[each]} label={each} /></td><td>{chanceWords(chance[each])}</td></tr>)}</tbody>
          </table>
        )}
      </section>
      <Weights open={open} hazard={hazard} way={way} />
    </>
  );
}
