import { lazy, Suspense, useCallback, useMemo, useState, type ReactNode } from 'react';
import { useSearchParams } from 'wouter';
import { controlsReport, figures, type ControlsReport, type FigureSet, type Sticks, type WorstLean } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { useMachine } from '../../data/index.ts';
import { Button, Empty, LinkButton, machineAt, Note, Segmented, Sheet, StateWord, WorkingDrawer } from '../../sheet/index.ts';
import { PlateCurves, TailCurve } from './curves.tsx';
import { Flat } from './flat.tsx';
import { measuredRows } from './measured.ts';
import { plateScene, tailScene } from './scene.ts';
import { StickSliders, type Stick } from './stick-sliders.tsx';
import { ArmTable, LeanList, LinkTable, PlayList, QualityList, SetUpSheet } from './tables.tsx';
import './controls.css';

const Stage = lazy(() => import('./stage.tsx'));

/** Swashplate, links and grips, moving with the sticks; what to cut, what to enter, how well it works. */
export function ControlsPage(): ReactNode {
  const { machine, id } = useMachine();
  const set = useMemo(() => figures(machine), [machine]);
  const report = useMemo(() => controlsReport(set), [set]);
  const [searched, ask] = useAsked();
  const figure = searched.get('figure') ?? undefined;
  return (
    <>
      {report.plate || report.tail ? <Controls key={id} report={report} set={set} /> : <NotKnown id={id} report={report} />}
      {figure !== undefined && <WorkingDrawer set={set} name={figure} machine={id} onClose={() => ask('figure', undefined)} />}
    </>
  );
}

/** What the address asks for, and a way to ask for something else. */
function useAsked(): readonly [URLSearchParams, (key: string, value: string | undefined) => void] {
  const [searched, setSearched] = useSearchParams();
  const ask = (key: string, value: string | undefined): void => setSearched((before) => {
    const next = new URLSearchParams(before);
    if (value === undefined) next.delete(key);
    else next.set(key, value);
    return next;
  }, { replace: true });
  return [searched, ask];
}

function NotKnown({ id, report }: { readonly id: string; readonly report: ControlsReport }): ReactNode {
  return (
    <Sheet title="Controls" answer={<StateWord state="unknown">Not known yet</StateWord>}>
      <Empty title="The file does not place the controls" next={<LinkButton kind="ink" to={machineAt(id, 'file')}>Open the file</LinkButton>}>
        <p>{report.stuck === undefined ? 'Write where servos, plate, links and grips stand, and every length follows. Missing:' : `Nothing is computed: ${report.stuck}.`}</p>
        <ul>{report.missing.map((path) => <li key={path}><code>{path}</code></li>)}</ul>
      </Empty>
    </Sheet>
  );
}

interface Position extends Sticks {
  readonly yaw: number;
  /** Azimuth of the first blade, rad. */
  readonly turn: number;
}

const still: Position = { collective: 0, fore: 0, right: 0, yaw: 0, turn: Math.PI / 2 };
const looks = { corner: { title: 'Corner', turn: 2.4, rise: 0.35 }, left: { title: 'Left', turn: -Math.PI / 2, rise: 0 }, front: { title: 'Front', turn: Math.PI, rise: 0 }, above: { title: 'Above', turn: 0, rise: 1.5 } } as const;

