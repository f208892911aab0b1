import { existsSync, readFileSync } from 'node:fs';
import { randomUUID } from 'node:crypto';
import path from 'node:path';
import type { Command } from 'commander';
import { bagsFromList, bagsOf, needs, planBuild, sizeWords, type KitBag } from '@rotorwright/build';
import { countBags, readNewEntry, wantedOf, type BagCount, type CountedLine } from '@rotorwright/logbook';
import { bookOf, findMachine, homeOption, withHome, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface CountOptions extends HomeOption {
  readonly by?: string;
  readonly missing?: readonly string[];
  readonly damaged?: readonly string[];
  readonly replaced?: readonly string[];
  readonly shopping?: true;
  readonly list?: string;
  readonly json?: true;
}

export function countCommand(program: Command, act: Act): void {
  program
    .command('count')
    .summary('count the bags of the kit in, and list what to buy')
    .description('Shows what was counted, bag by bag. With --by, puts one bag on record: all of it is there, but for what you name.\nStatus 1 when something is short.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('[bag]', 'id of one bag')
    .option('--by <name>', 'who counts')
    .option('--missing <item...>', 'what is not there, as ITEM or ITEM=COUNT')
    .option('--damaged <item...>', 'what is no good')
    .option('--replaced <item...>', 'what was put in from elsewhere')
    .option('--shopping', 'what to buy, and what this build will need')
    .option('--list <file>', 'a list as bags of the file: lines of part,count,bag; the machine file with them in it goes to standard output')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright count whimbrel bag-3 --by Maren --missing tail-case/post=1')
    .action(act((terminal, [machine, bag], options: CountOptions) => count(terminal, machine, bag, options)));
}

async function count(terminal: Terminal, argument: string | undefined, bagId: string | undefined, options: CountOptions): Promise<Status> {
  const named = findMachine(terminal, argument, options);
  if (options.list !== undefined) return withList(terminal, named, options.list);
  const bags = bagsOf(named.machine);
  const bag = bags.find(({ id }) => id === bagId);
  if (bagId !== undefined && bag === undefined) throw new WrongInput(`${named.machine.name} has no bag “${bagId}”. ${nearestTo(bagId, bags.map(({ id }) => id))}`);
  if (options.by !== undefined) await record(terminal, named, bag, options);
  else if (options.missing ?? options.damaged ?? options.replaced) throw new WrongInput('Say who counts: --by NAME.');
  const counts = countBags(bags, await bookOf(terminal, named.id, options));
  const shown = bag === undefined ? counts : counts.filter(({ id }) => id === bag.id);
  await terminal.write(options.shopping ? shopping(terminal, named, counts, options.json === true) : options.json ? `${JSON.stringify({ id: named.id, bags: shown })}\n` : setOut(terminal, named, shown, bag !== undefined));
  return shown.some(({ state }) => state === 'short') ? 1 : 0;
}

async function record(terminal: Terminal, named: NamedMachine, bag: KitBag | undefined, options: CountOptions): Promise<void> {
  if (bag === undefined) throw new WrongInput('Say which bag you have counted: rotorwright count MACHINE BAG --by NAME.');
  const [missing, damaged, replaced] = [options.missing, options.damaged, options.replaced].map((given) => piecesIn(given ?? [], bag)) as [Pieces, Pieces, Pieces];
  const lines = bag.lines.map(({ item, count: wanted }): CountedLine => {
    const sound = wanted - (missing.get(item) ?? 0) - (damaged.get(item) ?? 0);
    if (sound < 0) throw new WrongInput(`${item}: more are missing or damaged than the ${wanted} that ${bag.id} should hold.`);
    return { item, wanted, sound, ...(damaged.has(item) && { damaged: damaged.get(item) ?? 0 }), ...(replaced.has(item) && { replaced: replaced.get(item) ?? 0 }) };
  });
  const read = readNewEntry({ id: randomUUID(), machine: named.id, at: terminal.now().toISOString(), by: options.by, body: { kind: 'counted', bag: bag.id, lines } });
  if (!read.ok) throw new WrongInput(`Nothing was recorded: ${read.problems.join('; ')}.`);
  const entry = await withHome(terminal, options, (home) => home.logbook.append(read.entry));
  if (!options.json) terminal.say(`Counted ${bag.id} of ${named.id} as entry ${entry.number}, by ${entry.by}.`);
}

type Pieces = ReadonlyMap<string, number>;

function piecesIn(given: readonly string[], bag: KitBag): Pieces {
  return new Map(given.map((text) => {
    const [item = '', pieces = '1'] = text.split('=');
    if (!bag.lines.some((line) => line.item === item)) throw new WrongInput(`${bag.id} holds no “${item}”. ${nearestTo(item, bag.lines.map((line) => line.item))}`);
    if (!/^\d{1,5}$/.test(pieces) || Number(pieces) < 1) throw new WrongInput(`${item}: how many must be a whole number from 1; given: ${pieces}.`);
    return [item, Number(pieces)];
  }));
}

function setOut(terminal: Terminal, { machine }: NamedMachine, bags: readonly BagCount[], whole: boolean): string {
  if (bags.length === 0) return `${machine.name} has no bags and no modules yet. Write bags: into the file, or give a list with --list.\n`;
  const words = { uncounted: 'not counted', short: 'short', complete: 'complete' } as const;
  const rows = whole
    ? bags.flatMap(({ lines }) => lines.map((line) => [String(line.count), line.item, [line.title, line.size].filter(Boolean).join(' '), line.counted === undefined ? 'not counted' : line.short > 0 ? `short of ${line.short}` : 'there']))
    : bags.map((bag) => [bag.id, bag.title, String(bag.lines.length), `${words[bag.state]}${bag.by === undefined ? '' : `, ${bag.by}`}`]);
  const columns = whole ? [{ title: 'count', right: true }, { title: 'item', breaks: true }, { title: 'what', breaks: true }, { title: 'state', breaks: true }] : [{ title: 'bag', breaks: true }, { title: 'title', breaks: true }, { title: 'kinds', right: true }, { title: 'state', breaks: true }];
  const complete = bags.filter(({ state }) => state === 'complete').length;
  return `${table(columns, rows, terminal.columns)}\n${complete} of ${bags.length} ${bags.length === 1 ? 'bag' : 'bags'} complete.\n`;
}

function shopping(terminal: Terminal, { machine, id }: NamedMachine, counts: readonly BagCount[], json: boolean): string {
  const wanted = wantedOf(counts);
  const needed = needs(planBuild(machine).steps.values());
  const uncounted = counts.filter(({ state }) => state === 'uncounted').length;
  if (json) return `${JSON.stringify({ id, wanted, uncounted, fasteners: needed.fasteners, consumables: needed.consumables.map(({ name }) => name), tools: needed.tools.map(({ name }) => name) })}\n`;
  const rows = wanted.map((line) => [String(line.buy), [line.title, line.size].filter(Boolean).join(' '), line.code ?? '', line.price ?? '', [`of ${line.bag}`, line.fromDrawer > 0 ? `${line.fromDrawer} from the drawer` : ''].filter(Boolean).join(', ')]);
  const list = (title: string, names: readonly string[]): readonly string[] => (names.length === 0 ? [] : [paragraph(`${title}: ${names.join(', ')}.`, terminal.columns, '  ')]);
  return `${[
    wanted.length === 0 ? 'Nothing that was counted is short.' : table([{ title: 'buy', right: true }, { title: 'what', breaks: true }, { title: 'code' }, { title: 'price' }, { title: 'why', breaks: true }], rows, terminal.columns),
    ...(uncounted > 0 ? [`${uncounted} ${uncounted === 1 ? 'bag is' : 'bags are'} not counted yet.`] : []),
    ...list('Screws, nuts, pins', needed.fasteners.map((one) => `${one.count} × ${one.kind.replaceAll('-', ' ')} ${sizeWords(one)}`.trim())),
    ...list('Compounds, greases, cleaners', needed.consumables.map(({ name }) => name)),
    ...list('Tools', needed.tools.map(({ name }) => name)),
  ].join('\n')}\n`;
}

async function withList(terminal: Terminal, { file }: NamedMachine, list: string): Promise<Status> {
  const [from, to] = [list, file].map((each) => path.resolve(terminal.folder, each)) as [string, string];
  if (!existsSync(from)) throw new WrongInput(`There is no file ${list}.`);
  const read = bagsFromList(readFileSync(to, 'utf8'), readFileSync(from, 'utf8'));
  if (!read.ok) throw new WrongInput(`Nothing was written.\n${read.problems.slice(0, 20).join('\n')}`);
  await terminal.write(read.text);
  terminal.say(`${read.lines} lines in ${read.bags} bags. Keep what stands on standard output as the machine file.`);
  return 0;
}
