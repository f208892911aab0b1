import { useId, useMemo, useState, type ReactNode } from 'react';
import { tonight } from '@rotorwright/build';
import { durationWords } from '@rotorwright/units';
import { useNow, type ReadableMachine } from '../../data/index.ts';

const TIMES = [20, 30, 40, 60, 90, 120, 180];

/** I have so much time and lack a tool: what can I do tonight? */
export function TonightPanel({ open, onChoose }: { readonly open: ReadableMachine; readonly onChoose: (step: string) => void }): ReactNode {
  const [minutes, setMinutes] = useState(40);
  const [lacking, setLacking] = useState('');
  const id = useId();
  const minute = Math.floor(useNow(60_000) / 60_000) * 60_000;
  const tools = useMemo(() => {
    const wanted = [...open.plan.steps.values()].filter((step) => ['open', 'undone'].includes(open.state.steps.get(step.id)?.state ?? 'open')).flatMap((step) => step.tools);
    return [...new Set(wanted)].toSorted((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  }, [open.plan, open.state]);
  const without = tools.includes(lacking) ? lacking : '';
  const found = useMemo(() => tonight(open.plan, open.state.steps, { now: new Date(minute).toISOString(), time: minutes * 60, without: without === '' ? [] : [without] }), [open.plan, open.state, minute, minutes, without]);
  const done = new Date(minute + (minutes * 60 - found.left) * 1000).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return (
    <section className="area" id="tonight" tabIndex={-1} aria-label="Tonight">
      <div className="area-head evenings-head">
        <h2>Tonight</h2>
        <label htmlFor={`${id}-time`}>I have <select id={`${id}-time`} value={minutes} onChange={(event) => setMinutes(Number(event.target.value))}>{TIMES.map((each) => <option key={each} value={each}>{durationWords(each * 60)}</option>)}</select></label>
        <label htmlFor={`${id}-without`}>without <select id={`${id}-without`} value={without} onChange={(event) => setLacking(event.target.value)}><option value="">no tool missing</option>{tools.map((tool) => <option key={tool}>{tool}</option>)}</select></label>
      </div>
      {found.steps.length === 0 ? <p role="status">Nothing fits into this time.</p> : (
        <>
          <ol className="tonight">
            {found.steps.map(({ step, curesUntil }) => (
              <li key={step.id}><button type="button" className="link" onClick={() => onChoose(step.id)}>{step.title}</button> <span className="soft">{durationWords(step.takes)}{curesUntil !== undefined && `, then cures ${durationWords(step.cure)}`}</span></li>
            ))}
          </ol>
          <p role="status" className="soft small">Begun now, done at {done}. What the rest waits for longest comes first.</p>
        </>
      )}
      {found.wantTool.length > 0 && <p className="small">Waits for the tool: {found.wantTool.map(({ step }) => step.title).join(', ')}.</p>}
      {found.tooLong.length > 0 && <p className="small">Takes longer: {found.tooLong.map((step) => step.title).join(', ')}.</p>}
    </section>
  );
}
