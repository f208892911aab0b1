import { figures, rotorsOf } from '@rotorwright/figures';
import { nextSteps } from '@rotorwright/build';
import { readiness, readinessWords, type Readiness } from '@rotorwright/logbook';
import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { useMemo, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { MachineView } from '../../data/index.ts';
import { countsOf, LinkButton, machineAt, StateMark, StateWord, stepAt, type Counts, type MarkState } from '../../sheet/index.ts';
import type { Outline } from './outline.ts';
import { OutlinePicture } from './outline-picture.tsx';

export interface MachineRowProps {
  readonly view: MachineView;
  readonly outline: Outline | undefined;
  readonly scale: number;
}

/** One machine: its outline, its figures, its verdict, the next act. */
export function MachineRow({ view, outline, scale }: MachineRowProps): ReactNode {
  const counts = countsOf(view);
  const ready = useMemo(() => (view.plan && view.state ? readiness(view.plan, view.state) : undefined), [view.plan, view.state]);
  const verdict = verdictOf(counts, ready);
  return (
    <article className="machine-row" aria-labelledby={`machine-${view.id}`}>
      <div className="machine-picture"><OutlinePicture outline={outline} name={view.title} scale={scale} /></div>
      <div className="machine-facts">
        <h2 id={`machine-${view.id}`}><Link href={machineAt(view.id, view.machine ? 'drive' : 'file')}>{view.title}</Link></h2>
        {view.demo && <p className="demo">invented demo</p>}
        {view.machine && <Facts machine={view.machine} />}
      </div>
      <div className="machine-verdict">
        <p className={`verdict ${verdict.mark}`}><StateMark state={verdict.mark} size={20} />{verdict.words}</p>
        <p>{verdict.why}</p>
        {ready && counts.steps > 0 && <p className="soft">{readinessWords(ready)}</p>}
        <ul>
          {counts.signed > 0 && <li><StateWord state="signed">{counts.signed} signed</StateWord></li>}
          {counts.undone > 0 && <li><StateWord state="undone">{counts.undone} undone</StateWord></li>}
          {counts.open > 0 && <li><StateWord state="open">{counts.open} open</StateWord></li>}
          {counts.curing > 0 && <li><StateWord state="curing">{counts.curing} curing</StateWord></li>}
          {counts.errors > 0 && <li><StateWord state="exceeded">{counts.errors === 1 ? '1 error in the file' : `${counts.errors} errors in the file`}</StateWord></li>}
          {counts.warnings > 0 && <li><StateWord state="tight">{counts.warnings === 1 ? '1 warning in the file' : `${counts.warnings} warnings in the file`}</StateWord></li>}
        </ul>
      </div>
      <div className="machine-next"><NextAct view={view} counts={counts} /></div>
    </article>
  );
}

function Facts({ machine }: { readonly machine: Machine }): ReactNode {
  const rows = useMemo(() => {
    const set = figures(machine);
    const { main, tail } = rotorsOf(machine);
    const speed = (shaft: string | undefined): string => {
      const value = shaft === undefined ? undefined : set.get(`speed ${shaft}`)?.value;
      return value === undefined ? 'not known' : showQuantity(Math.abs(value), 'rpm', { decimals: 0 });
    };
    return [
      ...(main ? [['main', speed(main.on)] as const] : []),
      ...(tail ? [['tail', speed(tail.on)] as const] : []),
      ['mass', machine.mass === undefined ? 'not known' : showQuantity(machine.mass, 'kg', { decimals: 1 })] as const,
    ];
  }, [machine]);
  return (
    <>
      <p className="soft">{powerWords(machine)}</p>
      <dl>{rows.map(([name, value]) => <div key={name}><dt>{name}</dt><dd>{value}</dd></div>)}</dl>
    </>
  );
}

function powerWords({ power: { engine, motor, battery } }: Machine): string {
  if (engine) return [engine.kind?.replaceAll('-', ' ') ?? 'engine', engine.displacement === undefined ? undefined : showQuantity(engine.displacement, 'cm³', { decimals: 0 })].filter((word) => word !== undefined).join(', ');
  if (motor) return battery?.cells === undefined ? 'electric' : `electric, ${battery.cells} cells`;
  return 'power not described';
}

/** What matters most comes first. Whether it may fly is for the builder to say; this says what speaks against it. */
function verdictOf({ steps, signed, open, undone, curing, errors }: Counts, ready: Readiness | undefined): { readonly mark: MarkState; readonly words: string; readonly why: string } {
  if (errors > 0) return { mark: 'exceeded', words: 'File has errors', why: 'Mend the file first. What depends on the faulty entries is not computed.' };
  if (steps === 0) return { mark: 'unknown', words: 'Build not described', why: 'The file gives speeds. Parts, joints and stacks in it would make the build plan.' };
  if (undone > 0) return { mark: 'undone', words: 'Not closed', why: `${undone === 1 ? 'One signature no longer stands' : `${undone} signatures no longer stand`}. Do and sign again what they stood for.` };
  if (open > 0) return { mark: 'open', words: 'Not closed', why: signed + curing === 0 ? 'Nothing is signed yet.' : `${signed + curing} of ${steps} steps are signed.` };
  if (curing > 0) return { mark: 'curing', words: 'Curing', why: 'All is signed. Wait until the last lock has cured.' };
  if (ready && ready.objections.length > 0) return { mark: 'open', words: 'Not seen again', why: 'All is signed. Somebody must look again at what a crash or an injury hangs on.' };
  return { mark: 'signed', words: 'All signed', why: `All ${steps} signatures stand.` };
}

function NextAct({ view, counts }: { readonly view: MachineView; readonly counts: Counts }): ReactNode {
  const next = useMemo(() => (view.plan && view.state ? nextSteps(view.plan, view.state.steps).ready[0] : undefined), [view.plan, view.state]);
  if (counts.errors > 0) return <LinkButton to={machineAt(view.id, 'file')} kind="ink">Open the file</LinkButton>;
  if (counts.steps === 0) {
    return <><p className="soft">Next: modules, parts and joints.</p><LinkButton to={machineAt(view.id, 'file')}>Add to the file</LinkButton></>;
  }
  if (next) return <><p className="soft">Next: {next.title}.</p><LinkButton to={stepAt(view.id, next.id)} kind="ink">Go on at the bench</LinkButton></>;
  return <LinkButton to={machineAt(view.id, 'build')}>See the build</LinkButton>;
}
