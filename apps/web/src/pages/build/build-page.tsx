import { useMemo, useState, type ReactNode } from 'react';
import { nextSteps, type PlannedModule } from '@rotorwright/build';
import { useLocation, useSearch } from 'wouter';
import { useMachine, type ReadableMachine } from '../../data/index.ts';
import { Button, Empty, LinkButton, machineAt, Note, Sheet, StateWord } from '../../sheet/index.ts';
import { Counting } from './counting/index.ts';
import { EveningTimeline } from './evening-timeline.tsx';
import { ModuleMap } from './module-map.tsx';
import { NeedsDrawer } from './needs-drawer.tsx';
import { BeforeItFlies } from './before-it-flies.tsx';
import { NextPanel } from './next-panel.tsx';
import { momentOf, PastPicker } from './past-picker.tsx';
import { StepList } from './step-list.tsx';
import { TonightPanel } from './tonight-panel.tsx';
import { WayInDrawer } from './way-in/index.ts';
import './build.css';

/** The build plan: modules in order, the steps of one of them, what is next and what it waits for. */
export function BuildPage(): ReactNode {
  const query = new URLSearchParams(useSearch());
  const at = momentOf(query.get('at'));
  const reached = query.get('reach');
  const open = useMachine(at);
  const { plan, state } = open;
  const [, go] = useLocation();
  const [needs, setNeeds] = useState(false);
  const next = useMemo(() => nextSteps(plan, state.steps), [plan, state]);
  if (plan.modules.length === 0) return <NoModules open={open} />;
  const step = query.get('step') ?? undefined;
  const module = plan.modules.find((one) => one.id === (step === undefined ? query.get('module') : plan.steps.get(step)?.module))
    ?? plan.modules.find((one) => one.id === next.ready[0]?.module) ?? (plan.modules[0] as PlannedModule);
  const choose = (chosen: { readonly module?: string; readonly step?: string; readonly bag?: string }): void => go(`${machineAt(open.id, 'build')}?${new URLSearchParams({ ...chosen, ...(at === undefined ? {} : { at: at.toISOString() }) }).toString()}`, { replace: true });
  const { total, signed, undone, curing } = state.total;
  return (
    <Sheet
      title="Build"
      answer={<><strong>{signed + curing} of {total} signed</strong>{undone > 0 && <StateWord state="undone">{undone} undone</StateWord>}{curing > 0 && <StateWord state="curing">{curing} curing</StateWord>}{signed === total && <StateWord state="signed">all signed</StateWord>}</>}
      actions={<><PastPicker at={at} onChoose={(moment) => go(`${machineAt(open.id, 'build')}${moment === undefined ? '' : `?at=${moment.toISOString()}`}`, { replace: true })} /><Button onClick={() => setNeeds(true)}>Tools and parts</Button>{signed + curing < total && <LinkButton to={machineAt(open.id, 'bench')} kind="ink">Go on at the bench</LinkButton>}</>}
      notes={<BuildNotes open={open} />}
      block={{ units: 'steps', caution: 'Cure times are the maker’s at room temperature. A cold bench takes longer.' }}
    >
      {at !== undefined && <p className="build-past" role="status">As it stood on {at.toLocaleString('en-GB', { dateStyle: 'long', timeStyle: 'short' })}. What was entered later is left out.</p>}
      <Counting open={open} bag={query.get('bag') ?? undefined} onOpen={(bag) => choose(bag === undefined ? { module: module.id } : { bag })} />
      <section className="area" aria-label="Modules">
        <div className="area-head"><h2>Modules</h2><span className="soft small">an arrow means: first · bar: signed steps</span></div>
        <ModuleMap modules={plan.modules} states={state.modules} chosen={module.id} onChoose={(id) => choose({ module: id })} />
      </section>
      <EveningTimeline open={open} next={next} />
      <TonightPanel open={open} onChoose={(id) => choose({ step: id })} />
      <div className="build-columns">
        <StepList open={open} module={module} step={step} onChoose={(id) => choose(id === undefined ? { module: module.id } : { step: id })} />
        <NextPanel open={open} next={next} onChoose={(id) => choose({ step: id })} />
      </div>
      {reached !== null && <WayInDrawer key={reached} open={open} thing={reached} onClose={() => choose({ module: module.id })} onOpened={(way) => choose({ step: way.undo.at(-1)?.id ?? module.id })} />}
      {needs && <NeedsDrawer open={open} module={module} onClose={() => setNeeds(false)} />}
    </Sheet>
  );
}

function BuildNotes({ open }: { readonly open: ReadableMachine }): ReactNode {
  const { elsewhere } = open.state;
  const findings = open.plan.findings;
  return (
    <>
      <Note title="Reading it">A ring is a signature: filled is signed, broken is undone, a wedge cures. Order follows from the file: what holds what, and what must be off to reach it.</Note>
      <BeforeItFlies open={open} />
      {findings.length > 0 && <Note title="In the file">{findings.length === 1 ? 'One finding concerns' : `${findings.length} findings concern`} order and locks. <LinkButton to={machineAt(open.id, 'file')}>See them</LinkButton></Note>}
      {elsewhere.length > 0 && <Note title="In the book">{elsewhere.length === 1 ? 'One entry names a step' : `${elsewhere.length} entries name steps`} that the file no longer has: number {elsewhere.slice(0, 8).join(', ')}{elsewhere.length > 8 && ' …'}.</Note>}
    </>
  );
}

function NoModules({ open }: { readonly open: ReadableMachine }): ReactNode {
  return (
    <Sheet title="Build" answer={<StateWord state="unknown">build not described</StateWord>}>
      <Empty title="No modules in the file yet" next={<LinkButton to={machineAt(open.id, 'file')} kind="ink">Open the file</LinkButton>}>
        <p>Steps are made from what the file says of modules: their parts, joints, stacks and measurements. Begin with one that you are about to open:</p>
        <pre className="example">{`modules:
  tail-case:
    title: Tail case
    comes: assembled
    parts:
      side: {material: aluminium 7075}
    joints:
      side-screw: {kind: screw, thread: M3, copies: 4, in: side, lock: medium}`}</pre>
      </Empty>
    </Sheet>
  );
}
