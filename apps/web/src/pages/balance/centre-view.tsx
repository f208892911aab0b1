import { verdictOf, type BalanceSummary, type CentreWord, type Figure, type FigureSet, type Move } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { inUnit, showQuantity } from '@rotorwright/units';
import { useId, useState, type ReactNode } from 'react';
import { LinkButton, machineAt, StateMark, StateWord, type MarkState } from '../../sheet/index.ts';
import { CentreStrip } from './centre-strip.tsx';
import { SideView } from './side-view.tsx';

export const markOf: Readonly<Record<CentreWord, MarkState>> = { holds: 'holds', exceeded: 'exceeded', unknown: 'unknown' };

const mm = (length: number): string => showQuantity(length, 'mm', { decimals: 1 });
const grams = (mass: number): string => showQuantity(mass, 'g', { significant: 4 });
export const aheadWords = (ahead: number): string => (mm(ahead) === mm(0) ? 'on the mast axis' : `${mm(Math.abs(ahead))} ${ahead > 0 ? 'ahead' : 'behind'}`);

export interface CentreViewProps {
  readonly id: string;
  readonly machine: Machine;
  readonly set: FigureSet;
  readonly summary: BalanceSummary;
  /** m ahead of the mast axis, and whether a person set it */
  readonly wanted: number;
  readonly asked: boolean;
  readonly onWanted: (wanted: number | undefined) => void;
  readonly onOpen: (figure: string) => void;
  /** Told at which scale the machine is drawn. */
  readonly onScale: (scale: string) => void;
}

/** Where the centre of mass is, where it may be, and what moves it. */
export function CentreView({ id, machine, set, summary, wanted, asked, onWanted, onOpen, onScale }: CentreViewProps): ReactNode {
  const [ahead, height] = [set.get('centre-ahead')!, set.get('centre-height')!];
  const words = ahead.value === undefined ? 'The centre of mass is not known' : `Centre of mass ${aheadWords(ahead.value)}, ${mm(Math.abs(height.value ?? 0))} below the hub`;
  return (
    <div className="columns balance-columns">
      <div>
        <section className="area" aria-label="Side view">
          <div className="area-head"><h2>Masses</h2><span className="small soft">from the left, forward at the left; circles go with the mass</span></div>
          <SideView machine={machine} summary={summary} words={words} onScale={onScale} {...(ahead.value === undefined || height.value === undefined ? {} : { centre: { ahead: ahead.value, height: height.value } })} />
          <CentreStrip summary={summary} wanted={wanted} />
        </section>
      </div>
      <div>
        <Where {...{ id, set, summary, ahead, onOpen }} />
        <Moves {...{ summary, wanted, asked, onWanted, onOpen }} />
        <Spun summary={summary} set={set} onOpen={onOpen} />
      </div>
      <Modules summary={summary} />
    </div>
  );
}

/** A figure that opens into its working. */
function FigureButton({ figure, onOpen, text, cannot = 'not possible' }: { readonly figure: Figure; readonly onOpen: (figure: string) => void; readonly text?: string; readonly cannot?: string }): ReactNode {
  return <button type="button" className="link" onClick={() => onOpen(figure.name)}>{figure.value === undefined ? <StateWord state="unknown" size={12}>{figure.missing.length > 0 ? 'entry missing' : cannot}</StateWord> : (text ?? showQuantity(figure.value, figure.shown, { significant: 3 }))}</button>;
}

