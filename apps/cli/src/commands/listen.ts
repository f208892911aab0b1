import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Command } from 'commander';
import { planBuild, stepAbout } from '@rotorwright/build';
import { explainFlaw, explainLine, lineTitle, machineSound, type LineExplained, type MachineSound } from '@rotorwright/figures';
import { heardRecords, type HeardEntry } from '@rotorwright/logbook';
import type { Machine } from '@rotorwright/machine';
import { effectiveVelocity, hear, hearAll, hearingWords, isUnreadable, leastSeconds, readAccelerationTable, readWav, soundRecord, trendsOf, type HeardFlaw, type HeardLine, type Hearing, type LineTrend, type Recording, type SoundRecord } from '@rotorwright/signals';
import { showNumber, showQuantity } from '@rotorwright/units';
import { bookOf, findMachine, homeOption, type HomeOption } from '../machine-argument.ts';
import { paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';
import { enter } from './enter.ts';

interface ListenOptions extends HomeOption {
  readonly sensor: string;
  readonly keep?: string;
  readonly by?: string;
  readonly whole?: true;
  readonly json?: true;
}

export function listenCommand(program: Command, act: Act): void {
  program
    .command('listen')
    .summary('hear from a recording how fast the rotor turned')
    .description('Says how fast the main rotor turned, from sound (WAV) or acceleration (a table of time and acceleration), by the gear ratios of the file.\nRecord from behind the pilot line: nobody goes near a running machine to hear better.\nStatus 1 when it cannot be told, or a ratio does not fit the file.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('<recording>', 'WAV file, or table of time and acceleration')
    .option('--whole', 'all of a long recording, piece after piece, instead of its loudest fifteen seconds')
    .option('--sensor <words>', 'what records and where: only alike recordings are held against each other', 'phone')
    .option('--keep <healthy|flight>', 'put it into the logbook: as a healthy machine, which later recordings are held against, or as a flight')
    .option('--by <name>', 'who keeps it')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright listen whimbrel hover.wav\n  rotorwright listen whimbrel hover.wav --keep healthy --by Maren\n  rotorwright listen whimbrel hover.wav --sensor "phone, three metres behind"')
    .action(act((terminal, [machine, recording], options: ListenOptions) => listen(terminal, machine, recording ?? '', options)));
}

async function listen(terminal: Terminal, argument: string | undefined, file: string, options: ListenOptions): Promise<Status> {
  if (options.keep !== undefined && options.keep !== 'healthy' && options.keep !== 'flight') throw new WrongInput(`--keep: “${options.keep}” is neither healthy nor flight.`);
  if (options.keep !== undefined && options.by === undefined) throw new WrongInput('Say who keeps it: --by NAME.');
  const { machine, id } = findMachine(terminal, argument, options);
  const sound = machineSound(machine);
  if (sound === undefined || sound.families.length === 0) throw new WrongInput(`${machine.name} has no main rotor whose sound could be known: its file wants rotors with shaft and blades.`);
  const recording = readRecording(terminal, file);
  for (const warning of recording.warnings) terminal.say(`${file}: ${warning}`);
  const seconds = (recording.channels[0]?.length ?? 0) / recording.rate;
  if (seconds < leastSeconds) throw new WrongInput(`${file} lasts ${Number(seconds.toFixed(2))} s; at least ${leastSeconds} s are wanted.`);
  const pieces = options.whole ? [...hearAll(recording, sound)] : [hear(recording, sound)];
  const hearing = pieces.reduce((best, each) => (each.margin > best.margin ? each : best));
  const record = soundRecord(hearing);
  const earlier = heardRecords(await bookOf(terminal, id, options), options.sensor);
  const trends = record === undefined ? [] : trendsOf(record, earlier);
  if (options.keep !== undefined) await keep(terminal, id, record, options);
  if (options.json) await terminal.write(`${JSON.stringify({ ...inJson(id, machine, sound, hearing), trends, ...(options.whole && { pieces: pieces.map((piece) => inJson(id, machine, sound, piece)) }) })}\n`);
  else await terminal.write(`${pieces.length > 1 ? `${pieceTable(terminal, pieces)}\n\n` : ''}${answer(terminal, machine, sound, hearing)}\n${against(terminal, sound, trends, earlier)}`);
  return hearing.verdict === 'heard' ? 0 : 1;
}

function pieceTable(terminal: Terminal, pieces: readonly Hearing[]): string {
  const rows = pieces.map((piece) => [`${piece.from.toFixed(0)} s`, `${(piece.from + piece.seconds).toFixed(0)} s`, hearingWords(piece, (speed, decimals) => showQuantity(speed, 'rpm', { decimals }))[0]!]);
  return `${table([{ title: 'from', right: true }, { title: 'to', right: true }, { title: 'what was heard', breaks: true }], rows, terminal.columns)}\n\nThe surest piece, from ${pieces.reduce((best, each) => (each.margin > best.margin ? each : best)).from.toFixed(0)} s on:`;
}

async function keep(terminal: Terminal, id: string, record: SoundRecord | undefined, options: ListenOptions): Promise<void> {
  if (record === undefined) throw new WrongInput('Nothing was kept: this recording does not say how fast the rotor turned.');
  const entry = await enter(terminal, id, options.by!, { kind: 'heard', healthy: options.keep === 'healthy', sensor: options.sensor, record }, options);
  if (!options.json) terminal.say(`Kept as entry ${entry.number} of ${id}, by ${entry.by}.`);
}

/** Lines against the healthy machine, those first that are new or have grown. */
function against(terminal: Terminal, sound: MachineSound, trends: readonly LineTrend[], earlier: readonly HeardEntry[]): string {
  const healthy = earlier.filter((each) => each.healthy);
  if (trends.length === 0) return healthy.length === 0 ? 'No healthy recording by this sensor is kept yet: --keep healthy.\n' : '';
  const changed = trends.filter(({ verdict }) => verdict !== 'as before');
  const rows = changed.map(({ line, verdict, change, earlier: levels }) => [lineTitle(sound, line), verdict === 'new' ? 'new' : `+${change!.toFixed(1)} dB`, [...levels, line.level].map((level) => level?.toFixed(0) ?? '·').join(' ')]);
  const head = `Against ${healthy.length} healthy ${healthy.length === 1 ? 'recording' : 'recordings'} since ${healthy[0]!.at.slice(0, 10)}: ${changed.length === 0 ? 'no line is new, none has doubled' : `${changed.length} of ${trends.length} lines are new or have doubled`}.`;
  return `\n${paragraph(head, terminal.columns)}\n${rows.length === 0 ? '' : `${table([{ title: 'line', breaks: true }, { title: 'change', right: true }, { title: 'dB, oldest first', breaks: true }], rows, terminal.columns)}\n`}`;
}

/** @throws WrongInput when it is neither sound nor a table that can be read */
function readRecording(terminal: Terminal, file: string): Recording {
  const full = path.resolve(terminal.folder, file);
  if (!statSync(full, { throwIfNoEntry: false })?.isFile()) throw new WrongInput(`There is no file “${file}”.`);
  const bytes = readFileSync(full);
  const read = /\.(?:csv|tsv|txt)$/iu.test(file) ? readAccelerationTable(bytes.toString('utf8')) : readWav(bytes);
  if (isUnreadable(read)) throw new WrongInput(`${file}: ${read.problem}`);
  return read;
}

interface Suspect extends LineExplained {
  /** Where it is measured or handled. */
  readonly step?: string;
}

/** What speaks in a recording, in the words of the machine, with the step to open. */
function suspectsOf(machine: Machine, sound: MachineSound, { lines = [], flaws = [] }: Hearing): { readonly lines: readonly (HeardLine & { readonly explained: Suspect })[]; readonly flaws: readonly (HeardFlaw & { readonly explained: Suspect })[] } {
  const plan = planBuild(machine);
  const withStep = (explained: LineExplained): Suspect => {
    const step = explained.expected ? undefined : stepAbout(machine, plan, explained.things);
    return step === undefined ? explained : { ...explained, step: step.id };
  };
  return { lines: lines.map((line) => ({ ...line, explained: withStep(explainLine(sound, line)) })), flaws: flaws.map((flaw) => ({ ...flaw, explained: withStep(explainFlaw(sound, flaw)) })) };
}

/** Rows of numbers as lists; the spectra are for drawing, and stay out. */
function inJson(id: string, machine: Machine, sound: MachineSound, hearing: Hearing): object {
  const { track, lines, flaws } = hearing;
  const suspects = suspectsOf(machine, sound, hearing);
  return {
    id, ...hearing, spectrum: undefined, envelope: undefined,
    ...(track && { track: { times: [...track.times], speeds: [...track.speeds] } }),
    ...(lines && { lines: suspects.lines }),
    ...(flaws && { flaws: suspects.flaws }),
  };
}

/** Lines told beside the answer. */
const mostLines = 12;

function answer(terminal: Terminal, machine: Machine, sound: MachineSound, hearing: Hearing): string {
  const words = hearingWords(hearing, (speed, decimals) => showQuantity(speed, 'rpm', { decimals }));
  const rows = hearing.groups.map(({ group, evidence, audible }) => [group, audible ? 'heard' : 'not heard', evidence.toFixed(1)]);
  const suspects = suspectsOf(machine, sound, hearing);
  const lookAt = ({ expected, inspect, step }: Suspect): string => (expected ? '' : step === undefined ? inspect : `${inspect} Step ${step}.`);
  const flaws = suspects.flaws.map(({ frequency, explained }) => [explained.seenAt, `${frequency.toFixed(1)} Hz`, '', explained.title, lookAt(explained)]);
  const lines = suspects.lines.slice(0, mostLines).map((line) => [line.explained.seenAt, `${line.frequency.toFixed(1)} Hz`, heightOf(line, hearing.unit), line.explained.title, lookAt(line.explained)]);
  const lineColumns = [{ title: 'line', breaks: true }, { title: 'at', right: true }, { title: hearing.unit === undefined ? 'over noise' : 'height', right: true, breaks: true }, { title: 'what speaks', breaks: true }, { title: 'look at', breaks: true }];
  return [
    ...words.map((each) => paragraph(each, terminal.columns)),
    ...(rows.length === 0 ? [] : [table([{ title: 'source' }, { title: '' }, { title: 'evidence', right: true }], rows, terminal.columns)]),
    ...(lines.length + flaws.length === 0 ? [] : ['', table(lineColumns, [...flaws, ...lines], terminal.columns)]),
  ].join('\n');
}

/** How high a line stands: in the units of a calibrated sensor, otherwise over the noise. */
function heightOf({ level, amplitude, frequency }: HeardLine, unit: string | undefined): string {
  return unit === 'm/s²' ? `${showNumber(amplitude, { significant: 3 })} m/s², ${showNumber(effectiveVelocity(amplitude, frequency) * 1000, { significant: 3 })} mm/s` : `${level.toFixed(0)} dB`;
}
