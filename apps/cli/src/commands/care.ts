import type { Command } from 'commander';
import { bearingWords, careNotes, careOf, careWants, figures, meshWords, working, workingLines, type BearingCare, type Care, type Figure, type MeshCare } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { findMachine, homeOption, sayFindings, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { readQuantityOption } from '../read-option.ts';
import { branch, painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface CareOptions extends HomeOption {
  readonly speed?: string;
  readonly json?: true;
}

export function careCommand(program: Command, act: Act): void {
  program
    .command('care')
    .summary('say where to set a mesh, how warm a housing, when to grease')
    .description('For each mesh the centre distance at which it never binds, and its backlash cold and hot.\nFor each bearing how warm its housing must be for it to drop in, what must not get that\nhot, and after how much running it wants how much fresh grease.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('[of]', 'a mesh, a bearing, or a module: these alone; a mesh or a bearing with its working')
    .option('--speed <speed>', 'speed of engine or motor instead of that of the file: "14600 rpm"')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExamples:\n  rotorwright care examples/whimbrel/machine.yaml\n  rotorwright care examples/whimbrel/machine.yaml clutch/bearing-low')
    .action(act((terminal, [machine, of], options: CareOptions) => show(terminal, machine, of, options)));
}

async function show(terminal: Terminal, argument: string | undefined, of: string | undefined, options: CareOptions): Promise<Status> {
  const sourceSpeed = readQuantityOption('--speed', options.speed, 'rad/s', '14600 rpm');
  const named = findMachine(terminal, argument, options);
  const care = careOf(figures(named.machine, sourceSpeed === undefined ? {} : { sourceSpeed }));
  const meshes = care.meshes.filter(({ coupling }) => of === undefined || coupling.id === of);
  const bearings = care.bearings.filter(({ instance, part }) => of === undefined || [instance, part.id, part.module, part.module.split('.')[0]].includes(of));
  if (of !== undefined && meshes.length + bearings.length === 0) throw new WrongInput(`${named.machine.name} has no mesh or bearing “${of}”. ${nearestTo(of, [...care.meshes.map(({ coupling }) => coupling.id), ...care.bearings.flatMap(({ instance, part }) => [instance, part.module])])}`);
  const found = { ...care, meshes, bearings };
  if (options.json) await terminal.write(`${JSON.stringify(asJson(named.id, found))}\n`);
  else await terminal.write(`${[...overview(terminal, named, found), ...(of !== undefined && meshes.length + bearings.length === 1 ? workings(terminal, named, found) : [])].join('\n')}\n`);
  return sayFindings(terminal, named, []);
}

const asJson = (id: string, { meshes, bearings }: Care) => ({
  id,
  meshes: meshes.map(({ coupling, note, ...own }) => ({ of: coupling.id, title: coupling.title, ...(note === undefined ? {} : { note }), figures: own })),
  bearings: bearings.map(({ instance, part, note, ...own }) => ({ of: instance, title: part.title, ...(note === undefined ? {} : { note }), figures: own })),
});

function overview(terminal: Terminal, { machine }: NamedMachine, { set, meshes, bearings }: Care): readonly string[] {
  const paint = painter(terminal.colour);
  const say = (words: string): string => paragraph(words, terminal.columns);
  if (meshes.length + bearings.length === 0) return [`${machine.name} names no mesh of gears and no bearing in a stack.`];
  const wants = careWants({ set, meshes, bearings });
  return [
    paint('bold', machine.name),
    ...(meshes.length === 0 ? [] : [
      table([{ title: 'mesh', breaks: true }, { title: 'set the axes to', right: true }, { title: 'backlash then', right: true }, { title: 'coldest', right: true }, { title: 'hottest', right: true }, { title: '', breaks: true }], meshes.map((mesh) => meshRow(mesh)), terminal.columns),
      ...(wants.meshes === undefined ? [] : [say(wants.meshes)]),
      say(careNotes.meshes),
      '',
    ]),
    ...(bearings.length === 0 ? [] : [
      table([{ title: 'bearing' }, { title: 'housing at', right: true }, { title: 'grease after', right: true }, { title: 'so much', right: true }, { title: '', breaks: true }], bearings.map((bearing) => bearingRow(bearing)), terminal.columns),
      ...(wants.bearings === undefined ? [] : [say(wants.bearings)]),
      '',
      say(careNotes.warmth),
      say(careNotes.grease),
    ]),
  ];
}

const shown = (figure: Figure | undefined, significant = 3): string => (figure?.value === undefined ? '–' : showQuantity(figure.value, figure.shown, { significant }));

function meshRow(mesh: MeshCare): readonly string[] {
  const { coupling, distance, backlash, cold, hot } = mesh;
  return [coupling.title, shown(distance, 5), shown(backlash), shown(cold), shown(hot), meshWords(mesh)];
}

function bearingRow(bearing: BearingCare): readonly string[] {
  const { instance, interval, grease, warmth } = bearing;
  return [instance, shown(warmth), shown(interval), shown(grease, 2), bearingWords(bearing)];
}

/** How the figures of the one mesh or bearing came about: those that one calculation gives together, once. */
function workings(terminal: Terminal, { file }: NamedMachine, { set, meshes, bearings }: Care): readonly string[] {
  const own = [...meshes.map(({ distance }) => distance), ...bearings.flatMap(({ warmth, interval }) => [warmth, ...(interval ? [interval] : [])])];
  return own.flatMap((figure) => ['', ...workingLines(working(set, figure.name)!, file).map((line) => branch(line, terminal.columns))]);
}
