import type { Command } from 'commander';
import { chooseShims, LARGEST_GAP, shimsAhead, shimTask, type Shims, type ShimPick, type ShimTask } from '@rotorwright/build';
import { endPlays } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { findMachine, homeOption, type HomeOption } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { readQuantityOption } from '../read-option.ts';
import { paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface ShimsOptions extends HomeOption {
  readonly measured?: string;
  readonly fitted?: string;
  readonly json?: true;
}

export function shimsCommand(program: Command, act: Act): void {
  program
    .command('shims')
    .summary('choose shims from the bag by the play that you measured')
    .description('Says which shims of the bag give the play that the file wants.\nStatus 1 when none does; the nearest misses are told. Without --measured it says\nwhat play to expect from the sizes of the file, and which shims would do.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('<measurement>', 'measurement that decides the shim, or the shim itself')
    .option('--measured <play>', 'play that was measured, with its unit: "0.17 mm"')
    .option('--fitted <thickness>', 'thickness of the shims that were in place then', '0 mm')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright shims whimbrel main-grip.A/play --measured "0.17 mm"')
    .action(act((terminal, [machine, measurement], options: ShimsOptions) => answer(terminal, machine, measurement ?? '', options)));
}

async function answer(terminal: Terminal, argument: string | undefined, asked: string, options: ShimsOptions): Promise<Status> {
  const { machine } = findMachine(terminal, argument, options);
  const decided = [...machine.parts.values()].flatMap(({ until }) => (until === undefined ? [] : [until]));
  const id = machine.parts.get(asked)?.until ?? asked;
  if (!machine.measurements.has(id)) throw new WrongInput(`${machine.name} has no measurement “${asked}” that decides a shim. ${nearestTo(asked, decided)}`);
  const task = shimTask(machine, id);
  if ('missing' in task) throw new WrongInput(`${machine.name}: ${task.missing}.`);
  const measured = readQuantityOption('--measured', options.measured, 'm', '0.17 mm');
  if (measured === undefined) return ahead(terminal, machine, id, task, options);
  const gap = measured + (readQuantityOption('--fitted', options.fitted, 'm', '0.1 mm') ?? 0);
  if (!(measured >= 0 && gap >= 0 && gap <= LARGEST_GAP)) throw new WrongInput(`--measured and --fitted together must be from 0 to ${mm(LARGEST_GAP)}; given: ${mm(gap)}.`);
  const { bag, window, part } = task;
  const choice = chooseShims(bag, gap, window);
  if (options.json) await terminal.write(`${JSON.stringify({ measurement: id, shim: part.id, gap, window, bag, ...choice })}\n`);
  else {
    const rows = choice.fits.map((pick) => [shimWords(pick), mm(pick.total), mm(pick.leaves)]);
    const say = (words: string): string => paragraph(words, terminal.columns);
    const lines = choice.fits[0] !== undefined
      ? [say(`Fit ${shimWords(choice.fits[0])}: that leaves ${mm(choice.fits[0].leaves)}, nearest to the middle of ${mm(window.min)} to ${mm(window.max)}.`), table([{ title: 'shims' }, { title: 'together', right: true }, { title: 'leaves', right: true }], rows, terminal.columns)]
      : [say(`None of the bag fits: ${mm(window.min)} to ${mm(window.max)} is wanted, the play without shims is ${mm(gap)}.`), ...missWords(choice.loose, choice.tight, window).map(say)];
    const several = (choice.fits[0]?.shims.reduce((sum, { count }) => sum + count, 0) ?? 0) > 2 ? [say('Put the thinnest between thicker ones, so that it cannot curl (common practice, no source).')] : [];
    await terminal.write(`${[...lines, ...several, ...(choice.fits.length > 0 ? [say('Measure again with it in place: that is what is signed.')] : [])].join('\n')}\n`);
  }
  return choice.fits.length > 0 ? 0 : 1;
}

/** What the sizes of the file let expect, before anything is measured. */
async function ahead(terminal: Terminal, machine: Machine, id: string, { bag, window, part }: ShimTask, options: ShimsOptions): Promise<Status> {
  const play = endPlays(machine).find(({ stack, shims }) => stack.id === machine.measurements.get(id)?.of && shims.length > 0);
  const [low, high, least, most] = [play?.low?.value, play?.high?.value, play?.least?.value, play?.most?.value];
  if (low === undefined || high === undefined || least === undefined || most === undefined) {
    const unknown = play?.nominal.missing ?? [];
    throw new WrongInput(`--measured is missing: give the play that you measured, such as --measured "0.17 mm".${unknown.length > 0 ? ` To expect it from sizes, the file lacks ${unknown.join(' and ')}.` : ''}`);
  }
  const { reaches, gaps } = shimsAhead(bag, { min: low, max: high }, window);
  if (options.json) await terminal.write(`${JSON.stringify({ measurement: id, shim: part.id, window, bag, expected: { least, low, high, most }, reaches, gaps })}\n`);
  else {
    const say = (words: string): string => paragraph(words, terminal.columns);
    const rows = reaches.map((reach) => [shimWords(reach), mm(reach.total), `${mm(reach.from)} to ${mm(reach.to)}`]);
    await terminal.write(`${[
      say(`Expect ${mm(low)} to ${mm(high)} of play before shims in 99.7 of 100; ${mm(least)} to ${mm(most)} at the worst. ${mm(window.min)} to ${mm(window.max)} is wanted in the end.`),
      table([{ title: 'shims' }, { title: 'together', right: true }, { title: 'does for a play of', right: true }], rows, terminal.columns),
      ...gaps.map(({ from, to }) => say(`Nothing in the bag does for ${mm(from)} to ${mm(to)}.`)),
      say('Measure the play before you choose: --measured "0.17 mm".'),
    ].join('\n')}\n`);
  }
  return gaps.length > 0 ? 1 : 0;
}

const mm = (length: number): string => showQuantity(length, 'mm', { significant: 4 });
const shimWords = ({ shims }: { readonly shims: readonly Shims[] }): string => (shims.length === 0 ? 'no shim' : shims.map(({ thickness, count }) => `${count} × ${mm(thickness)}`).join(' and '));

function missWords(loose: ShimPick | undefined, tight: ShimPick | undefined, window: { readonly min: number; readonly max: number }): readonly string[] {
  return [
    ...(loose ? [`Nearest, too loose by ${mm(loose.leaves - window.max)}: ${shimWords(loose)} leaves ${mm(loose.leaves)}.`] : []),
    ...(tight ? [`Nearest, too tight by ${mm(window.min - tight.leaves)}: ${shimWords(tight)} leaves ${mm(tight.leaves)}.`] : []),
  ];
}
