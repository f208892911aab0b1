import { useEffect, useRef, useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import { answersFor, shimTask, type Answer, type Step } from '@rotorwright/build';
import type { StepState } from '@rotorwright/logbook';
import type { Machine } from '@rotorwright/machine';
import type { Photo } from '../../data/index.ts';
import { SignerPanel, StateMark, Warning, WhichWay } from '../../sheet/index.ts';
import type { Blocker } from '../build/blockers.ts';
import { AnswerPanel } from './answer-panel.tsx';
import { CureDial } from './cure-dial.tsx';
import { DrawingPane } from './drawing-pane.tsx';
import { numberedWords } from './step-drawing.ts';
import { ExpectedPlay } from './expected-play.tsx';
import { MeasurePanel } from './measure-panel.tsx';
import { measuredIn, scaleFor, verdictOf } from './measuring.ts';
import { NotesPanel } from './notes-panel.tsx';
import { PhotoButton, StepPhotos, TakenPhoto } from './photo-panel.tsx';
import type { Photographed } from './photographed.ts';
import type { Seal } from './seal.ts';
import { SecondLook } from './second-look.tsx';
import { ShimPanel } from './shim-panel.tsx';
import { SignBar } from './sign-bar.tsx';
import type { Signers } from '../../data/signers.ts';
import { useKeptTicks } from './use-kept-ticks.ts';
import { useNarrow } from './use-narrow.ts';
import { WarmAndGrease } from './warm-and-grease.tsx';

export interface BenchStepProps {
  readonly machine: Machine;
  readonly step: Step;
  readonly number: number;
  readonly seal: Seal;
  readonly standing: StepState | undefined;
  readonly blockers: readonly Blocker[];
  readonly curing: readonly { readonly step: Step; readonly until: number }[];
  readonly now: number;
  readonly signers: Signers;
  readonly onSigner: (name: string) => void;
  /** Taken of this step, and in no entry yet. */
  readonly photo: Photo | undefined;
  readonly onPhoto: (photo: Photo | undefined) => void;
  /** Resolves when the entry is in the book, or kept here to be sent. It takes the photo along. */
  readonly onEntry: (body: Photographed) => Promise<void>;
  readonly onGo: (step: Step) => void;
  readonly onNext: (() => void) | undefined;
}

const doubts = ['Thread damaged', 'Too tight', 'Too loose', 'Part worn or bent', 'Part missing', 'Wrong part in the bag', 'Compound got where it should not', 'Ask someone', 'Feels wrong, I cannot say why'];
const remarks = ['Went tight', 'Went loose', 'Thread cleaned up', 'Part replaced by a new one', 'Done another way than written', 'Took longer than planned', 'Look here again after the first flights', 'Ask someone'];
const faults = ['Loose', 'Lock missing', 'Mark broken or missing', 'Thread damaged', 'Wrong part or wrong way round', 'Ask someone'];

/** One step at the bench. Order is fixed: warning, action, drawing, parts, reason, measure, cure, sign. */
export function BenchStep(props: BenchStepProps): ReactNode {
  const { machine, step, number, seal, standing, blockers, curing, now, signers, photo, onPhoto, onEntry, onGo } = props;
  const [ticks, toggle] = useKeptTicks(step.fingerprint);
  const [reading, setReading] = useState<number>();
  const [feel, setFeel] = useState<Answer['feel']>();
  const [panel, setPanel] = useState<'note' | 'doubt' | 'fault' | 'signer'>();
  const [cured, setCured] = useState(false);
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string>();
  const [noted, setNoted] = useState<string>();
  const [untaken, setUntaken] = useState<string>();
  const phone = useNarrow();
  const measurement = machine.measurements.get(step.id);
  const stack = machine.stacks.get(step.id)?.id ?? (measurement?.quantity === 'end-play' ? measurement.of : undefined);
  const task = stack === undefined ? undefined : shimTask(machine, measurement?.id ?? shimOf(machine, stack));
  const shims = task && !('missing' in task) ? task : undefined;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);

  const shown = step.measure?.shown ?? step.measure?.unit;
  const scale = step.measure && shown !== undefined ? scaleFor({ ...(step.measure.min === undefined ? {} : { min: step.measure.min }), ...(step.measure.max === undefined ? {} : { max: step.measure.max }), shown }) : undefined;
  const answers = step.measure && !scale ? answersFor(step.measure) : [];
  const answer = answers.find((each) => each.feel === feel);
  const first = blockers.filter((blocker) => blocker.why === 'open');
  const uncured = blockers.filter((blocker) => blocker.why === 'curing');
  const done = (seal.state === 'signed' || seal.state === 'curing') && !trouble;
  const hindrance = hindranceOf();
  // What is numbered in the drawing stands in its list.
  const deeds = step.actions.filter((action) => !numberedWords.test(action));

  function hindranceOf(): string | undefined {
    if (first.length > 0) return 'Something else comes first.';
    if (uncured.length > 0 && !cured) return 'Let it cure, or tick that it has.';
    const left = step.ticks.length > 1 ? step.ticks.filter((tick) => !ticks.has(tick)).length : 0;
    if (left > 0) return `${left} of ${step.ticks.length} still to tick.`;
    if (scale) {
      if (reading === undefined) return 'Read it first.';
      if (verdictOf(scale, reading) !== 'inside') return 'Outside the window: it cannot be signed as good. Set it again, or press In doubt.';
    } else if (step.measure) {
      if (answer === undefined) return 'Answer first.';
      if (!answer.wanted) return `The answer is ${answer.word}: it cannot be signed as good. Set it again, or press In doubt.`;
    }
    return undefined;
  }

  // On a phone, where something is to be read or ticked, what explains it is folded so that the answer stays in view.
  const folds = phone && (step.measure !== undefined || step.ticks.length > 1);
  const how = (
    <>
      {deeds.length > 1 && <ol className="bench-actions" aria-label="One after the other">{deeds.map((action) => <li key={action}>{action}</li>)}</ol>}
      <WhichWay machine={machine} facings={step.facings ?? []} />
      <Facts step={step} />
    </>
  );

  async function send(body: Photographed): Promise<boolean> {
    setBusy(true);
    setTrouble(undefined);
    try {
      await onEntry(body);
      return true;
    } catch (error) {
      setTrouble(`Not recorded yet: ${error instanceof Error ? error.message : String(error)} Try again.`);
      return false;
    } finally {
      setBusy(false);
    }
  }

  async function sign(): Promise<void> {
    if (signers.now === undefined) {
      setPanel('signer');
      return;
    }
    const unit = step.measure?.unit;
    const measured = scale && reading !== undefined && unit !== undefined && shown !== undefined ? measuredIn(unit, shown, reading) : feel !== undefined ? { feel } : undefined;
    const recorded = await send({
      kind: 'signed', step: step.id, fingerprint: step.fingerprint, cure: step.cure,
      ...(step.locks && step.locks.length > 0 ? { locks: step.locks } : {}), ...(step.torque === undefined ? {} : { torque: step.torque }),
      ...(measured ? { measured } : {}), ...(uncured.length > 0 ? { note: `Found cured before its time: ${uncured.map((one) => one.step.title).join(', ')}.` } : {}),
    });
    // The focus leaves the button, so that the space bar that follows cannot sign another step.
    if (recorded) heading.current?.focus({ preventScroll: true });
  }

  async function note(words: string): Promise<void> {
    const read = scale && reading !== undefined ? ` Read ${reading.toFixed(scale.decimals)} ${shown}.` : answer === undefined ? '' : ` Answered ${answer.word}.`;
    if (signers.now === undefined) {
      setPanel('signer');
      return;
    }
    if (await send({ kind: 'noted', step: step.id, note: panel === 'doubt' ? `In doubt: ${words}.${read}` : words })) {
      setNoted(panel === 'doubt' ? 'In doubt: noted in the book. The step stays open.' : 'Noted in the book.');
      setPanel(undefined);
    }
  }

  async function noteAlone(): Promise<void> {
    if (signers.now === undefined) setPanel('signer');
    else if (await send({ kind: 'noted', step: step.id, note: 'Photo' })) setNoted('Photo noted in the book.');
  }

  async function look(found: 'good' | 'bad', words?: string): Promise<void> {
    if (await send({ kind: 'looked', step: step.id, fingerprint: step.fingerprint, found, ...(words === undefined ? {} : { note: words }) })) {
      setPanel(undefined);
      heading.current?.focus({ preventScroll: true });
    }
  }

  return (
    <div className="bench-main">
      <div className="bench-left">
        {step.caution && <p className="bench-warning"><Warning size={40} /><span><b>Warning.</b> {step.caution}</span></p>}
        <h2 className={step.action.length > 64 ? 'bench-action long' : 'bench-action'} ref={heading} tabIndex={-1}>{step.action}</h2>
        <DrawingPane machine={machine} step={step} folded={folds ? <div className="bench-folded">{how}</div> : undefined} />
      </div>
      <div className="bench-right">
        <div className="bench-answers">
          {!folds && how}
          {(step.why ?? step.tip) && <section className="bench-why" aria-label="Reason">{step.why && <p>{step.why}</p>}{step.tip && <p><b>Tip.</b> {step.tip}</p>}</section>}
          {first.length > 0 && <section className="bench-first" aria-label="What comes first"><h2>First</h2><ul>{first.slice(0, 4).map(({ step: one }) => <li key={one.id}><button type="button" onClick={() => onGo(one)}>{one.title}</button></li>)}</ul>{first.length > 4 && <p>and {first.length - 4} more</p>}</section>}
          {step.ticks.length > 1 && !done && <Ticks machine={machine} step={step} ticks={ticks} onTick={toggle} />}
          {!done && <WarmAndGrease machine={machine} step={step} />}
          {stack !== undefined && !done && <ExpectedPlay machine={machine} stack={stack} task={shims} />}
          {shims && measurement && !done && <ShimPanel task={shims} />}
          {step.measure && !done && (scale && shown !== undefined
            ? <MeasurePanel title={step.title} {...(step.measure.with === undefined ? {} : { with: step.measure.with })} scale={scale} unit={shown} reading={reading} onRead={setReading} />
            : <AnswerPanel step={step} answers={answers} feel={feel} onAnswer={setFeel} />)}
          {uncured.map(({ step: one }) => <button key={one.id} type="button" className="bench-tick wide" aria-pressed={cured} onClick={() => setCured(!cured)}><span className="box" aria-hidden="true" />I have checked: {one.title} has cured</button>)}
          {seal.until !== undefined && <CureDial title={step.title} until={seal.until} cure={step.cure} now={now} />}
          {curing.map((one) => <CureDial key={one.step.id} title={one.step.title} until={one.until} cure={one.step.cure} now={now} />)}
          {seal.state === 'undone' && (
            <div className="bench-undone">
              <StateMark state="undone" size={24} /> <p><b>Undone.</b> {seal.reason} Do it again and sign.</p>
              {seal.wayIn !== undefined && <Link href={seal.wayIn}>What comes apart first</Link>}
            </div>
          )}
          {done && standing && <SecondLook standing={standing} signers={signers} now={now} busy={busy} onGood={() => void look('good')} onBad={() => setPanel('fault')} onWho={() => setPanel('signer')} />}
          {standing && <StepPhotos step={step} history={standing.history} />}
          {photo && <TakenPhoto photo={photo} title={step.title} busy={busy} onNote={() => void noteAlone()} onDrop={() => onPhoto(undefined)} />}
          {untaken && <p className="bench-trouble" role="alert">{untaken}</p>}
          {noted && <p className="bench-noted" role="status">{noted}</p>}
        </div>
        {panel === 'note' && <NotesPanel title="Note" choices={remarks} busy={busy} onNote={(words) => void note(words)} onClose={() => setPanel(undefined)} />}
        {panel === 'doubt' && <NotesPanel title="In doubt" choices={doubts} busy={busy} onNote={(words) => void note(words)} onClose={() => setPanel(undefined)} />}
        {panel === 'fault' && <NotesPanel title="What is bad" choices={faults} busy={busy} onNote={(words) => void look('bad', words)} onClose={() => setPanel(undefined)} />}
        {panel === 'signer' && <SignerPanel signers={signers} onChoose={(name) => { props.onSigner(name); setPanel(undefined); }} />}
        <div className="bench-bar">
          <div className="bench-small">
            <button type="button" onClick={() => setPanel(panel === 'note' ? undefined : 'note')} aria-expanded={panel === 'note'}>Note</button>
            <button type="button" onClick={() => setPanel(panel === 'doubt' ? undefined : 'doubt')} aria-expanded={panel === 'doubt'}>In doubt</button>
            <PhotoButton busy={busy} onPhoto={(taken) => { setUntaken(undefined); onPhoto(taken); }} onTrouble={setUntaken} />
            <button type="button" onClick={() => setPanel(panel === 'signer' ? undefined : 'signer')} aria-expanded={panel === 'signer'}>{signers.now ? <>as <b>{signers.now}</b></> : 'Who signs?'}</button>
          </div>
          <SignBar seal={seal} number={number} hindrance={hindrance} trouble={trouble} busy={busy} now={now} cure={step.cure} onSign={() => void sign()} onNext={props.onNext} />
        </div>
      </div>
    </div>
  );
}

