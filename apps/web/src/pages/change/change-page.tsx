import { figures, margins, type FigureSet } from '@rotorwright/figures';
import { wordFinding } from '@rotorwright/machine';
import { useMemo, useState, type ReactNode } from 'react';
import { useLocation, useSearch } from 'wouter';
import { useMachine } from '../../data/index.ts';
import { Button, Empty, machineAt, Note, Sheet, StateMark, StateWord, WorkingDrawer } from '../../sheet/index.ts';
import { CompareTable } from './compare-table.tsx';
import { Compose } from './compose.tsx';
import { CrossingsList } from './crossings-list.tsx';
import { FigureBars } from './figure-bars.tsx';
import { keyOf, mostIdeas, readIdeas, withEdit, writeIdeas, type Idea, type Ideas } from './ideas.ts';
import { MeshMoves } from './mesh-moves.tsx';
import { ToBuy, ToSet } from './to-do-lists.tsx';
import { editWords, newlyExceeded, type Refusal, type Trial } from './trial.ts';
import { useTrials } from './use-trials.ts';
import { WindowsList } from './windows-list.tsx';
import { WorkPanel } from './work-panel.tsx';
import './change.css';

/** What an idea would do, beside today's machine: figures, bands and limits, what to buy and set, what must come apart and be signed again. */
export function ChangePage(): ReactNode {
  const open = useMachine();
  const { machine, id } = open;
  const [, go] = useLocation();
  const search = useSearch();
  const { ideas, at } = useMemo(() => readIdeas(search), [search]);
  const [composing, setComposing] = useState(false);
  const [figure, setFigure] = useState<string>();
  const trials = useTrials(open, ideas);
  const today = useMemo(() => figures(machine), [machine]);
  const trial = trials[at];
  const put = (next: Ideas): void => {
    setComposing(false);
    go(`${machineAt(id, 'change')}${writeIdeas(next)}`);
  };
  const add = (idea: Idea): void => put(ideas.length < mostIdeas ? { ideas: [...ideas, idea], at: ideas.length } : { ideas: ideas.with(at, idea), at });
  const compose = composing && <Compose machine={machine} text={open.text} adds={ideas[at] !== undefined && 'edits' in ideas[at]} onIdea={add} onEdit={(edit) => put({ ideas: ideas.with(at, withEdit(ideas[at], edit)), at })} onClose={() => setComposing(false)} />;

  if (ideas.length === 0) {
    return (
      <Sheet title="Change" answer={<StateWord state="open">no idea yet</StateWord>}>
        <Empty title="What would you change?" next={<Button kind="ink" onClick={() => setComposing(true)}>Try a change</Button>}>
          <p>Another tooth count, longer blades, a heavier pack: see what moves, what to buy, what must come apart and what must be signed again. Nothing is changed before you turn it into work.</p>
        </Empty>
        {compose}
      </Sheet>
    );
  }
  const titles = ideas.map((idea, index) => titleOf(open.machine, idea, trials[index]));
  const left = isTrial(trial) ? newlyExceeded(trial) : 0;
  return (
    <Sheet
      title="Change"
      className="change"
      answer={<><strong>{titles[at]}</strong>{isTrial(trial) && <>{left > 0 ? <StateWord state="exceeded">{left} newly exceeded</StateWord> : <StateWord state="holds">nothing newly exceeded</StateWord>}<Falling open={open} trial={trial} /></>}</>}
      actions={<Button onClick={() => setComposing(true)}>Try a change</Button>}
      notes={<><Note title="Not yet done">A trial beside today’s machine. Nothing changes before you turn it into work.</Note><Note title="Reading it">A bar to the right: more than today; hollow, to the left: less. The address carries the ideas: send it, or keep it.</Note></>}
      block={{ units: 'as shown', caution: 'Empty the tank or take the pack off before you open anything. Part makers’ instructions come first.' }}
    >
      <IdeaTabs titles={titles} keys={ideas.map(keyOf)} at={at} onChoose={(next) => put({ ideas, at: next })} onDrop={(gone) => put({ ideas: ideas.toSpliced(gone, 1), at: Math.max(0, at - (gone <= at ? 1 : 0)) })} />
      {trial === undefined && <p className="area" role="status">Reckoning …</p>}
      {trial !== undefined && !isTrial(trial) && <RefusedIdea trouble={trial.trouble} />}
      {isTrial(trial) && (
        <div className="columns change-columns">
          <div>
            <section className="area" aria-label="Figures"><div className="area-head"><h2>Figures</h2><span className="soft small">today → after</span></div>
              <FigureBars changes={trial.figures} rotorShafts={new Set([...machine.rotors.values()].map(({ on }) => on))} onOpen={setFigure} />
            </section>
          </div>
          <div>
            <section className="area"><div className="area-head"><h2>In the file</h2></div><EditList trial={trial} /><NewFindings findings={trial.findings} /></section>
            <MeshMoves today={machine} after={trial.machine} />
            <section className="area"><div className="area-head"><h2>To fit</h2></div><ToBuy trial={trial} /></section>
            <section className="area" aria-label="Bands, limits and slots"><div className="area-head"><h2>Bands, limits and slots</h2></div><WindowsList windows={trial.windows} /></section>
            <section className="area" aria-label="Margins that cross one"><div className="area-head"><h2>Margins that cross one</h2><span className="soft small">today → after</span></div><CrossingsList crossings={trial.crossings} onOpen={setFigure} /></section>
            <section className="area"><div className="area-head"><h2>To set again</h2></div><ToSet today={machine} trial={trial} /></section>
          </div>
          <WorkPanel open={open} trial={trial} title={titles[at]!} />
        </div>
      )}
      {ideas.length > 1 && <section className="area" aria-label="Side by side"><div className="area-head"><h2>Side by side</h2></div><CompareTable today={today} columns={titles.map((title, index) => ({ title, trial: asTrial(trials[index]) }))} onChoose={(next) => put({ ideas, at: next })} /></section>}
      {compose}
      {figure !== undefined && isTrial(trial) && <Opened today={today} after={trial.set} name={figure} machine={id} onClose={() => setFigure(undefined)} />}
    </Sheet>
  );
}