function Controls({ report, set }: { readonly report: ControlsReport; readonly set: FigureSet }): ReactNode {
  const { machine, state, id } = useMachine();
  const { plate, tail, links } = report;
  const [searched, ask] = useAsked();
  const part = (searched.get('show') === 'tail' && tail) || !plate ? 'tail' : 'head';
  const [without3d, setWithout3d] = useState(false);
  const flat = without3d || searched.get('view') === 'flat';
  const openFigure = (figure: string): void => ask('figure', figure);
  const [position, setPosition] = useState<Position>(still);
  const [look, setLook] = useState<{ readonly turn: number; readonly rise: number }>(looks.corner);
  const leans = (part === 'tail' ? tail?.leans : plate?.envelope.leans) ?? [];
  const [marked, setMarked] = useState<WorstLean>();
  const mark = marked && leans.includes(marked) ? marked : leans[0];
  const names = useMemo(() => {
    const { servos, levers } = machine.controls;
    const moved = [...servos.values(), ...levers.values(), ...links.map(({ link }) => link)];
    return new Map<string, string>([...moved.map(({ id: key, title }) => [key, title] as const), ['swashplate', 'Swashplate'], ['slider', 'Slider'], ...[...machine.rotors.values()].map((rotor) => [rotor.id, `${rotor.title}, grips`] as const)]);
  }, [links, machine]);
  const range = tailRange(report);
  const servoAngle = range[0] + ((position.yaw + 1) / 2) * (range[1] - range[0]);
  const sticks = useMemo(() => inCircle(position), [position]);
  const scene = useMemo(() => (part === 'tail' ? tail && tailScene(tail.tail, servoAngle, position.turn, mark) : plate && plateScene(plate.plate, sticks, position.turn, mark)), [part, plate, tail, sticks, servoAngle, position.turn, mark]);
  const measured = useMemo(() => measuredRows(id, machine, state), [id, machine, state]);
  const showWorst = (lean: WorstLean): void => {
    setMarked(lean);
    if ('yaw' in lean.sticks) setPosition((before) => ({ ...before, yaw: (lean.sticks as { readonly yaw: number }).yaw }));
    else setPosition((before) => ({ ...before, ...(lean.sticks as Sticks), ...(lean.azimuth === undefined ? {} : { turn: lean.azimuth }) }));
  };
  const fail = useCallback(() => setWithout3d(true), []);
  const turned = useCallback((turn: number, rise: number) => setLook({ turn, rise }), []);
  const label = part === 'tail' ? 'Tail lever, slider, links and grips' : 'Servos, swashplate, links and grips';
  const wrong = leans.filter(({ lean, limit }) => limit !== undefined && lean > limit).length;

  return (
    <Sheet
      title="Controls"
      className="controls"
      answer={<Answer report={report} />}
      actions={(
        <>
          {plate && tail && <Segmented label="What is shown" options={[{ value: 'head', title: 'Head' }, { value: 'tail', title: 'Tail' }]} value={part} onChange={(value) => ask('show', value === 'tail' ? 'tail' : undefined)} />}
          <Segmented label="How it is drawn" options={[{ value: 'space', title: 'In space', disabled: without3d }, { value: 'flat', title: 'Flat' }]} value={flat ? 'flat' : 'space'} onChange={(value) => ask('view', value === 'flat' ? 'flat' : undefined)} />
          <Button onClick={() => window.print()}>Print</Button>
        </>
      )}
      block={{ units: 'mm, °', caution: 'Motor unplugged or engine cold, blades clear or off, before you set or measure pitch.' }}
      notes={<><Note title="Reading the picture">Both flat views have one scale. Lengths are true, thicknesses are not. {mark ? `The ball in the warning ink has least left of its limit: ${names.get(mark.link)}.` : ''}</Note><Note title="What is left out">Nothing bends, and play is not drawn. Feathering axis square to the mast, blades without lag or flap.{plate?.plate.frame.axes ? ' The mast leans in the file; here it stands upright.' : ''}</Note></>}
    >
      <nav className="jumps no-print" aria-label="On this sheet">
        {[['links', 'Links to cut'], ...(report.arms.length > 0 ? [['arms', 'Arm holes']] : []), ['set-up', 'Set-up sheet'], ['quality', 'Quality and play']].map(([to, title]) => <a key={to} className="button plain" href={`#${to}`}>{title}</a>)}
      </nav>
      <div className="columns controls-columns">
        <div className="controls-picture">
          <section className="area no-print" aria-label="Picture">
            {!scene ? <p><StateWord state="exceeded">Here something does not reach.</StateWord></p> : flat ? <Flat key={part} scene={scene} tail={part === 'tail'} label={label} /> : (
              <Suspense fallback={<div className="stage"><p className="soft">Setting the stage.</p></div>}>
                <Stage key={part} scene={scene} label={label} {...look} onLook={turned} onFail={fail} />
              </Suspense>
            )}
            {without3d && <p className="soft" role="status">This browser draws nothing in space here; the flat drawing shows the same.</p>}
            {!flat && <div className="looks">{Object.values(looks).map(({ title, turn, rise }) => <Button key={title} onClick={() => setLook({ turn, rise })}>{title}</Button>)}<Button onClick={() => setLook((before) => ({ ...before, turn: before.turn + Math.PI / 12 }))}>Turn left</Button><Button onClick={() => setLook((before) => ({ ...before, turn: before.turn - Math.PI / 12 }))}>Turn right</Button></div>}
          </section>
          <section className="area no-print" aria-label="Sticks">
            <StickSliders sticks={sticksOf(part, position, setPosition)} onCentre={() => setPosition(still)} />
          </section>
        </div>
        <div className="controls-side no-print">
          <section className="area" aria-label="Curves">
            <h2>Curves</h2>
            {part === 'tail' ? tail && <TailCurve report={tail} angle={servoAngle} /> : plate && <PlateCurves report={plate} sticks={sticks} turn={position.turn} />}
          </section>
          <section className="area" aria-label="Tightest angles">
            <div className="area-head"><h2>Tightest angles</h2>{wrong > 0 && <StateWord state="exceeded">{wrong} beyond the limit</StateWord>}</div>
            <LeanList leans={leans} names={names} onShow={showWorst} />
          </section>
        </div>
      </div>
      <section className="area" id="links" tabIndex={-1} aria-label="Links"><h2>Links to cut</h2><LinkTable links={links} onOpen={openFigure} /></section>
      {report.arms.length > 0 && <section className="area no-print" id="arms" tabIndex={-1} aria-label="Arms"><h2>Arm holes</h2><ArmTable arms={report.arms} /></section>}
      <section className="area" id="set-up" tabIndex={-1} aria-label="Set-up sheet"><h2>Set-up sheet</h2><SetUpSheet rows={report.setUp} measured={measured} onOpen={openFigure} /><p className="signature">Set and measured by, on:</p></section>
      <div className="columns controls-foot no-print">
        <section className="area" id="quality" tabIndex={-1} aria-label="Quality"><h2>Quality</h2><QualityList {...(plate ? { plate } : {})} {...(tail ? { tail } : {})} {...{ set, machine: id }} onOpen={openFigure} /></section>
        {plate && <section className="area" aria-label="Play at the main blades"><h2>Play at the main blades</h2><PlayList play={plate.play} names={names} /></section>}
        {tail && <section className="area" aria-label="Play at the tail blades"><h2>Play at the tail blades</h2><PlayList play={tail.play} names={names} /></section>}
      </div>
      {report.missing.length > 0 && <section className="area" aria-label="Missing"><h2>What would make the rest known</h2><ul className="lines">{report.missing.map((path) => <li key={path}><code>{path}</code></li>)}</ul></section>}
    </Sheet>
  );
}

