import { careOf, figures, prepareDrive, type DriveState } from '@rotorwright/figures';
import { inUnit, showNumber, showQuantity } from '@rotorwright/units';
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState, useSyncExternalStore, type ReactNode } from 'react';
import { useSearchParams } from 'wouter';
import { useMachine } from '../../data/index.ts';
import { Button, Empty, LinkButton, machineAt, Note, Segmented, Sheet, StateWord, WorkingDrawer } from '../../sheet/index.ts';
import { bandAnswer, clutchAnswer, type BandAnswer } from './bands.ts';
import { CareTables } from './care-tables.tsx';
import { Choices } from './choices.tsx';
import { Directions } from './directions.tsx';
import { FigureList, type Air } from './figure-list.tsx';
import { createLive, type Live } from './live.ts';
import { MeshStrip } from './mesh-strip.tsx';
import { Picture, type Drawn } from './picture.tsx';
import { rangeAround } from './rule-scale.ts';
import { ShaftTable } from './shaft-table.tsx';
import { SlideRule, type RuleScale } from './slide-rule.tsx';
import { TrialBar, type Trial } from './trial-bar.tsx';
import { slower, useLessMotion, useTurning } from './use-turning.ts';
import { useWidth } from '../../sheet/use-width.ts';
import './drive.css';

const stateTitles: Readonly<Record<DriveState, string>> = { driven: 'Driven', 'clutch-open': 'Clutch open', autorotation: 'Autorotation' };

/** The drive: the train itself, one speed under a hairline, gears to change, and all choices beside. */
export function DrivePage(): ReactNode {
  const open = useMachine();
  const { machine, id } = open;
  const [asked, setState] = useState<DriveState>('driven');
  const [tried, setTried] = useState<Readonly<Record<string, number>>>({});
  const filed = useMemo(() => figures(machine), [machine]);
  const teeth = useMemo(() => onlyChanged(machine, tried), [machine, tried]);
  const states = [...filed.drive.states.keys()];
  const state = states.includes(asked) ? asked : (states[0] ?? 'driven');
  if (states.length === 0) return <NothingTurns id={id} />;
  return <Drive key={`${id} ${state}`} {...{ open, state, states, setState, teeth, setTried }} />;
}

function NothingTurns({ id }: { readonly id: string }): ReactNode {
  return (
    <Sheet title="Drive" answer={<StateWord state="unknown">Nothing turns yet</StateWord>}>
      <Empty title="The file does not say what turns what" next={<LinkButton kind="ink" to={machineAt(id, 'file')}>Open the file</LinkButton>}>
        <p>Write an engine or motor under <code>power</code>, its shaft under <code>shafts</code>, and a mesh under <code>drive</code>. Five lines give the first speeds.</p>
      </Empty>
    </Sheet>
  );
}

interface DriveProps {
  readonly open: ReturnType<typeof useMachine>;
  readonly state: DriveState;
  readonly states: readonly DriveState[];
  readonly setState: (state: DriveState) => void;
  /** Tooth counts that differ from the file, by entry. */
  readonly teeth: Readonly<Record<string, number>>;
  readonly setTried: (change: (before: Readonly<Record<string, number>>) => Readonly<Record<string, number>>) => void;
}

