import type { Command } from 'commander';
import { chainsFrom, chainsOf, chainTitle, chanceWords, countPoints, eventWords, failureWords, gainWords, hazardChance, holds, importances, keeps, listLengths, missing, omissionRange, pairsOf, planBuild, shareWords, stepsOf, thingTitle, waysOfWorking, worstState, type Chain, type HazardHolds, type Holds, type Importance } from '@rotorwright/build';
import { replay, type StepState } from '@rotorwright/logbook';
import { bookOf, findMachine, homeOption, sayFindings, type HomeOption, type NamedMachine } from '../machine-argument.ts';
import { nearestTo } from '../nearest.ts';
import { painter, paragraph, table, type Terminal } from '../terminal/index.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';
import { stateWords } from './state-words.ts';

interface HoldsOptions extends HomeOption {
  readonly json?: true;
}

export function holdsCommand(program: Command, act: Act): void {
  program
    .command('holds')
    .summary('say what keeps what in place, and what if it is missed')
    .description('Derives from the file what keeps each part in place, and what brings each hazard\nabout.\nStatus 1 when something that a hazard hangs on works loose by itself, when a\nhazard cannot be followed to its causes, or, once the book has been begun, when\none slip is not signed for or its compound still cures.')
    .argument('<machine>', 'machine file, or id of a machine in the home folder')
    .argument('[of]', 'a hazard, or a part, joint or stack')
    .option(...homeOption)
    .option('--json', 'the answer as JSON')
    .addHelpText('after', '\nExample:\n  rotorwright holds examples/whimbrel/machine.yaml tail-case/spur')
    .action(act((terminal, [machine, of], options: HoldsOptions) => show(terminal, machine, of, options)));
}

interface Shown {
  readonly named: NamedMachine;
  readonly held: Holds;
  readonly states: ReadonlyMap<string, StepState>;
  readonly terminal: Terminal;
}

async function show(terminal: Terminal, argument: string | undefined, of: string | undefined, options: HoldsOptions): Promise<Status> {
  const named = findMachine(terminal, argument, options);
  const held = holds(named.machine);
  const book = await bookOf(terminal, named.id, options);
  const states = replay(planBuild(named.machine), book, terminal.now()).steps;
  const shown: Shown = { named, held, states, terminal };
  const hazard = of === undefined ? undefined : held.hazards.get(of);
  const hazards = of === undefined ? [...held.hazards.values()] : hazard === undefined ? [] : [hazard];
  const [data, text] = of === undefined ? overview(shown) : hazard === undefined ? aboutThing(shown, of) : aboutHazard(shown, hazard);
  await terminal.write(options.json ? `${JSON.stringify({ id: named.id, ...data })}\n` : `${text}\n`);
  const found = sayFindings(terminal, named, held.findings.filter(({ code, path }) => code !== 'place/unknown' && (of === undefined || path === hazard?.hazard.path)));
  return found === 1 || isBroken(shown, hazards, book.length > 0) ? 1 : 0;
}

/** A book without an entry is that of a machine not begun: what is open there is no finding. */
function isBroken({ states }: Shown, hazards: readonly HazardHolds[], begun: boolean): boolean {
  const points = hazards.flatMap(({ singlePoints }) => singlePoints);
  return points.some(({ step, events }) => events.some(({ kind }) => kind === 'loose') || (begun && worstState([step], states) !== 'signed'));
}

type Answer = readonly [data: object, text: string];

