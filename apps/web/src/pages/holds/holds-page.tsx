import { countPoints, moduleTitle, thingTitle } from '@rotorwright/build';
import { useState, type ReactNode } from 'react';
import { useLocation, useSearch } from 'wouter';
import { useMachine, type ReadableMachine } from '../../data/index.ts';
import { Empty, LinkButton, machineAt, Note, Sheet, StateWord, type MarkState } from '../../sheet/index.ts';
import { HazardView } from './hazard-view.tsx';
import { MissedDrawer } from './missed-drawer.tsx';
import { ThingView } from './thing-view.tsx';
import './holds.css';

/** What keeps what in place, hazard by hazard or part by part; what if a link is missed. */
export function HoldsPage(): ReactNode {
  const open = useMachine();
  const { held, state } = open;
  const [, go] = useLocation();
  const query = new URLSearchParams(useSearch());
  const [missed, setMissed] = useState<string>();
  const thing = query.get('of') ?? undefined;
  const hazards = [...held.hazards.values()];
  const hazard = thing === undefined ? (held.hazards.get(query.get('hazard') ?? '') ?? worstOf(open)) : undefined;
  const counts = countPoints(hazards, state.steps);
  const choose = (chosen: Record<string, string>): void => go(`${machineAt(open.id, 'holds')}?${new URLSearchParams(chosen).toString()}`);
  if (hazards.length === 0 && thing === undefined) return <NoHazards open={open} />;
  const mark = ([['undone', counts.undone], ['open', counts.open], ['curing', counts.curing]] as const).find(([, count]) => count > 0);
  return (
    <Sheet
      title="Holds"
      answer={(
        <>
          {counts.undone > 0 && <StateWord state="undone">{counts.undone === 1 ? '1 chain broken' : `${counts.undone} chains broken`}</StateWord>}
          {counts.open > 0 && <StateWord state="open">{counts.open} open</StateWord>}
          {counts.curing > 0 && <StateWord state="curing">{counts.curing} curing</StateWord>}
          {mark === undefined && <StateWord state="signed">all {counts.total} signed</StateWord>}
        </>
      )}
      actions={(
        <>
          {hazards.length > 0 && (
            <label className="holds-choice"><span>Hazard</span>
              <select value={hazard?.hazard.id ?? ''} onChange={(event) => choose({ hazard: event.target.value })}>
                {hazard === undefined && <option value="">choose</option>}
                {hazards.map(({ hazard: { id, title } }) => <option key={id} value={id}>{title}</option>)}
              </select>
            </label>
          )}
          <label className="holds-choice"><span>What keeps</span><ThingChoice open={open} thing={thing} onChoose={(of) => choose({ of })} /></label>
        </>
      )}
      notes={<HoldsNotes points={counts.total} unknown={held.findings.filter(({ code }) => code === 'place/unknown').length} to={machineAt(open.id, 'file')} />}
      block={{ units: 'chance', state: mark === undefined ? { mark: 'signed', words: 'every single point signed' } : { mark: mark[0] satisfies MarkState, words: `${mark[1]} ${mark[0]}` }, caution: 'Do not fly with a broken or open chain. Nothing here sees a worn thread.' }}
    >
      {hazard && <HazardView key={hazard.hazard.id} open={open} hazard={hazard} onMiss={setMissed} />}
      {thing !== undefined && <ThingView key={thing} open={open} thing={thing} onMiss={setMissed} />}
      {missed !== undefined && <MissedDrawer open={open} step={missed} onClose={() => setMissed(undefined)} />}
    </Sheet>
  );
}

/** The hazard to look at first: one with a broken chain, else the first of the file. */
function worstOf({ held, state }: ReadableMachine) {
  const hazards = [...held.hazards.values()];
  return hazards.find((hazard) => countPoints([hazard], state.steps).undone > 0) ?? hazards[0];
}

function ThingChoice({ open: { machine }, thing, onChoose }: { readonly open: ReadableMachine; readonly thing: string | undefined; readonly onChoose: (thing: string) => void }): ReactNode {
  const id = thing === undefined ? undefined : (machine.thingOf.get(thing) ?? thing);
  return (
    <select value={id ?? ''} onChange={(event) => onChoose(event.target.value)}>
      <option value="" disabled>a part or joint</option>
      {[...machine.modules.values()].map((module) => (
        <optgroup key={module.id} label={moduleTitle(module)}>
          {[...module.parts, ...module.joints, ...module.stacks].map((each) => <option key={each} value={each}>{thingTitle(machine, each, module.id)}</option>)}
        </optgroup>
      ))}
    </select>
  );
}

function HoldsNotes({ points, unknown, to }: { readonly points: number; readonly unknown: number; readonly to: string }): ReactNode {
  return (
    <>
      <Note title={`Single points, ${points}`}>Steps of which one slip brings a hazard about. Those that end in a crash or an injury ask for a second look.</Note>
      <Note title="Ranges">A ticked list misses one item in 330 to 1,000, about; a second look finds nine of ten. NUREG/CR-1278, recalled from memory: an ordering of habits, no forecast. Steps and copies count as independent; locks and parts are taken to hold.</Note>
      {unknown > 0 && <Note title="In the file">{unknown === 1 ? 'One part stands in no chain' : `${unknown} parts stand in no chain`}: the file does not say what keeps {unknown === 1 ? 'it' : 'them'}. <LinkButton to={to}>See the file</LinkButton></Note>}
    </>
  );
}

function NoHazards({ open }: { readonly open: ReadableMachine }): ReactNode {
  return (
    <Sheet title="Holds" answer={<StateWord state="unknown">no hazards described</StateWord>}>
      <Empty title="The file names no hazards yet" next={<LinkButton to={machineAt(open.id, 'file')} kind="ink">Open the file</LinkButton>}>
        <p>Say what must never happen, and everything that it hangs on follows from your joints and stacks:</p>
        <pre className="example">{`hazards:
  tail-drive-lost: {title: Tail drive lost, ends-in: crash, when: {no-torque: [mast, tail-rotor]}}
  tail-blade-lost: {title: Tail blade lost, ends-in: injury, when: {comes-off: tail-grip/blade}}`}</pre>
      </Empty>
    </Sheet>
  );
}