function Drive({ open, state, states, setState, teeth, setTried }: DriveProps): ReactNode {
  const { machine: filed, id } = open;
  const first = useMemo(() => figures(filed, { state }), [filed, state]);
  const source = first.drive.states.get(state)!.source;
  const filedSpeed = first.get(`speed ${source}`)?.value;
  const start = filedSpeed ?? 1000;
  const speed = useMemo(() => createLive(start), [start]);
  const angle = useMemo(() => createLive(0), []);
  const [settled, setSettled] = useState(start);
  useEffect(() => setSettled(start), [start]);
  const settle = useCallback(() => setSettled(speed.get()), [speed]);
  const shownSpeed = useDeferredValue(settled);
  const [air, setAir] = useState<Air>({ altitude: 0, temperatureOffset: 0 });
  const set = useMemo(() => figures(filed, { state, teeth, ...air, ...(state === 'autorotation' ? { rotorSpeed: shownSpeed } : shownSpeed === filedSpeed ? {} : { sourceSpeed: shownSpeed }) }), [filed, state, teeth, air, shownSpeed, filedSpeed]);
  const { machine, drive } = set;
  const care = useMemo(() => (state === 'driven' ? careOf(set) : undefined), [set, state]);
  const factors = useMemo(() => {
    const prepared = prepareDrive(machine, state);
    return new Map(prepared.shafts.map((shaft, index) => [shaft, Math.abs(prepared.factors[index]!)]));
  }, [machine, state]);
  const factorOf = useCallback((shaft: string): number | undefined => {
    const factor = factors.get(shaft);
    return factor === undefined || !Number.isFinite(factor) ? undefined : factor;
  }, [factors]);

  const [searched, setSearched] = useSearchParams();
  const figure = searched.get('figure') ?? undefined;
  const openFigure = useCallback((name: string | undefined) => setSearched((before) => {
    const next = new URLSearchParams(before);
    if (name === undefined) next.delete('figure');
    else next.set('figure', name);
    return next;
  }, { replace: true }), [setSearched]);

  const turn = useTurning(angle, speed);
  const setTeeth = (path: string, count: number): void => setTried((before) => ({ ...before, [path]: count }));
  const trials = trialsOf(filed, teeth);
  const engages = [...machine.couplings.values()].find(({ kind }) => kind === 'centrifugal-clutch')?.engages;
  const scales = useScales(set, state, factorOf, source);
  const range = useMemo(() => {
    const points = scales.flatMap(({ band, factor, unit }) => (unit === 'rpm' && band ? [band.min, band.max].flatMap((value) => (value === undefined ? [] : [value / factor])) : []));
    return rangeAround(start, points);
  }, [scales, start]);
  const [ruleFrame, ruleRoom] = useWidth<HTMLDivElement>();
  const compact = ruleRoom < 560;
  const ruleWidth = compact ? ruleRoom : ruleRoom - 126 - 100 - 28;
  const sourceName = state === 'autorotation' ? 'Rotor speed' : drive.source?.kind === 'motor' ? 'Motor speed' : 'Engine speed';
  const energy = set.get(`stored-energy ${drive.mainRotor?.id ?? ''}`)?.value;
  const lessMotion = useLessMotion();
  const [drawn, setDrawn] = useState<Drawn>({ scale: '–', note: '' });

  return (
    <Sheet
      title="Drive"
      className="drive"
      answer={state === 'clutch-open'
        ? <LiveAnswer speed={speed} answer={(value) => clutchAnswer(value, engages)} />
        : <>{([['Main', drive.mainRotor], ['Tail', drive.tailRotor]] as const).map(([name, rotor]) => <LiveAnswer key={name} speed={speed} answer={(value) => bandAnswer(name, rotor, speedOf(value, rotor && factorOf(rotor.on)))} />)}</>}
      actions={<Segmented label="State of the drive" options={(Object.keys(stateTitles) as DriveState[]).filter((each) => states.includes(each)).map((value) => ({ value, title: stateTitles[value] }))} value={state} onChange={setState} />}
      block={{
        scale: drawn.scale, units: 'mm, rpm',
        caution: energy === undefined ? 'Blades off for every first run. Hold the rotor before you turn the train by hand.' : `${showNumber(energy, { significant: 3 })} J turn in the rotor at this speed. Blades off for every first run.`,
      }}
      notes={<><Note title="Reading the picture">{drawn.note} {readingNote(machine, state)}</Note><Note title="Turning">{lessMotion ? 'The system asks for less motion: the train turns only by hand.' : `While you hold Turn or the hairline, ${slower} times slower than the machine. With a mouse, pull any wheel.`}</Note></>}
    >
      <div className="columns drive-columns">
        <div className="drive-main">
          <Picture machine={machine} drive={drive} state={state} speed={speed} angle={angle} factorOf={factorOf} onOpen={openFigure} onDrawn={setDrawn} turnButton={lessMotion ? null : <TurnButton onHeld={turn} />} />
          <div className="area rule-area">
            <div ref={ruleFrame}>
              {ruleWidth > 100 && <SlideRule scales={scales} speed={speed} min={range.min} max={range.max} width={ruleWidth} compact={compact} label={sourceName} {...(filedSpeed === undefined ? {} : { filed: filedSpeed })} onSettled={settle} onHeld={turn} onOpen={openFigure} />}
            </div>
            {filedSpeed === undefined && <p className="small"><StateWord state="unknown" size={13}>speed not in the file</StateWord> {state === 'clutch-open' ? `Write ${drive.source?.path}.idle.` : `Write ${drive.source?.path ?? 'power.engine'}.speed.`} The scale shows ratios from an assumed {showQuantity(start, 'rpm', { significant: 3 })}.</p>}
          </div>
          <TrialBar open={open} trials={trials} onDone={() => setTried(() => ({}))} />
          <MeshStrip machine={machine} filed={filed} speed={speed} factorOf={factorOf} onTeeth={setTeeth} onOpen={openFigure} />
        </div>
        <div className="drive-side">
          <Choices machine={filed} sourceSpeed={state === 'driven' ? shownSpeed : undefined} teeth={allTeeth(machine)} onTry={(counts) => setTried(() => counts)} />
          <ShaftTable set={set} state={state} speed={speed} factorOf={factorOf} onOpen={openFigure} />
        </div>
      </div>
      <FigureList set={set} air={air} onAir={setAir} onOpen={openFigure} />
      {care && <CareTables care={care} onOpen={openFigure} />}
      <Directions set={set} machine={id} />
      {figure !== undefined && <WorkingDrawer set={care?.set ?? set} name={figure} machine={id} onClose={() => openFigure(undefined)} />}
    </Sheet>
  );
}

