import { explainLine, machineSound, type MachineSound } from '@rotorwright/figures';
import { hearingWords, type Hearing, type Verdict } from '@rotorwright/signals';
import { showNumber, showQuantity } from '@rotorwright/units';
import { useCallback, useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { useMachine, type ReadableMachine } from '../../data/index.ts';
import { AgainstBaseline } from './against-baseline.tsx';
import { Pieces } from './pieces.tsx';
import { Button, Empty, LinkButton, machineAt, Note, Sheet, StateWord, type MarkState } from '../../sheet/index.ts';
import { useWidth } from '../../sheet/use-width.ts';
import { EnvelopePlot } from './envelope-plot.tsx';
import { heardRows } from './heard-rows.ts';
import { LineTable } from './line-table.tsx';
import { SoundPlot } from './sound-plot.tsx';
import { SpeedPlot } from './speed-plot.tsx';
import { useListening, type Listening } from './use-listening.ts';
import { useMicrophone } from './use-microphone.ts';
import './listen.css';

const caution = 'Record from behind the pilot line. No one goes near a running machine to hear better.';
const marks: Readonly<Record<Verdict, { readonly mark: MarkState; readonly words: string }>> = {
  'heard': { mark: 'holds', words: 'heard' },
  'mismatch': { mark: 'exceeded', words: 'a ratio does not fit' },
  'not-verified': { mark: 'tight', words: 'not verified' },
  'cannot-tell': { mark: 'unknown', words: 'cannot tell' },
  'not-heard': { mark: 'unknown', words: 'not heard' },
};

/** How fast the rotor turned in a recording, and who speaks in it. */
export function ListenPage(): ReactNode {
  const open = useMachine();
  const sound = useMemo(() => machineSound(open.machine), [open.machine]);
  const { listening, take, stop, refuse } = useListening(sound);
  const picker = useRef<HTMLInputElement>(null);
  const onTrouble = useCallback((problem: string): void => refuse('Microphone', problem), [refuse]);
  const microphone = useMicrophone(take, onTrouble);
  const [over, setOver] = useState(false);
  if (sound === undefined || sound.families.length === 0) return <Silent to={machineAt(open.id, 'file')} />;
  const mark = listening.at === 'answer' ? marks[listening.hearing.verdict] : undefined;
  return (
    <Sheet
      title="Listen"
      answer={mark && listening.at === 'answer' && <Answer hearing={listening.hearing} sound={sound} mark={mark.mark} words={mark.words} />}
      actions={(
        <>
          {microphone.since === undefined ? <Button onClick={microphone.start} disabled={listening.at === 'work'}>Record</Button> : <Button onClick={microphone.end}><Recorded since={microphone.since} /></Button>}
          <Button kind="ink" onClick={() => picker.current?.click()}>Open a recording</Button>
          <input ref={picker} type="file" className="unseen" tabIndex={-1} aria-label="Recording" accept="audio/*,video/mp4,.wav,.csv,.tsv,.txt" onChange={({ target }) => {
            const file = target.files?.[0];
            target.value = '';
            if (file) take(file);
          }} />
        </>
      )}
      notes={<Notes sound={sound} />}
      block={{ units: 'Hz, dB', ...(listening.at === 'answer' ? { scale: `${showNumber(listening.waterfall.binWidth, { decimals: 1 })} Hz a bin` } : {}), ...(mark ? { state: mark } : { state: { mark: 'unknown' as const, words: 'nothing heard yet' } }), caution }}
    >
      <div
        className={over ? 'listen-drop over' : 'listen-drop'}
        onDragOver={(event) => {
          event.preventDefault();
          setOver(true);
        }}
        onDragLeave={() => setOver(false)}
        onDrop={(event) => {
          event.preventDefault();
          setOver(false);
          const file = event.dataTransfer.files[0];
          if (file) take(file);
        }}
      >
        <Body listening={listening} open={open} sound={sound} onStop={stop} onWhole={(file) => take(file, true)} />
      </div>
    </Sheet>
  );
}

function Answer({ hearing, sound, mark, words }: { readonly hearing: Hearing; readonly sound: MachineSound; readonly mark: MarkState; readonly words: string }): ReactNode {
  const suspects = (hearing.lines ?? []).filter((line) => !explainLine(sound, line).expected).length + (hearing.flaws ?? []).length;
  const told = hearing.speed !== undefined && hearing.verdict !== 'cannot-tell';
  return (
    <>
      {told && <strong>{showQuantity(hearing.speed!, 'rpm', { significant: 5 })}</strong>}
      <StateWord state={mark}>{words}</StateWord>
      {told && suspects > 0 && <StateWord state="tight">{suspects === 1 ? '1 line to look at' : `${suspects} lines to look at`}</StateWord>}
    </>
  );
}

function Body({ listening, open, sound, onStop, onWhole }: { readonly listening: Listening; readonly open: ReadableMachine; readonly sound: MachineSound; readonly onStop: () => void; readonly onWhole: (file: File) => void }): ReactNode {
  switch (listening.at) {
    case 'nothing':
      return (
        <Empty title="Drop a recording here">
          <p>Ten seconds of steady running, from a phone or an accelerometer: WAV, what a phone records, or a table of time and acceleration. The sound stays on this device; the logbook gets only the lines that you keep.</p>
        </Empty>
      );
    case 'work':
      return (
        <Empty title={`Listening to ${listening.name}`} next={<Button onClick={onStop}>Stop</Button>}>
          <p><progress className="listen-progress" value={listening.progress.part} aria-label="Listening" /></p>
          <p className="soft">{listening.progress.words}.</p>
        </Empty>
      );
    case 'refused':
      return <Empty title="This cannot be heard"><p role="alert">{listening.problem}</p></Empty>;
    case 'answer':
      return <HeardSheet key={listening.name} heard={listening} open={open} sound={sound} onWhole={() => onWhole(listening.file)} />;
  }
}

function HeardSheet({ heard: { name, hearing, pieces, waterfall, warnings, seconds }, open, sound, onWhole }: { readonly heard: Listening & { readonly at: 'answer' }; readonly open: ReadableMachine; readonly sound: MachineSound; readonly onWhole: () => void }): ReactNode {
  const { id, machine, plan } = open;
  const [ref, width] = useWidth<HTMLDivElement>();
  const words = hearingWords(hearing, (speed, decimals) => showQuantity(speed, 'rpm', { decimals }));
  const told = hearing.verdict !== 'cannot-tell' && hearing.verdict !== 'not-heard';
  const rows = useMemo(() => heardRows(machine, plan, sound, hearing), [machine, plan, sound, hearing]);
  return (
    <>
      <section className="area">
        <div className="area-head"><h2>What was heard</h2><span className="small soft">{name}, {hearing.seconds.toFixed(1)} s{hearing.from > 0 ? ` from ${hearing.from.toFixed(0)} s on, where it is loudest` : ''}</span></div>
        {words.map((each) => <p key={each}>{each}</p>)}
        {told && hearing.mismatch && hearing.mismatch.otherRatios.length > 0 && <p><LinkButton to={machineAt(id, 'file')}>Open the file</LinkButton></p>}
        {pieces.length === 1 && seconds > hearing.seconds + 1 && <p className="listen-keep"><Button onClick={onWhole}>Listen to all {showNumber(seconds, { decimals: 0 })} s</Button></p>}
        {warnings.map((each) => <p key={each} className="soft">{each}</p>)}
        <div ref={ref}>
          <SoundPlot hearing={hearing} waterfall={waterfall} sound={sound} suspects={told ? rows.worth : []} seconds={seconds} width={width} />
          {told && hearing.track && (
            <>
              <h3 className="listen-h">Main rotor over time, rpm</h3>
              <SpeedPlot hearings={pieces} width={width} />
              <EnvelopePlot hearing={hearing} sound={sound} width={width} />
            </>
          )}
        </div>
      </section>
      {pieces.length > 1 && <Pieces pieces={pieces} />}
      {told && hearing.lines && <section className="area"><div className="area-head"><h2>Who speaks</h2><span className="small soft">{hearing.unit === undefined ? 'relative levels: the sensor is not calibrated' : `heights in ${hearing.unit}, as the file states them`}</span></div><LineTable id={id} rows={rows} unit={hearing.unit} /></section>}
      {told && <AgainstBaseline key={`${name} ${hearing.from}`} open={open} sound={sound} hearing={hearing} />}
    </>
  );
}

/** How long is recorded, told every second. */
function Recorded({ since }: { readonly since: number }): ReactNode {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setSeconds(Math.floor((Date.now() - since) / 1000)), 250);
    return () => clearInterval(timer);
  }, [since]);
  return `Stop and listen, ${seconds} s`;
}

function Notes({ sound }: { readonly sound: MachineSound }): ReactNode {
  return (
    <>
      <Note title="Fit">One speed is fitted to all lines of the machine at once, by the gear ratios of the file. Numbers in boxes: order of each shaft, how often in one of its turns. Letters: as in the table.</Note>
      <Note title="What moves">The speed is the one that reaches the microphone: walking pace towards it adds 0.4 %.</Note>
      <Note title="Causes">Common practice, no source. They say where to look, not what is wrong.</Note>
      {sound.missing.length > 0 && <Note title="In the file">More would be heard with {sound.missing.join(', ')}.</Note>}
    </>
  );
}

function Silent({ to }: { readonly to: string }): ReactNode {
  return (
    <Sheet title="Listen" answer={<StateWord state="unknown">no rotor to listen for</StateWord>} block={{ caution }}>
      <Empty title="The file names no main rotor yet" next={<LinkButton to={to} kind="ink">Open the file</LinkButton>}>
        <p>With the shafts, the meshes between them, and two rotors with their blades, a recording tells how fast they turn.</p>
      </Empty>
    </Sheet>
  );
}
