import { useEffect, useMemo, useState, type ReactNode } from 'react';
import type { PlannedModule, Step } from '@rotorwright/build';
import { Link, useLocation, useParams, useSearch } from 'wouter';
import { newEntryId, useNow, type Photo, type ReadableMachine } from '../../data/index.ts';
import { Empty, LinkButton, machineAt, Sheet, stepAt } from '../../sheet/index.ts';
import { blockersOf } from '../build/blockers.ts';
import { BenchStep } from './bench-step.tsx';
import { timeLeft } from './cure-clock.ts';
import type { Photographed } from './photographed.ts';
import { resumePlan } from './resume-plan.ts';
import { passedOf, sealOf, untilOf } from './seal.ts';
import { Seals } from './seals.tsx';
import { keepSigners, readSigners, withSigner } from '../../data/signers.ts';
import { turnOf } from './turn-keys.ts';
import { useBench, type Bench } from './use-bench.ts';
import { useWakeLock } from './use-wake-lock.ts';
import './bench.css';
import './drawing.css';

/** The bench: one step of one module, to be done and signed with greasy fingers a metre away. */
export function BenchPage(): ReactNode {
  const now = useNow(20_000);
  const open = useBench(now);
  const { step: asked } = useParams<{ step?: string }>();
  // An address may also name it as other sheets do.
  const queried = new URLSearchParams(useSearch()).get('step') ?? undefined;
  const [, go] = useLocation();
  const { plan } = open;
  const stepId = asked === undefined ? queried : unescaped(asked);
  const resumed = useMemo(() => (stepId === undefined ? resumePlan(open, Date.now()) : undefined), [stepId, open.id]);
  const target = stepId ?? resumed?.step;
  useEffect(() => {
    if (stepId === undefined && target !== undefined) go(stepAt(open.id, target), { replace: true, state: resumed?.paused === undefined ? undefined : { paused: resumed.paused, back: resumed.back, open: resumed.open } });
  }, [stepId, target, open.id, resumed, go]);
  if (plan.steps.size === 0) return <Nothing open={open} title="Nothing to build yet" words="The machine file has no modules, so there are no steps." />;
  if (target === undefined) return <Nothing open={open} title="Nothing is open" words="Every step is signed, or cures." />;
  const step = plan.steps.get(target);
  const module = plan.modules.find((one) => one.id === step?.module);
  if (!step || !module) return <Nothing open={open} title="No such step" words={`This machine has no step “${target}”. It may have been renamed in the file.`} />;
  return <Work open={open} module={module} step={step} now={now} />;
}

function Nothing({ open, title, words }: { readonly open: ReadableMachine; readonly title: string; readonly words: string }): ReactNode {
  return (
    <Sheet title="Bench" header={<div className="bench-head"><Link className="bench-leave" href={machineAt(open.id, 'build')}><span aria-hidden="true">‹</span> Leave</Link><h1>Bench</h1></div>} className="bench">
      <Empty title={title} next={<><LinkButton to={machineAt(open.id, 'build')} kind="ink">See the build plan</LinkButton><LinkButton to={machineAt(open.id, 'file')}>Open the file</LinkButton></>}>{words}</Empty>
    </Sheet>
  );
}

interface WorkProps {
  readonly open: Bench;
  readonly module: PlannedModule;
  readonly step: Step;
  readonly now: number;
}