function Where({ id, set, summary: { fillings, limit, range, unaccounted, bodies }, ahead, onOpen }: Pick<CentreViewProps, 'id' | 'set' | 'summary' | 'onOpen'> & { readonly ahead: Figure }): ReactNode {
  const { min, max } = limit?.window ?? {};
  const others = (['mass-known', 'centre-left', 'centre-height', 'hanging-tilt', 'inertia-roll', 'inertia-pitch', 'inertia-yaw'] as const).map((name) => set.get(name)!);
  return (
    <section className="area" aria-label="Centre of mass">
      <div className="area-head"><h2>Centre of mass</h2><span className="small soft">each opens into its working</span></div>
      <table>
        <thead><tr><th scope="col">with</th><th scope="col">ahead of the mast</th><th scope="col">limits</th></tr></thead>
        <tbody>{fillings.map((filling) => ({ ...filling, verdict: verdictOf(filling) })).map(({ title, figure, word, verdict }) => <tr key={title}><th scope="row">{title}</th><td><FigureButton figure={figure} onOpen={onOpen} {...(figure.value === undefined ? {} : { text: aheadWords(figure.value) })} /></td><td><StateWord state={markOf[word]} size={13}>{verdict}</StateWord></td></tr>)}</tbody>
      </table>
      <p className="small soft">{limit ? <>Allowed: {min !== undefined && `from ${mm(min)} `}{max !== undefined && `to ${mm(max)}`} ahead of the mast axis; aft of that it is tail-heavy, forward of it nose-heavy{limit.source !== undefined && `; ${limit.source}`}.</> : <>The file sets no limits. Write one under limits, of centre-ahead. <LinkButton to={machineAt(id, 'file')}>Open the file</LinkButton></>}</p>
      {range && unaccounted !== undefined && <p className="small"><StateMark state="tight" size={13} label="Note:" /> {grams(unaccounted)} are nowhere in the file. At the tail they put the centre <FigureButton figure={range.aft} onOpen={onOpen} text={aheadWords(range.aft.value ?? 0)} />, at the nose <FigureButton figure={range.fore} onOpen={onOpen} text={aheadWords(range.fore.value ?? 0)} />.</p>}
      {ahead.warnings.map((warning) => <p key={warning} className="small"><StateMark state="tight" size={13} label="Note:" /> {warning}</p>)}
      {[...bodies.massless.map((path) => ['no mass', path] as const), ...bodies.placeless.map(({ path }) => ['no place', path] as const)].map(([lacks, path]) => <p key={path} className="small"><StateWord state="unknown" size={12}>{lacks}</StateWord> <code>{path}</code></p>)}
      <ul className="balance-figures">{others.map((figure) => <li key={figure.name}><span>{figure.title}</span><FigureButton figure={figure} onOpen={onOpen} /></li>)}</ul>
    </section>
  );
}

function Moves({ summary: { moves, ballast }, wanted, asked, onWanted, onOpen }: Pick<CentreViewProps, 'summary' | 'wanted' | 'asked' | 'onWanted' | 'onOpen'>): ReactNode {
  const field = useId();
  const [typed, setTyped] = useState(String(Number(inUnit(wanted, 'mm').toPrecision(6))));
  const value = /^[-−]?\d+(?:\.\d+)?$/u.test(typed.trim()) ? Number(typed.trim().replace('−', '-')) : undefined;
  const valid = value !== undefined && Math.abs(value) <= 1000;
  return (
    <section className="area" aria-label="What to move">
      <div className="area-head"><h2>What to move</h2></div>
      <div className="balance-wanted">
        <label htmlFor={field}>Wanted, ahead of the mast, mm</label>
        <input id={field} type="text" inputMode="decimal" value={typed} aria-invalid={!valid} aria-describedby={`${field}-hint`} onChange={({ target }) => {
          setTyped(target.value);
          const next = /^[-−]?\d+(?:\.\d+)?$/u.test(target.value.trim()) ? Number(target.value.trim().replace('−', '-')) : undefined;
          if (next !== undefined && Math.abs(next) <= 1000) onWanted(next / 1000);
        }} />
        <span id={`${field}-hint`} className="small soft">{valid ? (asked ? 'set by hand' : 'the middle of what is allowed') : 'a number from −1000 to 1000'}</span>
      </div>
      {moves.length + ballast.length === 0 ? <p className="soft">The file names nothing that can be moved, and no place for a weight: see <code>balance</code> in the guide.</p> : (
        <table>
          <thead><tr><th scope="col">one of these</th><th scope="col">brings it there</th></tr></thead>
          <tbody>
            {moves.map((move) => <tr key={move.movable.id}><th scope="row">{move.figure.title.replace('How far forward to move ', 'Move ')}</th><td><FigureButton figure={move.figure} onOpen={onOpen} {...(move.figure.value === undefined ? {} : { text: `${mm(Math.abs(move.figure.value))} ${move.figure.value < 0 ? 'aft' : 'forward'}` })} /> <Stop move={move} /></td></tr>)}
            {ballast.map(({ place, figure }) => <tr key={place.id}><th scope="row">{figure.title}</th><td><FigureButton figure={figure} onOpen={onOpen} cannot="draws it the wrong way" /></td></tr>)}
          </tbody>
        </table>
      )}
    </section>
  );
}

