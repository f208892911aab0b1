import { prepareFigures, type FigureSet } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { useCallback, useDeferredValue, useMemo, useState, type ReactNode } from 'react';
import { useSearchParams } from 'wouter';
import { useMachine } from '../../data/index.ts';
import { Empty, LinkButton, machineAt, Note, Sheet, StateWord, WorkingDrawer } from '../../sheet/index.ts';
import { FigureGroups } from './figure-groups.tsx';
import { BladePicture, PowerPicture, TailPicture } from './pictures.tsx';
import { conditionsOf, settingsFrom, settingsInto, settingsOf } from './settings.ts';
import { Sliders } from './sliders.tsx';
import { Sweep } from './sweep/index.ts';
import { markOf, roundedDown, verdicts } from './verdict.ts';
import './rotor.css';

/** What the rotors ask for and what is there: in hover, climb and fast flight, at any weight and in any air. */
export function RotorPage(): ReactNode {
  const open = useMachine();
  const { machine, id } = open;
  const reckon = useMemo(() => prepareFigures(machine), [machine]);
  const filed = useMemo(() => reckon(), [reckon]);
  if (!filed.drive.mainRotor || !filed.drive.states.has('driven')) {
    return (
      <Sheet title="Rotor" answer={<StateWord state="unknown">No rotor that is driven</StateWord>}>
        <Empty title="The file does not say what turns the rotor" next={<LinkButton kind="ink" to={machineAt(id, 'file')}>Open the file</LinkButton>}>
          <p>Write the engine or motor under <code>power</code>, the way to the mast under <code>drive</code>, and <code>rotors.main</code>.</p>
        </Empty>
      </Sheet>
    );
  }
  return <Rotor key={id} open={open} filed={filed} reckon={reckon} />;
}

interface RotorProps {
  readonly open: ReturnType<typeof useMachine>;
  /** As the file has it. */
  readonly filed: FigureSet;
  readonly reckon: ReturnType<typeof prepareFigures>;
}

function Rotor({ open, filed, reckon }: RotorProps): ReactNode {
  const { machine, id } = open;
  const main = filed.drive.mainRotor!;
  const mainSpeed = filed.get(`speed ${main.on}`)?.value;
  const known = useMemo(() => settingsOf(machine, mainSpeed), [machine, mainSpeed]);
  const perRotor = filed.get(`ratio ${main.on}`)?.value;
  const [searched, setSearched] = useSearchParams();
  const [settings, setSettings] = useState(() => settingsFrom(searched, known));
  const conditions = useMemo(() => conditionsOf(settings, perRotor), [settings, perRotor]);
  const deferred = useDeferredValue(conditions);
  const set = useMemo(() => reckon(deferred), [reckon, deferred]);
  const figure = searched.get('figure') ?? undefined;
  const openFigure = useCallback((name: string | undefined) => setSearched((before) => {
    const next = new URLSearchParams(before);
    if (name === undefined) next.delete('figure');
    else next.set('figure', name);
    return next;
  }, { replace: true }), [setSearched]);
  const settle = (): void => setSearched((before) => settingsInto(before, settings, known), { replace: true });
  const air = set.get('air-density')?.value;
  const temperature = set.get('air-temperature')?.value;
  const densityAltitude = set.get('density-altitude')?.value;
  const energy = set.get(`stored-energy ${main.id}`)?.value;
  return (
    <Sheet
      title="Rotor"
      className="rotor"
      answer={verdicts.map(([name, words]) => {
        const margin = set.get(name)?.value;
        return <StateWord key={name} state={markOf(margin)}>{words} {margin === undefined ? 'not known' : roundedDown(margin)}</StateWord>;
      })}
      block={{ scale: '–', units: 'W, N, rpm', caution: energy === undefined ? 'Blades off for every first run.' : `${showQuantity(energy, 'J', { significant: 3 })} turn in the rotor. Stay out of its plane. Estimates: fly them in with care.` }}
      notes={<><Note title="Reading the numbers">A margin is what there is over what is asked: below 1 it is exceeded. Hatched about a curve: from low to high, nine rotors in ten lie between.</Note><Note title="Left out">Wind, gusts, the wake on the tail, {filed.drive.source?.kind === 'motor' ? 'windings that warm, and how much less thin air cools them' : 'a carburettor not set for the day'}.</Note></>}
    >
      <Sliders known={known} settings={settings} onMove={setSettings} onSettled={settle} air={air === undefined || temperature === undefined || densityAltitude === undefined ? 'Such air is not known.' : `The air there: ${showQuantity(temperature, '°C', { significant: 3 })}, ${showQuantity(air, 'kg/m³', { significant: 4 })}, as thin as on a standard day at ${showQuantity(Math.round(densityAltitude), 'm', { significant: 3 })}.`} />
      <div className="columns rotor-columns">
        <div className="rotor-main">
          <div className="area"><PowerPicture set={set} /></div>
          <div className="area"><TailPicture set={set} /></div>
          <div className="area"><BladePicture set={set} /></div>
          <Sweep machine={machine} conditions={deferred} {...(mainSpeed === undefined || perRotor === undefined ? {} : { speed: mainSpeed, perRotor })} />
        </div>
        <div className="rotor-side">
          <FigureGroups set={set} onOpen={openFigure} />
        </div>
      </div>
      {figure !== undefined && <WorkingDrawer set={set} name={figure} machine={id} onClose={() => openFigure(undefined)} />}
    </Sheet>
  );
}