function Answer({ report: { plate, tail, links, arms, missing } }: { readonly report: ControlsReport }): ReactNode {
  const steep = [...(plate?.envelope.leans ?? []), ...(tail?.leans ?? [])].filter(({ lean, limit }) => limit !== undefined && lean > limit).length;
  const turns = links.filter((link) => link.turns !== undefined && link.turns !== 0).length;
  const short = arms.filter(({ holes }) => holes.some(({ fitted, reaches }) => fitted && !reaches)).length;
  const unreached = plate?.envelope.unreached.length ?? 0;
  return (
    <>
      <StateWord state={steep + short + unreached > 0 ? 'exceeded' : 'holds'}>{unreached > 0 ? `${unreached} positions out of reach` : steep > 0 ? `${steep} ${steep === 1 ? 'ball leans' : 'balls lean'} too far` : short > 0 ? 'An arm is too short' : 'Everything reaches'}</StateWord>
      {turns > 0 && <StateWord state="tight">{turns} {turns === 1 ? 'link' : 'links'} to set</StateWord>}
      {missing.length > 0 && <StateWord state="unknown">{missing.length} {missing.length === 1 ? 'entry' : 'entries'} missing</StateWord>}
    </>
  );
}

/** Servo angles between which the tail moves: the wanted ends, else all of the travel. */
function tailRange({ tail }: ControlsReport): readonly [number, number] {
  const { low, high, curve } = tail?.quality ?? {};
  if (low && high) return [low.angle, high.angle];
  return curve && curve.length > 0 ? [curve[0]!.angle, curve.at(-1)!.angle] : [0, 0];
}

/** Fore and right together stay within the circle. */
function inCircle({ collective, fore, right }: Sticks): Sticks {
  const size = Math.max(1, Math.hypot(fore, right));
  return { collective, fore: fore / size, right: right / size };
}

function sticksOf(part: 'head' | 'tail', position: Position, set: (change: (before: Position) => Position) => void): readonly Stick[] {
  const percent = (value: number): string => `${Math.round(100 * value)} %`;
  const stick = (key: 'collective' | 'fore' | 'right' | 'yaw', title: string): Stick => ({ key, title, value: position[key], min: -1, max: 1, step: 0.02, shown: percent(position[key]), onChange: (value) => set((before) => ({ ...before, [key]: value })) });
  const turn: Stick = { key: 'turn', title: 'Turn of the rotor', value: position.turn, min: 0, max: 2 * Math.PI, step: Math.PI / 36, shown: showQuantity(position.turn, '°', { significant: 3 }), onChange: (value) => set((before) => ({ ...before, turn: value })) };
  return part === 'tail' ? [stick('yaw', 'Tail, end to end'), turn] : [stick('collective', 'Collective'), stick('fore', 'Cyclic, forward'), stick('right', 'Cyclic, right'), turn];
}
