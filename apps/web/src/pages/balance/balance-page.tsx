import { balanceOf, figures, type FigureSet } from '@rotorwright/figures';
import { useCallback, useMemo, useState, type ReactNode } from 'react';
import { useSearchParams } from 'wouter';
import { useMachine } from '../../data/index.ts';
import { Empty, LinkButton, machineAt, Note, Segmented, Sheet, StateWord, WorkingDrawer } from '../../sheet/index.ts';
import { aheadWords, CentreView, markOf } from './centre-view.tsx';
import { works, WorkView } from './work-view.tsx';
import './balance.css';

/** Where the centre of mass is and what moves it; blades, fans and heads balanced; tips brought into one path. */
export function BalancePage(): ReactNode {
  const { id, machine, state } = useMachine();
  const [searched, setSearched] = useSearchParams();
  const view = searched.get('view') ?? 'centre';
  const work = Object.hasOwn(works, view) ? works[view] : undefined;
  const wantedText = searched.get('wanted');
  const asked = wantedText !== null && Number.isFinite(Number(wantedText)) && wantedText.trim() !== '' ? Number(wantedText) / 1000 : undefined;
  const set = useMemo(() => figures(machine, asked === undefined ? {} : { wantedCentre: asked }), [machine, asked]);
  const summary = useMemo(() => balanceOf(set), [set]);
  const figure = searched.get('figure') ?? undefined;
  const put = useCallback((changes: Readonly<Record<string, string | undefined>>) => setSearched((before) => {
    const next = new URLSearchParams(before);
    for (const [name, value] of Object.entries(changes)) {
      if (value === undefined) next.delete(name);
      else next.set(name, value);
    }
    return next;
  }, { replace: true }), [setSearched]);
  const [scale, setScale] = useState('–');
  const worst = summary.fillings.find(({ word }) => word === 'exceeded') ?? summary.fillings.find(({ word }) => word === 'unknown') ?? summary.fillings[0];
  const ahead = set.get('centre-ahead')!.value;
  const answer = worst === undefined || ahead === undefined ? 'centre not known' : `centre ${aheadWords(worst.figure.value ?? ahead)}${worst === summary.fillings[0] ? '' : `, ${worst.title.toLowerCase()}`}`;
  const views = [{ value: 'centre', title: 'Centre' }, ...Object.entries(works).map(([value, { title }]) => ({ value, title }))];
  return (
    <Sheet
      title="Balance"
      className="balance"
      answer={<StateWord state={worst && ahead !== undefined ? markOf[worst.word] : 'unknown'}>{answer}</StateWord>}
      notes={(
        <>
          <Note title="How it is reckoned">A part lies at its place: as rod, tube or box where the file says how its length lies, else as a point. What a weighed module has besides its parts lies at their centre. Rotors count with their blades at the hub.</Note>
          <Note title="Order of work">Centre of mass first, then the blades as a pair, then track, then trial masses. Common practice, no source.</Note>
        </>
      )}
      block={{ scale: work ? '–' : scale, units: 'mm, g', state: worst && ahead !== undefined ? { mark: markOf[worst.word], words: answer } : { mark: 'unknown', words: answer }, caution: 'Blades off for everything that can be done without them. Turn nothing up with a hand, a head or a tool in the plane of a rotor.' }}
    >
      {/* A view starts with an address of its own: what stands in the fields of another has no meaning here. */}
      <div className="area balance-views"><Segmented label="What to balance" options={views} value={work ? view : 'centre'} onChange={(chosen) => setSearched(chosen === 'centre' ? {} : { view: chosen })} /></div>
      {work
        ? <WorkView key={view} {...{ id, view, work, set, summary, state }} />
        : summary.whole.length === 0 ? <NoMasses id={id} /> : (
          <CentreView key={id} {...{ id, machine, set, summary }} wanted={wantedOf(set)} asked={asked !== undefined} onWanted={(wanted) => put({ wanted: wanted === undefined ? undefined : String(Number((wanted * 1000).toPrecision(9))) })} onOpen={(name) => put({ figure: name })} onScale={setScale} />
        )}
      {figure !== undefined && <WorkingDrawer set={set} name={figure} machine={id} onClose={() => put({ figure: undefined })} />}
    </Sheet>
  );
}

/** Where the centre is wanted: what the moves were reckoned for. */
function wantedOf({ all }: FigureSet): number {
  const wanted = all.find(({ calculation }) => calculation === 'centre-shift')?.inputs['wanted'];
  return wanted && 'value' in wanted && typeof wanted.value === 'number' ? wanted.value : wanted && 'constant' in wanted ? wanted.constant : 0;
}

function NoMasses({ id }: { readonly id: string }): ReactNode {
  return (
    <Empty title="The file weighs nothing yet" next={<LinkButton to={machineAt(id, 'file')} kind="ink">Open the file</LinkButton>}>
      <p>Weigh whole modules, and say where each has its centre, or give mass and place of the parts. The place of the main rotor says where the mast is:</p>
      <pre className="example">{`rotors:
  main: {on: mast, at: [0 mm, 0 mm, 200 mm]}
modules:
  head: {mass: 242 g, at: [0 mm, 0 mm, 191 mm]}
  nose: {mass: 415 g, at: [210 mm, 0 mm, -10 mm]}`}</pre>
    </Empty>
  );
}
