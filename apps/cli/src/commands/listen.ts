import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Command } from 'commander';
import { planBuild, stepAbout } from '@rotorwright/build';
import { explainFlaw, explainLine, machineSound, type LineExplained, type MachineSound } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { effectiveVelocity, hear, hearingWords, isUnreadable, leastSeconds, readAccelerationTable, readWav, type HeardFlaw, type HeardLine, type Hearing, type Recording } from '@rotorwright/signals';
import { showNumber, showQuantity } from '@rotorwright/units';
import { findMachine, homeOption, type HomeOption } from '../machine-argument.ts';
import { paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface ListenOptions extends HomeOption {
  readonly json?: true;
}

export function listenCommand(program: Command, act: Act): void {
  program
    .command('listen')
    .summary('hear from a recording how fast the rotor turned')
    .description('Says how fast the main rotor turned, from sound (WAV) or acceleration (a table of time and acceleration), by the gear ratios of the file.\nRecord from behind the pilot line: nobody goes near a running machine to hear better.\nStatus 1 when it cannot be told, or a ratio does not fit the file.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('<recording>', 'WAV file, or table of time and acceleration')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright listen whimbrel hover.wav')
    .action(act((terminal, [machine, recording], options: ListenOptions) => listen(terminal, machine, recording ?? '', options)));
}

async function listen(terminal: Terminal, argument: string | undefined, file: string, options: ListenOptions): Promise<Status> {
  const { machine, id } = findMachine(terminal, argument, options);
  const sound = machineSound(machine);
  if (sound === undefined || sound.families.length === 0) throw new WrongInput(`${machine.name} has no main rotor whose sound could be known: its file wants rotors with shaft and blades.`);
  const recording = readRecording(terminal, file);
  for (const warning of recording.warnings) terminal.say(`${file}: ${warning}`);
  const seconds = (recording.channels[0]?.length ?? 0) / recording.rate;
  if (seconds < leastSeconds) throw new WrongInput(`${file} lasts ${Number(seconds.toFixed(2))} s; at least ${leastSeconds} s are wanted.`);
  const hearing = hear(recording, sound);
  if (options.json) await terminal.write(`${JSON.stringify(inJson(id, machine, sound, hearing))}\n`);
  else await terminal.write(`${answer(terminal, machine, sound, hearing)}\n`);
  return hearing.verdict === 'heard' ? 0 : 1;
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