function Stop({ move: { to, stop } }: { readonly move: Move }): ReactNode {
  if (to === undefined) return null;
  return stop === undefined ? <span className="small soft">to {mm(to)} from the origin</span> : <StateWord state="tight" size={13}>stops at {mm(stop.at)}, with the centre {aheadWords(stop.centre)}</StateWord>;
}

function Modules({ summary: { modules } }: Pick<CentreViewProps, 'summary'>): ReactNode {
  if (modules.length === 0) return null;
  const whole = (length: number): string => showQuantity(length, 'mm', { decimals: 0 }).replace(' mm', '');
  return (
    <section className="area balance-modules" aria-label="Modules">
      <div className="area-head"><h2>Modules</h2><span className="small soft">mm from the rotor hub</span></div>
      <div className="table-frame" tabIndex={0} role="region" aria-label="Mass and place of each module">
        <table>
          <thead><tr><th scope="col">module</th><th scope="col" className="number">mass</th><th scope="col" className="number">ahead</th><th scope="col" className="number">left</th><th scope="col" className="number">up</th><th scope="col" className="number">without it the centre moves</th></tr></thead>
          <tbody>{modules.map(({ id, title, mass, centre, without }) => <tr key={id}><th scope="row">{title}</th><td className="number">{grams(mass)}</td>{centre.map((coordinate, axis) => <td key={['ahead', 'left', 'up'][axis]} className="number">{whole(coordinate)}</td>)}<td className="number">{mm(without) === mm(0) ? 'nowhere' : `${mm(Math.abs(without)).replace(' mm', '')} ${without < 0 ? 'aft' : 'forward'}`}</td></tr>)}</tbody>
          <tfoot><tr><th scope="row">together</th><td className="number"><b>{grams(modules.reduce((sum, { mass }) => sum + mass, 0))}</b></td><td colSpan={4} /></tr></tfoot>
        </table>
      </div>
    </section>
  );
}

function Spun({ summary: { spun }, set, onOpen }: Pick<CentreViewProps, 'summary' | 'set' | 'onOpen'>): ReactNode {
  const tips = set.all.filter(({ name, value }) => name.startsWith('tip-gram ') && value !== undefined);
  if (spun.length + tips.length === 0) return null;
  return (
    <section className="area" aria-label="What turns">
      <div className="area-head"><h2>What turns may be out of balance</h2><span className="small soft">by its grade</span></div>
      {spun.length > 0 && (
        <table>
          <thead><tr><th scope="col">group</th><th scope="col" className="number">unbalance</th><th scope="col" className="number">as mass there</th><th scope="col" className="number">force</th></tr></thead>
          <tbody>{spun.map(({ spun: { id, title }, unbalance, atRadius, force }) => <tr key={id}><th scope="row">{title}</th>{[unbalance, atRadius, force].map((figure) => <td key={figure.name} className="number"><FigureButton figure={figure} onOpen={onOpen} /></td>)}</tr>)}</tbody>
        </table>
      )}
      <ul className="balance-figures">{tips.map((figure) => <li key={figure.name}><span>{figure.title}</span><FigureButton figure={figure} onOpen={onOpen} /></li>)}</ul>
    </section>
  );
}