function overview({ named, held, states, terminal }: Shown): Answer {
  const rows = [...held.hazards.values()].map((hazard) => ({ hazard, counts: countPoints([hazard], states), chance: hazardChance(held, hazard) }));
  const data = { hazards: rows.map(({ hazard, counts, chance }) => ({ ...hazardData(held, hazard), counts, chance })), findings: held.findings };
  const { machine, file } = named;
  if (rows.length === 0) return [data, `${machine.name} names no hazards yet. Say what must not happen under hazards: in ${file}.`];
  const paint = painter(terminal.colour);
  const cells = rows.map(({ hazard: { hazard, singlePoints }, counts, chance }) => [
    `${hazard.id}`, hazard.endsIn, String(singlePoints.length), String(counts.signed), String(counts.undone), chance === undefined ? 'unknown' : chanceWords(chance['ticked list']),
  ]);
  const { total, signed, undone, open, curing } = countPoints(held.hazards.values(), states);
  return [data, [
    paint('bold', machine.name),
    table([{ title: 'hazard', breaks: true }, { title: 'ends in' }, { title: 'one slip', right: true }, { title: 'signed', right: true }, { title: 'undone', right: true }, { title: 'missed, list ticked' }], cells, terminal.columns),
    '',
    paragraph(`Steps of which one slip brings a hazard about: ${total}; ${signed} signed, ${open} open, ${undone} undone, ${curing} curing.`, terminal.columns),
    ...chanceNote(terminal),
    ...unknownNote(held, terminal),
  ].join('\n')];
}

function unknownNote({ findings }: Holds, { columns }: Terminal): readonly string[] {
  const count = findings.filter(({ code }) => code === 'place/unknown').length;
  return count === 0 ? [] : [paragraph(`Parts of which the file does not say what keeps them: ${count}. rotorwright check names them.`, columns)];
}

function aboutHazard(shown: Shown, hazard: HazardHolds): Answer {
  const { held, states, terminal, named: { machine } } = shown;
  const chance = hazardChance(held, hazard);
  const pairs = pairsOf(hazard);
  const chains = chainsOf(held, hazard);
  const weights = importances(held, hazard, 'ticked list');
  const data = { ...hazardData(held, hazard), counts: countPoints([hazard], states), chance, importance: weights, pairs, chains };
  const paint = painter(terminal.colour);
  const lengthOf = listLengths(held);
  const { title, endsIn, id } = hazard.hazard;
  const points = hazard.singlePoints.map((point) => [point.step, failureWords(machine, point), stateWords(states.get(point.step), paint), chanceWords(omissionRange('ticked list', lengthOf(point.step)))]);
  return [data, [
    `${paint('bold', title)} (${id}), ends in ${endsIn}`,
    ...hazard.gaps.map((gap) => paragraph(`Not followed to its causes: ${gap}.`, terminal.columns, '  ')),
    ...(points.length === 0 ? [] : ['', 'One slip is enough:', table([{ title: 'step' }, { title: 'what fails', breaks: true }, { title: 'state' }, { title: 'missed, ticked' }], points, terminal.columns)]),
    ...(chains.length === 0 ? [] : ['', 'What keeps what, link by link:', chainTable(shown, chains)]),
    ...(pairs.length === 0 ? [] : ['', paragraph(`Two slips together: ${pairs.length} pairs, such as ${pairWords(held, pairs.find((pair) => pair.every((id) => held.events.get(id)?.kind === 'undone')) ?? pairs[0]!)}.`, terminal.columns)]),
    ...(chance === undefined ? [] : ['', 'Chance that omissions alone bring it about:', table([{ title: 'way of working' }, { title: 'chance' }], waysOfWorking.map((way) => [way, chanceWords(chance[way])]), terminal.columns), ...chanceNote(terminal)]),
    ...(weights === undefined ? [] : ['', 'What weighs most, with a ticked list:', weightTable(shown, weights)]),
  ].join('\n')];
}

const mostWeights = 6;

function weightTable({ held, states, terminal }: Shown, weights: readonly Importance[]): string {
  const paint = painter(terminal.colour);
  const rows = weights.slice(0, mostWeights).map((weight) => [`${eventWords(held.machine, weight.event)}: ${gainWords(weight)}`, shareWords(weight.share), weight.step, stateWords(states.get(weight.step), paint)]);
  return table([{ title: 'omission', breaks: true }, { title: 'share', right: true }, { title: 'guarded by', breaks: true }, { title: 'state' }], rows, terminal.columns);
}

