import { FaultTreeError, minimalCutSets, topProbability, type CutSets, type FaultTree, type Gate } from '@rotorwright/reliability';
import { CalculationError, defineCalculation } from '../define.ts';
import { numberOutput } from '../specs.ts';

/** More sets than this are counted, not listed: nobody reads them. */
const LISTED = 100_000;

const name = { kind: 'text', title: 'Gate or event' } as const;

const gate = {
  kind: 'record',
  title: 'Gate',
  fields: {
    type: { kind: 'choice', title: 'True when all, any, or at least k of its inputs are', choices: ['and', 'or', 'atleast'] },
    k: { kind: 'number', title: 'How many at least, for “atleast”', symbol: 'k', unit: '-', shown: '-', whole: true, min: 1, max: 1e6, optional: true },
    inputs: { kind: 'list', title: 'Inputs: gates by their names; every other name is a basic event', of: name, atLeast: 1 },
  },
} as const;

export const cutSets = defineCalculation({
  id: 'cut-sets',
  title: 'Cut sets of a fault tree',
  section: 'Reliability and planning',
  summary: 'Smallest combinations of faults that bring about the top event, its exact chance, and how much each fault weighs.',
  inputs: {
    top: { kind: 'text', title: 'Gate whose truth is the top event', example: 'blade leaves' },
    gates: {
      kind: 'map',
      title: 'Gates, each under its name; they may share inputs',
      of: gate,
      atLeast: 1,
      example: {
        'blade leaves': { type: 'or', inputs: ['bolt breaks', 'bolt walks out'] },
        'bolt walks out': { type: 'and', inputs: ['nut turns off', 'pin missing'] },
        'nut turns off': { type: 'and', inputs: ['nut reused', 'torque missed'] },
      },
    },
    probabilities: {
      kind: 'map',
      title: 'Probability of every basic event; events are independent',
      of: { kind: 'number', title: 'Probability', symbol: 'p', unit: '-', shown: '-', min: 0, max: 1 },
      optional: true,
      example: { 'bolt breaks': 1e-5, 'nut reused': 0.05, 'torque missed': 0.01, 'pin missing': 0.003 },
    },
  },
  outputs: {
    minimalCutSets: { title: 'Minimal cut sets, smallest first', symbol: 'C_j', unit: '-', shown: '-', text: true, list: true },
    topProbability: numberOutput('Probability of the top event', 'P'),
    birnbaum: { ...numberOutput('Gain of P when the event goes from impossible to certain', 'B_i'), map: true },
    fussellVesely: { ...numberOutput('Share of the cut sets’ probabilities that holds the event', 'V_i'), map: true },
  },
  formulas: [
    { output: 'minimalCutSets', tex: String.raw`\mathrm{top} = \bigvee_j \bigwedge_{i \in C_j} x_i` },
    { output: 'topProbability', tex: String.raw`P = \Pr(\mathrm{top}) = p_i\,P(x_i = 1) + (1 - p_i)\,P(x_i = 0)` },
    { output: 'birnbaum', tex: String.raw`B_i = P(x_i = 1) - P(x_i = 0)` },
    { output: 'fussellVesely', tex: String.raw`V_i = \frac{\sum_{j:\,i \in C_j} \prod_{k \in C_j} p_k}{\sum_j \prod_{k \in C_j} p_k}` },
  ],
  source: 'NUREG-0492, Fault Tree Handbook (1981), chapters VII and XI; exact probability by a binary decision diagram: Rauzy, New algorithms for fault tree analysis (1993) (from memory).',
  validity: ['Coherent trees: no gate is a negation.', 'Basic events are independent. A common cause is an event of its own, shared by gates.'],
  compute: ({ top, gates, probabilities }) => {
    if (!Object.hasOwn(gates, top)) throw new CalculationError('top', JSON.stringify(top), `the name of a gate: ${Object.keys(gates).slice(0, 10).join(', ')}`);
    const tree: FaultTree = { top, gates: Object.fromEntries(Object.entries(gates).map(([own, given]) => [own, gateOf(own, given)])) };
    const found = cutSetsOf(tree);
    const warnings: string[] = [];
    const count = found.countByOrder.reduce((sum, each) => sum + each, 0);
    if (count > LISTED) warnings.push(`minimalCutSets is left out: there are ${count}, of order ${found.countByOrder.findIndex((each) => each > 0)} to ${found.countByOrder.length - 1}; at most ${LISTED} are listed.`);
    const sets = count > LISTED ? {} : { minimalCutSets: found.sets() };
    if (probabilities === undefined) {
      warnings.push('topProbability, birnbaum and fussellVesely are left out: they need the probability of every basic event.');
      return { outputs: sets, warnings };
    }
    const { events } = found;
    const missing = events.filter((event) => !Object.hasOwn(probabilities, event));
    if (missing.length > 0) throw new CalculationError(`probabilities.${missing[0]}`, 'nothing', `a number from 0 to 1 for each basic event${missing.length > 1 ? `; ${missing.length - 1} more have none` : ''}`);
    const idle = Object.keys(probabilities).filter((each) => !events.includes(each));
    if (idle.length > 0) warnings.push(`Not used, for no basic event under ${top} has this name: ${idle.slice(0, 10).join(', ')}.`);
    const exact = topProbability(tree, probabilities);
    if (exact === undefined) warnings.push('topProbability and birnbaum are left out: the diagram of this tree grows too large to be exact.');
    return {
      outputs: { ...sets, ...(exact && { topProbability: exact.probability, birnbaum: exact.birnbaum }), fussellVesely: found.fussellVesely(probabilities) },
      warnings,
    };
  },
});

function gateOf(own: string, { type, k, inputs }: { readonly type: 'and' | 'or' | 'atleast'; readonly k?: number; readonly inputs: readonly string[] }): Gate {
  if (type !== 'atleast') {
    if (k !== undefined) throw new CalculationError(`gates.${own}.k`, String(k), `none for “${type}”; only “atleast” takes a k`);
    return { type, inputs };
  }
  if (k === undefined) throw new CalculationError(`gates.${own}.k`, 'nothing', `a whole number from 1 to ${inputs.length}: how many of the inputs it takes`);
  return { type, k, inputs };
}

function cutSetsOf(tree: FaultTree): CutSets {
  try {
    return minimalCutSets(tree);
  } catch (error) {
    if (error instanceof FaultTreeError) throw new CalculationError(`gates.${error.gate}`, JSON.stringify(tree.gates[error.gate]), `a gate that can be: this one ${error.reason}`);
    throw error;
  }
}
