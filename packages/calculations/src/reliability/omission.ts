import { omission } from '@rotorwright/reliability';
import { defineCalculation } from '../define.ts';
import { countInput, numberOutput } from '../specs.ts';

export const omissionChance = defineCalculation({
  id: 'omission',
  title: 'Chance of leaving something out',
  section: 'Reliability and planning',
  summary: 'How likely a list is to be left with an item missed, by the habit with which it is worked.',
  inputs: {
    steps: countInput('Items of the list', 'n', 12),
    kind: { kind: 'choice', title: 'List: none used, not ticked, ticked', choices: ['none', 'unticked', 'ticked'], example: 'ticked' },
    secondCheck: { kind: 'choice', title: 'Second look: none, without the list, with the list', choices: ['none', 'unlisted', 'listed'], default: 'none' },
  },
  outputs: {
    perStep: numberOutput('Chance that one item is missed and not seen', 'p_1'),
    errorFactor: numberOutput('Factor up or down within which that chance lies', 'k'),
    expectedOmissions: numberOutput('Items missed, on average', 'm'),
    probability: numberOutput('Chance that at least one is missed', 'P'),
    probabilityLow: numberOutput('The same, low end', 'P_\\mathrm{low}'),
    probabilityHigh: numberOutput('The same, high end', 'P_\\mathrm{high}'),
  },
  formulas: [
    { output: 'perStep', tex: String.raw`p_1 = p\,c` },
    { output: 'errorFactor', tex: String.raw`k = 5 \text{ without a list, else } 3` },
    { output: 'expectedOmissions', tex: String.raw`m = n\,p\,c` },
    { output: 'probability', tex: String.raw`P = 1 - (1 - p\,c)^n` },
    { output: 'probabilityLow', tex: String.raw`P_\mathrm{low} = 1 - \left(1 - \frac{p}{k}\,c\right)^n` },
    { output: 'probabilityHigh', tex: String.raw`P_\mathrm{high} = 1 - \left(1 - \min(1, p\,k)\,c\right)^n` },
  ],
  source: 'NUREG/CR-1278 (1983), tables 20-7 and 20-22 (from memory).',
  validity: ['Nuclear plant figures: an ordering of habits, not a forecast.', 'Items are taken as independent.'],
  compute: ({ steps, kind, secondCheck }) => {
    const { perStep, errorFactor, expectedOmissions, probability, probabilityLow, probabilityHigh } = omission(steps, kind, secondCheck);
    return { outputs: { perStep, errorFactor, expectedOmissions, probability, probabilityLow, probabilityHigh }, warnings: [] };
  },
});