function Work({ open, module, step, now }: WorkProps): ReactNode {
  const { machine, plan, state } = open;
  const [, go] = useLocation();
  const [signers, setSigners] = useState(() => readSigners(localStorage));
  const [awake, setAwake] = useState(true);
  // By step: turning a page loses none.
  const [photos, setPhotos] = useState<ReadonlyMap<string, Photo>>(new Map());
  const wake = useWakeLock(awake);
  const index = module.steps.findIndex((one) => one.id === step.id);
  const back = module.steps[index - 1];
  const next = module.steps[index + 1];
  const goTo = (one: Step): void => go(stepAt(open.id, one.id));
  const stateOf = (id: string) => state.steps.get(id)?.state ?? 'open';
  useTurnKeys(back && (() => goTo(back)), next && (() => goTo(next)));

  const standing = state.steps.get(step.id);
  const seal = sealOf(open, step);
  const curing = module.steps.flatMap((one) => {
    const until = one.id === step.id || stateOf(one.id) !== 'curing' ? undefined : untilOf(open, one.id);
    return until === undefined ? [] : [{ step: one, until }];
  });
  const onSigner = (name: string): void => {
    const chosen = withSigner(signers, name);
    setSigners(chosen);
    keepSigners(localStorage, chosen);
  };
  const photo = photos.get(step.id);
  const onPhoto = (taken: Photo | undefined): void => setPhotos((all) => new Map([...all].filter(([id]) => id !== step.id).concat(taken ? [[step.id, taken]] : [])));
  const onEntry = async (body: Photographed): Promise<void> => {
    await open.sign([{ id: newEntryId(), machine: open.id, at: new Date().toISOString(), by: signers.now ?? '', body: { ...body, ...(photo ? { photo: photo.sha256 } : {}) } }], body.kind === 'noted' ? `note on ${step.title}` : step.title, photo ? [photo] : []);
    if (photo) onPhoto(undefined);
  };
  const done = seal.state === 'signed' || seal.state === 'curing';

  const header = (
    <div className="bench-head">
      <Link className="bench-leave" href={machineAt(open.id, 'build')}><span aria-hidden="true">‹</span> Leave</Link>
      <h1>{module.title}</h1>
      <Seals module={module} current={step.id} stateOf={stateOf} passedOf={(id) => passedOf(open, id, now)} onGo={goTo} />
      <button type="button" className="bench-wake" aria-pressed={wake === 'on'} disabled={wake === 'unknown-here'} onClick={() => setAwake(!awake)}>{wakeWords[wake]}</button>
    </div>
  );
  const turn = (
    <div className="bench-turn">
      <button type="button" disabled={!back} onClick={() => back && goTo(back)}><span aria-hidden="true">‹</span> Back</button>
      <p>{next ? <><b>Next</b> {next.action}</> : <b>Last step of this module.</b>}</p>
      <button type="button" className={done ? 'ink' : undefined} disabled={!next} onClick={() => next && goTo(next)}>Next <span aria-hidden="true">›</span></button>
    </div>
  );
  return (
    <Sheet title="Bench" className="bench" header={header} notes={turn} block={{ state: { mark: standing?.state ?? 'open', words: `step ${index + 1} of ${module.steps.length}` }, scale: 'at the drawing', units: 'mm', caution: 'The maker’s own paper wins. What is worn or in doubt is not fitted.' }}>
      <Interrupted open={open} />
      <BenchStep
        key={`${step.id} ${step.fingerprint}`} machine={machine} step={step} number={index + 1} seal={seal} standing={standing}
        blockers={blockersOf(plan, step, stateOf)} curing={curing} now={now} signers={signers} onSigner={onSigner} photo={photo} onPhoto={onPhoto} onEntry={onEntry} onGo={goTo} onNext={next && (() => goTo(next))}
      />
    </Sheet>
  );
}

const wakeWords = { on: 'Screen stays on', off: 'Screen may sleep', refused: 'Screen may sleep', 'unknown-here': 'Screen may sleep' } as const;

/** Said where work comes back to after an interruption: it travels with the address, so it is gone on the next step. */
function Interrupted({ open }: { readonly open: ReadableMachine }): ReactNode {
  // Read again whenever the address changes.
  useLocation();
  const [seen, setSeen] = useState(false);
  const said = pauseOf(history.state);
  const step = said && open.plan.steps.get(said.open);
  if (seen || !said || !step) return undefined;
  return (
    <p className="bench-interrupted" role="status">
      <span>Work stopped {timeLeft(said.paused)} ago, before <Link href={stepAt(open.id, step.id)}>{step.title}</Link>. After an interruption look at the last {said.back === 1 ? 'step' : `${said.back} steps`} again, then go on.</span>
      <button type="button" onClick={() => setSeen(true)}>Seen</button>
    </p>
  );
}

function pauseOf(state: unknown): { readonly paused: number; readonly back: number; readonly open: string } | undefined {
  if (typeof state !== 'object' || state === null || !('paused' in state) || !('back' in state) || !('open' in state)) return undefined;
  return typeof state.paused === 'number' && typeof state.back === 'number' && typeof state.open === 'string' ? { paused: state.paused, back: state.back, open: state.open } : undefined;
}

/**
 * A foot pedal sends page or arrow keys: they turn, whatever has the focus, but for a field that is typed in. Space and
 * Shift with space turn while no control has the focus. No key ever signs.
 */
function useTurnKeys(back: (() => void) | undefined, next: (() => void) | undefined): void {
  useEffect(() => {
    const press = (event: KeyboardEvent): void => {
      if (event.defaultPrevented || event.ctrlKey || event.altKey || event.metaKey) return;
      const on = event.target instanceof Element ? event.target : undefined;
      const turn = turnOf(event);
      if (turn === undefined || on?.closest(event.key === ' ' ? 'button, a, input, select, textarea, summary, dialog, [role="button"]' : 'input, select, textarea, dialog')) return;
      event.preventDefault();
      // A pedal that is held down turns once.
      if (!event.repeat) (turn === 'next' ? next : back)?.();
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [back, next]);
}

function unescaped(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
