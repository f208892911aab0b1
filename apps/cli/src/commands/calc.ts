import { createInterface } from 'node:readline';
import { answer, catalogue, describe, isCalcProblem, type CalcProblem } from '@rotorwright/calculations';
import type { Command } from 'commander';
import { paragraph, table, type Terminal } from '../terminal/index.ts';
import { openInput, readJson } from '../read-json.ts';
import { WrongInput, type Status } from '../wrong-input.ts';
import type { Act } from './act.ts';

interface CalcOptions {
  readonly describe?: true;
  readonly batch?: string;
  readonly json?: true;
}

export function calcCommand(program: Command, act: Act): void {
  program
    .command('calc')
    .summary('use a calculation of the catalogue alone')
    .description('Runs one calculation of the catalogue, on inputs in JSON. Without an id, lists them all.\nA quantity is a text with its unit ("1.25 mm") or a bare number in SI.')
    .argument('[id]', 'id of the calculation')
    .argument('[input]', "file with the inputs as one JSON object, or '-' for standard input")
    .option('--describe', 'say what goes in, what comes out, formula, source, validity')
    .option('--batch <file>', "answer one {\"id\", \"inputs\"} a line; '-' for standard input")
    .option('--json', 'list or describe as JSON')
    .addHelpText('after', '\nExample:\n  echo \'{"angle": "20 °"}\' | rotorwright calc involute -')
    .action(act((terminal, [id, input], options: CalcOptions) => calc(terminal, id, input, options)));
}

async function calc(terminal: Terminal, id: string | undefined, input: string | undefined, options: CalcOptions): Promise<Status> {
  if (options.batch !== undefined) {
    if (id !== undefined || options.describe) throw new WrongInput('calc --batch takes a file of lines and nothing else; the ids stand in the lines.');
    await batch(terminal, options.batch);
  } else if (id === undefined) {
    if (options.describe) throw new WrongInput('calc --describe needs the id of a calculation. rotorwright calc lists them.');
    await list(terminal, options.json === true);
  } else if (options.describe) await tell(terminal, id, options.json === true);
  else await one(terminal, id, input);
  return 0;
}

async function list(terminal: Terminal, json: boolean): Promise<void> {
  const all = [...catalogue.values()];
  if (json) return terminal.write(`${JSON.stringify(all.map(({ id, title, section, summary }) => ({ id, title, section, summary })))}\n`);
  const rows = all.map(({ id, section, title }) => [id, section, title]);
  return terminal.write(`${table([{ title: 'id' }, { title: 'section' }, { title: 'what it is', breaks: true }], rows, terminal.columns)}\n`);
}

async function tell(terminal: Terminal, id: string, json: boolean): Promise<void> {
  const calculation = catalogue.get(id);
  if (calculation === undefined) throw problemText(answer(id, {}) as CalcProblem);
  if (json) {
    const { compute: _, ...description } = calculation;
    return terminal.write(`${JSON.stringify(description)}\n`);
  }
  const lines = describe(calculation).split('\n');
  const indented = (line: string): string => {
    const text = line.trimStart();
    const indent = ' '.repeat(line.length - text.length);
    return indent + paragraph(text, terminal.columns, `${indent}  `);
  };
  return terminal.write(lines.map(indented).join('\n'));
}

async function one(terminal: Terminal, id: string, input: string | undefined): Promise<void> {
  if (!catalogue.has(id)) throw problemText(answer(id, {}) as CalcProblem);
  if (input === undefined) throw new WrongInput(`calc ${id} needs its inputs: a file with a JSON object, or '-' for standard input. rotorwright calc ${id} --describe says what goes in.`);
  const answered = answer(id, await readJson(terminal, input));
  if (isCalcProblem(answered)) throw problemText(answered);
  await terminal.write(`${JSON.stringify(answered)}\n`);
}

/** Lines of answers are gathered before they are written: a write a line is what makes a thousand a second slow. */
const gathered = 64 * 1024;

async function batch(terminal: Terminal, file: string): Promise<void> {
  let out = '';
  let refused = 0;
  let total = 0;
  for await (const line of createInterface({ input: openInput(terminal, file), crlfDelay: Infinity })) {
    if (line.trim() === '') continue;
    total += 1;
    const answered = answerLine(line);
    if ('error' in answered) refused += 1;
    out += `${JSON.stringify(answered)}\n`;
    if (out.length > gathered) {
      await terminal.write(out);
      out = '';
    }
  }
  await terminal.write(out);
  if (refused > 0) terminal.say(`${refused} of ${total} lines could not be answered; each says why in its place.`);
}

function answerLine(line: string): object {
  let asked: unknown;
  try {
    asked = JSON.parse(line);
  } catch (error) {
    return { id: null, error: `The line is no JSON: ${(error as Error).message}` };
  }
  if (typeof asked !== 'object' || asked === null || Array.isArray(asked)) return { id: null, error: 'The line must be a JSON object {"id", "inputs"}.' };
  const { id, inputs, ...unknown } = asked as Readonly<Record<string, unknown>>;
  if (typeof id !== 'string') return { id: null, error: 'The line must name the id of a calculation.' };
  if (Object.keys(unknown).length > 0) return { id, error: `The line holds ${Object.keys(unknown).slice(0, 5).join(', ')}; it may hold id and inputs only.` };
  const answered = answer(id, inputs);
  return isCalcProblem(answered) ? { id, error: problemLines(answered).join('\n') } : answered;
}

const problemLines = ({ problems }: CalcProblem): readonly string[] => problems.map(({ name, given, wanted }) => `${name}: given ${given}; right would be ${wanted}`);
const problemText = (problem: CalcProblem): WrongInput => new WrongInput(problemLines(problem).join('\n'));
