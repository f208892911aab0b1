import { lineTitle, type MachineSound } from '@rotorwright/figures';
import { heardRecords } from '@rotorwright/logbook';
import { soundRecord, trendsOf, type Hearing, type LineTrend } from '@rotorwright/signals';
import { showNumber } from '@rotorwright/units';
import { useId, useState, type ReactNode } from 'react';
import type { ReadableMachine } from '../../data/index.ts';
import { Button, dayOf, StateWord, useRecord } from '../../sheet/index.ts';

export interface AgainstBaselineProps {
  readonly open: ReadableMachine;
  readonly sound: MachineSound;
  readonly hearing: Hearing;
}

/** The recording against those of the healthy machine that are kept in the logbook; and a way to keep this one. */
export function AgainstBaseline({ open, sound, hearing }: AgainstBaselineProps): ReactNode {
  const known = [...new Set(heardRecords(open.entries).map((each) => each.sensor))];
  const [sensor, setSensor] = useState(known.at(-1) ?? 'phone');
  const book = useRecord(open);
  const [kept, setKept] = useState<'healthy' | 'flight'>();
  const id = useId();
  // What was kept a moment ago must not be held against itself.
  const [before] = useState(open.entries);
  const record = soundRecord(hearing);
  if (record === undefined) return null;
  const earlier = heardRecords(before, sensor.trim());
  const healthy = earlier.filter((each) => each.healthy);
  const trends = trendsOf(record, earlier);

  const keep = async (asHealthy: boolean): Promise<void> => {
    if (await book.enter({ kind: 'heard', healthy: asHealthy, sensor: sensor.trim(), record }, 'recording')) setKept(asHealthy ? 'healthy' : 'flight');
  };
  return (
    <section className="area">
      <div className="area-head"><h2>Against the healthy machine</h2><span className="small soft">{healthy.length === 0 ? 'no healthy recording by this sensor is kept yet' : `${healthy.length} kept since ${dayOf(healthy[0]!.at)}`}</span></div>
      {trends.length > 0 && <Trends trends={trends} sound={sound} />}
      <p className="listen-keep">
        <label htmlFor={id}>Recorded by</label>
        <input id={id} list={`${id}-known`} value={sensor} maxLength={80} onChange={({ target }) => setSensor(target.value)} />
        <datalist id={`${id}-known`}>{known.map((each) => <option key={each} value={each} />)}</datalist>
        <Button disabled={book.busy || kept !== undefined || sensor.trim() === ''} onClick={() => void keep(true)}>Keep as healthy</Button>
        <Button disabled={book.busy || kept !== undefined || sensor.trim() === ''} onClick={() => void keep(false)}>Keep as a flight</Button>
      </p>
      <p className="soft small">Only alike recordings can be compared: the same phone, the same place, the same flight.</p>
      {book.panel}
      {kept && <p role="status"><StateWord state="signed">kept {kept === 'healthy' ? 'as healthy' : 'as a flight'}</StateWord> Later recordings by {sensor.trim()} are held against it.</p>}
      {book.trouble && <p role="alert" className="field-problem">{book.trouble}</p>}
    </section>
  );
}

function Trends({ trends, sound }: { readonly trends: readonly LineTrend[]; readonly sound: MachineSound }): ReactNode {
  const changed = trends.filter(({ verdict }) => verdict !== 'as before');
  const rest = trends.length - changed.length;
  return (
    <>
      <p>{changed.length === 0 ? 'No line is new, none has doubled.' : `${changed.length} of ${trends.length} lines are new or have doubled.`}</p>
      {changed.length > 0 && (
        <div className="heard-lines" tabIndex={0} role="region" aria-label="Lines that are new or have grown">
          <table>
            <thead><tr><th scope="col">Line</th><th scope="col">Change</th><th scope="col">dB, oldest first</th></tr></thead>
            <tbody>
              {changed.map(({ line, verdict, change, earlier }) => (
                <tr key={`${line.source} ${line.multiple} ${line.order}`}>
                  <th scope="row"><StateWord state="tight">{lineTitle(sound, line)}</StateWord></th>
                  <td>{verdict === 'new' ? 'new' : `+${showNumber(change!, { decimals: 1 })} dB`}</td>
                  <td>{[...earlier, line.level].map((level) => (level === undefined ? '·' : showNumber(level, { decimals: 0 }))).join('  ')}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {changed.length > 0 && rest > 0 && <p className="soft small">{rest === 1 ? '1 line is' : `${rest} lines are`} as before.</p>}
    </>
  );
}