/** The measurement that decides a shim of a stack. */
function shimOf(machine: Machine, stack: string): string {
  return [...machine.parts.values()].find(({ until }) => until !== undefined && machine.measurements.get(until)?.of === stack)?.until ?? '';
}

/** Thread, torque, lock, tools: what the hand needs before it begins. */
function Facts({ step }: { readonly step: Step }): ReactNode {
  const torque = step.torque === undefined ? undefined : step.torque === 'snug' ? 'snug, by feel' : `${Number(step.torque.toPrecision(3))} N·m`;
  const known = (facts: readonly (readonly [string, string | undefined])[]): readonly (readonly [string, string])[] => facts.flatMap(([name, value]) => (value === undefined || value === '' ? [] : [[name, value] as const]));
  const brief = known([['Thread', step.thread], ['Torque', torque], ['Lock', step.locks?.join(', ')]]);
  const long = known([['Tools', step.tools.join(', ')], ['Use', step.consumables.join(', ')]]);
  if (brief.length + long.length === 0) return undefined;
  return (
    <dl className="bench-facts">
      {brief.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}
      {long.map(([name, value]) => <div key={name} className="long"><dt>{name}</dt><dd>{value}</dd></div>)}
    </dl>
  );
}

function Ticks({ machine, step, ticks, onTick }: { readonly machine: Machine; readonly step: Step; readonly ticks: ReadonlySet<string>; readonly onTick: (tick: string) => void }): ReactNode {
  const thing = machine.joints.get(step.id) ?? machine.parts.get(step.id) ?? machine.stacks.get(step.id) ?? machine.measurements.get(step.id) ?? machine.steps.get(step.id);
  return (
    <section className="bench-ticks" aria-label="Tick each one">
      {step.ticks.map((tick, index) => (
        <button key={tick} type="button" className="bench-tick" aria-pressed={ticks.has(tick)} onClick={() => onTick(tick)}>
          <span className="box" aria-hidden="true" /> {thing?.copies[index] ?? machine.parts.get(machine.thingOf.get(tick) ?? tick)?.title ?? index + 1}
        </button>
      ))}
    </section>
  );
}