function pairWords({ machine, events }: Holds, pair: readonly string[]): string {
  return pair.map((id) => eventWords(machine, events.get(id)!)).join(', and ');
}

/** @throws WrongInput when the machine has neither such a hazard nor such a thing */
function aboutThing(shown: Shown, id: string): Answer {
  const { held, named: { machine }, terminal } = shown;
  const thing = machine.thingOf.get(id);
  const isJoint = thing !== undefined && (machine.joints.has(thing) || machine.stacks.has(thing));
  const kept = keeps(held, id);
  if (kept.length === 0 && !isJoint) throw new WrongInput(`${machine.name} has no hazard, part, joint or stack “${id}”. ${nearestTo(id, [...machine.hazards.keys(), ...machine.parts.keys(), ...machine.joints.keys(), ...machine.stacks.keys()])}`);
  const paint = painter(terminal.colour);
  const chains = isJoint ? chainsFrom(held, [id]) : kept.flatMap((each) => each.chains);
  const heads = [...new Set([...(isJoint ? [id] : []), ...chains.flatMap(stepsOf)])];
  const missed = heads.map((step) => ({ step, ...missing(held, [step]) }));
  const name = (of: string): string => thingTitle(machine, of, '');
  const keptLines = kept.flatMap(({ body, state, chains, restsOn }) => [
    `${paint('bold', name(body))} (${body})${state === 'ground' ? ': everything else is mounted on it' : state === 'unknown' ? ': the file does not say what keeps it' : ''}`,
    ...(chains.length === 0 ? [] : [chainTable(shown, chains)]),
    ...(restsOn.length === 0 ? [] : [paragraph(`It rests on ${restsOn.join(', ')}.`, terminal.columns)]),
    '',
  ]);
  const effects = missed.map(({ step, comesOff, hazards }) => [step, comesOff.length === 0 ? 'nothing' : comesOff.length > 3 ? `${comesOff.slice(0, 3).join(', ')} and ${comesOff.length - 3} more` : comesOff.join(', '), hazards.join(', ') || 'none']);
  return [{ kept, chains, missed }, [
    ...(isJoint ? [`${paint('bold', name(id))} (${id})`, chainTable(shown, chains), ''] : keptLines),
    ...(effects.length === 0 ? [] : ['What if it is missed:', table([{ title: 'step', breaks: true }, { title: 'comes off', breaks: true }, { title: 'hazards', breaks: true }], effects, terminal.columns)]),
  ].join('\n').trimEnd()];
}

function chainTable({ named: { machine }, states, terminal }: Shown, chains: readonly Chain[]): string {
  const paint = painter(terminal.colour);
  const rows = chains.map((chain) => {
    const { part, on } = chainTitle(machine, chain);
    const about = `${part}${on === '' ? '' : ` on ${on.charAt(0).toLowerCase()}${on.slice(1)}`}${chain.backup ? ' (second line)' : ''}`;
    return [about, chain.links.map(({ words }) => words).join(' > '), stateWords({ state: worstState(stepsOf(chain), states), history: [] }, paint)];
  });
  return table([{ title: 'what is kept', breaks: true }, { title: 'by what, link by link', breaks: true }, { title: 'state' }], rows, terminal.columns);
}

function hazardData({ machine }: Holds, { hazard, gaps, singlePoints }: HazardHolds): object {
  return { id: hazard.id, title: hazard.title, endsIn: hazard.endsIn, gaps, singlePoints: singlePoints.map((point) => ({ ...point, fails: failureWords(machine, point) })) };
}

const chanceNote = ({ columns }: Terminal): readonly string[] => [
  paragraph('Chances rank habits and forecast nothing: NUREG/CR-1278 (from memory), steps and copies taken as independent, locks and parts taken to hold.', columns),
];