/** The working of a figure or a margin: after the change, or, of what it does away with, today. Margins are reckoned when one is opened. */
function Opened({ today, after, name, machine, onClose }: { readonly today: FigureSet; readonly after: FigureSet; readonly name: string; readonly machine: string; readonly onClose: () => void }): ReactNode {
  const set = useMemo(() => [after, today].map((each) => (name.startsWith('margin ') ? margins(each).set : each)).find((each) => each.get(name)) ?? today, [today, after, name]);
  return <WorkingDrawer set={set} name={name} machine={machine} onClose={onClose} />;
}

/** How many signatures the change takes, or how many steps it leaves to sign where none was signed yet. */
function Falling({ open, trial }: { readonly open: ReturnType<typeof useMachine>; readonly trial: Trial }): ReactNode {
  const { again } = trial.work;
  const falling = again.filter(({ step }) => ['signed', 'curing'].includes(open.state.steps.get(step.id)?.state ?? 'open')).length;
  if (falling > 0) return <StateWord state="undone">{falling === 1 ? 'one signature falls' : `${falling} signatures fall`}</StateWord>;
  return again.length === 0 ? null : <StateWord state="open">{again.length} steps to sign</StateWord>;
}

const isTrial = (trial: Trial | Refusal | undefined): trial is Trial => trial !== undefined && 'set' in trial;
const asTrial = (trial: Trial | Refusal | undefined): Trial | undefined => (isTrial(trial) ? trial : undefined);

/** An idea in a few words. */
function titleOf(machine: Parameters<typeof editWords>[0], idea: Idea, trial: Trial | Refusal | undefined): string {
  if ('variant' in idea) return machine.variants.get(idea.variant) ?? idea.variant;
  if (!isTrial(trial)) return idea.edits.map(({ path, value }) => `${path.split('.').at(-1)} ${value ?? 'gone'}`).join(', ');
  if (trial.edits.length === 0) return 'as it is today';
  const words = trial.edits.slice(0, 2).map((edit) => editWords(trial.machine, edit));
  return `${words.join(', ')}${trial.edits.length > 2 ? ` and ${trial.edits.length - 2} more` : ''}`;
}

interface IdeaTabsProps {
  readonly titles: readonly string[];
  readonly keys: readonly string[];
  readonly at: number;
  readonly onChoose: (at: number) => void;
  readonly onDrop: (at: number) => void;
}

function IdeaTabs({ titles, keys, at, onChoose, onDrop }: IdeaTabsProps): ReactNode {
  return (
    <nav className="idea-tabs" aria-label="Ideas">
      <ul>
        {titles.map((title, index) => (
          <li key={keys[index]} className={index === at ? 'chosen' : undefined}>
            <button type="button" aria-current={index === at ? 'true' : undefined} onClick={() => onChoose(index)}>{index + 1} {title}</button>
            <button type="button" className="drop" aria-label={`Drop the idea ${title}`} onClick={() => onDrop(index)}>×</button>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function RefusedIdea({ trouble }: { readonly trouble: readonly string[] }): ReactNode {
  return <div className="area" role="alert"><p><StateWord state="exceeded">This cannot be</StateWord></p><ul>{trouble.map((each) => <li key={each}>{each}</li>)}</ul></div>;
}

/** What the figures find after the change and not today: a measured flight that another mass reads anew. */
function NewFindings({ findings }: Pick<Trial, 'findings'>): ReactNode {
  if (findings.length === 0) return null;
  return (
    <ul className="windows" aria-label="Newly found">
      {findings.map((finding) => {
        const { problem, remedy } = wordFinding(finding);
        return <li key={`${finding.code} ${finding.path}`}><StateMark state={finding.severity === 'error' ? 'exceeded' : 'tight'} label={finding.severity} /><span>{problem} <span className="soft">{remedy}</span></span></li>;
      })}
    </ul>
  );
}

function EditList({ trial }: { readonly trial: Trial }): ReactNode {
  const few = trial.edits.slice(0, 8);
  return (
    <>
      <ul className="lines">{few.map((edit) => <li key={edit.path}><span><code>{edit.path}</code> {edit.before ?? 'nothing'} → <b>{edit.after ?? 'nothing'}</b></span></li>)}</ul>
      {trial.edits.length > few.length && <p className="soft small">and {trial.edits.length - few.length} more entries</p>}
    </>
  );
}