/** Turns the train while it is held: by pointer, by space or by enter. */
function TurnButton({ onHeld }: { readonly onHeld: (held: boolean) => void }): ReactNode {
  const held = useRef(false);
  const hold = (is: boolean): void => {
    if (held.current === is) return;
    held.current = is;
    onHeld(is);
  };
  return (
    <Button
      className="turn" title="Hold to turn the train"
      onPointerDown={(event) => { event.currentTarget.setPointerCapture(event.pointerId); hold(true); }} onPointerUp={() => hold(false)} onPointerCancel={() => hold(false)}
      onKeyDown={(event) => { if (event.key === ' ' || event.key === 'Enter') { event.preventDefault(); hold(true); } }} onKeyUp={() => hold(false)} onBlur={() => hold(false)} onContextMenu={(event) => event.preventDefault()}
    >
      Turn<span className="unseen">: hold to turn the train</span>
    </Button>
  );
}

/** Draws itself anew only when the answer changes. */
function LiveAnswer({ speed, answer }: { readonly speed: Live; readonly answer: (speed: number) => BandAnswer }): ReactNode {
  const [mark, words] = useSyncExternalStore(speed.listen, () => {
    const { mark, words } = answer(speed.get());
    return `${mark}|${words}`;
  }).split('|') as [BandAnswer['mark'], string];
  return <StateWord state={mark}>{words}</StateWord>;
}

const speedOf = (source: number, factor: number | undefined): number | undefined => (factor === undefined ? undefined : source * factor);

function useScales(set: ReturnType<typeof figures>, state: DriveState, factorOf: (shaft: string) => number | undefined, source: string): readonly RuleScale[] {
  return useMemo(() => {
    const { machine, drive } = set;
    const perRpm = inUnit(1, 'rpm');
    const rpmBand = (band: { readonly min?: number; readonly max?: number } | undefined) => band && { ...(band.min === undefined ? {} : { min: inUnit(band.min, 'rpm') }), ...(band.max === undefined ? {} : { max: inUnit(band.max, 'rpm') }) };
    const scales: RuleScale[] = [];
    const power = machine.power.engine ?? machine.power.motor;
    if (state !== 'autorotation') {
      const grips = [...machine.couplings.values()].find(({ kind }) => kind === 'centrifugal-clutch')?.engages;
      const band = state === 'driven' ? power?.bestSpeed : grips === undefined ? undefined : { max: grips };
      scales.push({ title: drive.source?.kind ?? 'engine', note: band === undefined ? 'rpm' : state === 'driven' ? 'rpm, best hatched' : 'rpm, open hatched', factor: perRpm, unit: 'rpm', decimals: 0, figure: `speed ${source}`, ...(band ? { band: rpmBand(band)! } : {}) });
    }
    for (const [title, rotor] of [['main rotor', drive.mainRotor], ['tail rotor', drive.tailRotor]] as const) {
      const factor = rotor && factorOf(rotor.on);
      if (!rotor || !factor) continue;
      scales.push({ title, note: rotor.wanted ? 'rpm, wanted hatched' : 'rpm', factor: factor * perRpm, unit: 'rpm', decimals: 0, figure: `speed ${rotor.on}`, ...(rotor.wanted ? { band: rpmBand(rotor.wanted)! } : {}) });
    }
    const main = drive.mainRotor;
    const factor = main && factorOf(main.on);
    if (main?.diameter !== undefined && factor) scales.push({ title: 'blade tip', note: 'm/s', factor: (factor * main.diameter) / 2, unit: 'm/s', decimals: 1, figure: `tip-speed ${main.id}` });
    return scales;
  }, [set, state, factorOf, source]);
}

function readingNote(machine: ReturnType<typeof useMachine>['machine'], state: DriveState): string {
  const standing = state === 'driven' ? '' : ' Dashed: it stands.';
  return `True tooth counts and flanks. Broken out where gears lie under the main gear; tubes and belts shortened. Thin chain lines: pitch circles and axes.${[...machine.couplings.values()].some(({ kind }) => kind === 'centrifugal-clutch') ? ' Double-dash line: clutch, not to size.' : ''}${standing}`;
}

const allTeeth = (machine: ReturnType<typeof useMachine>['machine']): Readonly<Record<string, number | undefined>> =>
  Object.fromEntries([...machine.couplings.values()].flatMap(({ driver, driven }) => [driver, driven].map((side) => [`${side.path}.teeth`, side.teeth])));

/** Trials that differ from what the file says, on places that the file still has. */
function onlyChanged(machine: ReturnType<typeof useMachine>['machine'], tried: Readonly<Record<string, number>>): Readonly<Record<string, number>> {
  const filed = allTeeth(machine);
  return Object.fromEntries(Object.entries(tried).filter(([path, teeth]) => path in filed && filed[path] !== teeth));
}

function trialsOf(machine: ReturnType<typeof useMachine>['machine'], teeth: Readonly<Record<string, number>>): readonly Trial[] {
  const filed = allTeeth(machine);
  return Object.entries(teeth).map(([path, after]) => {
    const [, id, side] = path.split('.') as [string, string, string];
    return { path, title: `${machine.couplings.get(id)?.title ?? id}, ${side === 'driver' ? 'driving' : 'driven'}`, before: filed[path], after };
  });
}
