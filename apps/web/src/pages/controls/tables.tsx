import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { ControlsReport, FigureSet, LinkSetting, Play, SetUpRow, WorstLean } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { Button, machineAt, StateWord } from '../../sheet/index.ts';

const show = (value: number | undefined, unit: string, significant = 3): string => (value === undefined ? '' : showQuantity(value, unit, { significant }));
const mm = (value: number | undefined): string => show(value, 'mm', 4);

/** Opens a figure into its working. */
interface Opening {
  readonly onOpen: (figure: string) => void;
}

function Opened({ figure, onOpen, children }: Opening & { readonly figure: string; readonly children: ReactNode }): ReactNode {
  return <button type="button" className="link" onClick={() => onOpen(figure)}>{children}</button>;
}

/** Length of every link, and how many turns that is. */
export function LinkTable({ links, onOpen }: { readonly links: readonly LinkSetting[] } & Opening): ReactNode {
  return (
    <div className="scrolls links">
      <table>
        <thead><tr><th scope="col">Link</th><th scope="col">Ball to ball</th><th scope="col">In the file</th><th scope="col">Turns</th><th scope="col">Thread in each end</th><th scope="col">Rod seen</th></tr></thead>
        <tbody>
          {links.map(({ link, wanted, given, turns, engaged, leastEngaged, seen }) => (
            <tr key={link.id}>
              <th scope="row">{link.title}</th>
              <td><Opened figure={`link-length ${link.id}`} onOpen={onOpen}>{mm(wanted)}</Opened></td>
              <td>{given === undefined ? '–' : mm(given)}</td>
              <td>{turnWords(turns)}</td>
              <td>{engaged === undefined ? '–' : leastEngaged !== undefined && engaged < leastEngaged ? <StateWord state="exceeded">{mm(engaged)}, least {mm(leastEngaged)}</StateWord> : `${mm(engaged)}${leastEngaged === undefined ? '' : `, least ${mm(leastEngaged)}`}`}</td>
              <td>{seen === undefined ? '–' : mm(seen)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

const turnWords = (turns: number | undefined): string =>
  turns === undefined ? '–' : turns === 0 ? 'leave it' : `${Math.abs(turns)} ${Math.abs(turns) === 1 ? 'turn' : 'turns'} ${turns > 0 ? 'longer' : 'shorter'}`;

/** What each hole of an arm reaches, and how fine it is. */
export function ArmTable({ arms }: Pick<ControlsReport, 'arms'>): ReactNode {
  return (
    <div className="scrolls">
      <table>
        <thead><tr><th scope="col">Arm</th><th scope="col">Hole</th><th scope="col">Turns to each side</th><th scope="col">One step at the blade</th><th scope="col">Verdict</th></tr></thead>
        <tbody>
          {arms.flatMap(({ path, holes, servos, take }) => holes.map(({ hole, fitted, turn, reaches, pitchPerStep }) => (
            <tr key={`${path} ${hole}`}>
              <th scope="row">{servos[0]?.title.split(',')[0]}</th>
              <td>{mm(hole)}{fitted ? ', fitted' : ''}</td>
              <td>{turn === undefined ? '–' : show(turn, '°')}</td>
              <td>{show(pitchPerStep, '°', 2)}</td>
              <td>{!reaches ? <StateWord state="exceeded">{turn === undefined ? 'does not reach' : 'too short'}</StateWord> : take === hole ? <StateWord state="holds">the shortest that reaches</StateWord> : 'reaches'}</td>
            </tr>
          )))}
        </tbody>
      </table>
    </div>
  );
}

/** What was measured last for a row, and where it is measured. */
export interface MeasuredRow {
  readonly words: string;
  readonly to: string;
}

const groups = { swashplate: 'Swashplate', tail: 'Tail', governor: 'Governor' } as const;

/** What to enter in the flight controller, and what to measure then: on paper with room for the pen. */
export function SetUpSheet({ rows, measured, onOpen }: { readonly rows: readonly SetUpRow[]; readonly measured: ReadonlyMap<string, MeasuredRow> } & Opening): ReactNode {
  return (
    <div className="scrolls set-up">
      {(Object.keys(groups) as (keyof typeof groups)[]).map((group) => {
        const own = rows.filter((row) => row.group === group);
        return own.length === 0 ? null : (
          <table key={group}>
            <caption>{groups[group]}</caption>
            <thead><tr><th scope="col">Enter or set</th><th scope="col">Wanted</th><th scope="col">Measured</th><th scope="col">How</th></tr></thead>
            <tbody>
              {own.map(({ key, title, value, shown, unit, words, measured: byGauge }) => (
                <tr key={key}>
                  <th scope="row">{title}</th>
                  <td className="wanted">{byGauge ? <Opened figure={key} onOpen={onOpen}>{show(value, shown ?? unit ?? '-', 4)}</Opened> : show(value, shown ?? unit ?? '-', 4)}</td>
                  <td className="measured">{byGauge && (measured.has(key) ? <Link href={measured.get(key)!.to}>{measured.get(key)!.words}</Link> : <span className="pen" aria-label="not measured yet" role="img" />)}</td>
                  <td className="how">{words}</td>
                </tr>
              ))}
            </tbody>
          </table>
        );
      })}
    </div>
  );
}

const degree = Math.PI / 180;

/** How straight, how separate, how even, how loose. */
export function QualityList({ plate, tail, set, machine, onOpen }: Pick<ControlsReport, 'plate' | 'tail'> & { readonly set: FigureSet; readonly machine: string } & Opening): ReactNode {
  const of = plate?.quality;
  const hardest = plate?.loads?.reduce((least, load) => ((load.margin ?? Infinity) < (least.margin ?? Infinity) ? load : least));
  const loaded = [hardest, tail?.load].filter((load) => load !== undefined);
  const rows: readonly (readonly [title: string, value: ReactNode])[] = [
    ...(of ? [
      ['Full cyclic moves collective by at most', show(of.cyclicMovesCollective, '°')],
      ['Full collective moves cyclic by at most', show(of.collectiveMovesCyclic, '°')],
      ['Right against left cyclic', show(of.leftRight, '°', 2)],
      ['Fore against aft cyclic', show(of.foreAft, '°', 2)],
      ['Pitch beyond the first harmonic', show(of.residual, '°', 2)],
    ] as const : []),
    ...(plate ? [['Plate leans at most', `${show(plate.envelope.tilt, '°')}${plate.plate.swashplate.tilt === undefined ? '' : ` of ${show(plate.plate.swashplate.tilt, '°')}`}`]] as const : []),
    ...(plate?.envelope.toDeadCentre ? [['Arm and rod, from in line, at least', show(plate.envelope.toDeadCentre.angle, '°')]] as const : []),
    ...(tail?.toDeadCentre ? [['Arm and rod of the tail, from in line, at least', show(tail.toDeadCentre.angle, '°')]] as const : []),
    ...(plate?.leanToBoom === undefined ? [] : [['A tip meets the boom when the disc leans back', show(plate.leanToBoom, '°')]] as const),
    ...(of ? [['One degree of a cyclic servo turns a blade by at most', show(of.pitchPerServo * degree, '°', 2)]] as const : []),
    ...(tail?.quality ? [['One degree of the tail servo, at mid travel, by', show(Math.abs(tail.quality.pitchPerServo) * degree, '°', 2)]] as const : []),
    ...[plate?.plate.rotor, tail?.tail.rotor].flatMap((rotor) => {
      const moment = rotor && set.get(`feathering-moment ${rotor.id}`);
      return moment?.value === undefined ? [] : [[`${rotor!.title}: what turns one blade flat`, <Opened key={rotor!.id} figure={moment.name} onOpen={onOpen}>{show(Math.abs(moment.value), 'N·m')}</Opened>] as const];
    }),
    ...loaded.flatMap((load) => [
      [`${load.servo.title}: torque at most`, show(load.torque, 'N·m')],
      [`${load.servo.title}: stall torque over that`, load.margin === undefined ? 'no torque in the file' : <Link href={machineAt(machine, 'margins', `?margin=${encodeURIComponent(`margin servo ${load.servo.id}`)}`)}>{show(load.margin, '-')}</Link>],
      [`${load.servo.title}: end to end, without load and with`, load.time === undefined ? 'no speed in the file' : `${show(load.time, 's')}, ${show(load.timeLoaded, 's') || 'stalls'}`],
    ] as const),
    ...(tail?.quality ? [['Tail pitch that the servo reaches', `${show(tail.quality.reach[0], '°')} to ${show(tail.quality.reach[1], '°')}`]] as const : []),
  ];
  return <dl className="quality">{rows.map(([title, value]) => <div key={title}><dt>{title}</dt><dd>{value}</dd></div>)}</dl>;
}

/** Balls by what is left of their limit, tightest first. */
export function LeanList({ leans, names, onShow }: { readonly leans: readonly WorstLean[]; readonly names: ReadonlyMap<string, string>; readonly onShow: (lean: WorstLean) => void }): ReactNode {
  return (
    <ul className="leans">
      {leans.slice(0, 5).map((lean) => (
        <li key={`${lean.link} ${lean.ball}`}>
          <Button className="small-button" onClick={() => onShow(lean)}>{names.get(lean.link) ?? lean.link}, {lean.ball === 'from' ? 'first' : 'second'} ball</Button>
          <StateWord state={lean.limit === undefined ? 'unknown' : lean.lean > lean.limit ? 'exceeded' : lean.limit < 1.25 * lean.lean ? 'tight' : 'holds'}>{show(lean.lean, '°')}{lean.limit === undefined ? ', no limit in the file' : ` of ${show(lean.limit, '°')}`}</StateWord>
        </li>
      ))}
    </ul>
  );
}

/** What reaches the blade of the slack of each place. */
export function PlayList({ play, names }: { readonly play: Play; readonly names: ReadonlyMap<string, string> }): ReactNode {
  const most = play.shares[0]?.atBlade ?? 1;
  return (
    <>
      <ul className="play">
        {play.shares.map(({ of, what, atBlade }) => (
          <li key={`${of} ${what}`}><span>{names.get(of) ?? of}: {what}</span><span className="bar" aria-hidden="true"><i style={{ width: `${(100 * atBlade) / most}%` }} /></span><span>{show(atBlade, '°', 2)}</span></li>
        ))}
      </ul>
      <p className="soft small">All together {show(play.sum, '°', 3)} at the blade, from stop to stop.{play.unknown.length > 0 ? ` No play is given by ${play.unknown.join(', ')}.` : ''}</p>
    </>
  );
}
