import { answer, isCalcProblem, isSingle, type AnsweredValue } from '@rotorwright/calculations';
import type { Machine } from '@rotorwright/machine';
import { showNumber, showQuantity } from '@rotorwright/units';

/** Readings by which something is balanced: what they were taken for, and the inputs of the calculation, as they were typed. */
export interface TrialReadings {
  /** Catalogue id, one of `trialCalculations`. */
  readonly calculation: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  /** Id of what turns together, under `balance.spun` of the file. */
  readonly of?: string;
}

type Found = (name: string) => AnsweredValue | undefined;

const number = (value: AnsweredValue | undefined): number | undefined => (value !== undefined && 'value' in value && typeof value.value === 'number' ? value.value : undefined);
const grams = (mass: number): string => showQuantity(mass, 'g', { significant: 3 });

function massAt(mass: number | undefined, angle: number | undefined): string | undefined {
  return mass === undefined || angle === undefined ? undefined : `${grams(mass)} at ${showQuantity(angle, '°', { significant: 3 })}`;
}

/** What follows from the readings of each calculation that something is balanced by, in a few words; undefined where nothing does. */
const answers: Readonly<Record<string, (found: Found) => string | undefined>> = {
  'blade-match': (found) => {
    const [tape, blade] = [number(found('tapeMass')), number(found('lighterBlade'))];
    return tape === undefined || blade === undefined ? undefined : blade === 0 ? 'the pair is even along the blades' : `tape ${grams(tape)} on blade ${blade}`;
  },
  'balance-single-plane': (found) => massAt(number(found('correctionMass')), number(found('correctionAngle'))),
  'balance-two-plane': (found) => {
    const [first, second] = [1, 2].map((plane) => massAt(number(found(`correctionMass${plane}`)), number(found(`correctionAngle${plane}`))));
    return first === undefined || second === undefined ? undefined : `plane 1 ${first}, plane 2 ${second}`;
  },
  'balance-four-run': (found) => massAt(number(found('correctionMass')), number(found('correctionAngle'))),
  'balance-split': (found) => {
    const masses = found('masses');
    return Array.isArray(masses) ? (masses as readonly AnsweredValue[]).map((each) => (isSingle(each) && typeof each.value === 'number' ? grams(each.value) : '–')).join(', ') : undefined;
  },
  'blade-tracking': (found) => {
    const turns = number(found('turns'));
    return turns === undefined ? undefined : `${showNumber(Math.abs(turns), { significant: 2 })} turns of the link towards ${turns < 0 ? 'more' : 'less'} pitch`;
  },
};

/** Ids of the calculations that something is balanced by. */
export const trialCalculations: readonly string[] = Object.keys(answers);

/** What is wrong with readings before they are put on record, in sentences; nothing when they can be. */
export function trialProblems({ balance }: Machine, { calculation, inputs, of }: TrialReadings): readonly string[] {
  if (!Object.hasOwn(answers, calculation)) return [`Nothing is balanced by “${calculation}”; right would be one of ${trialCalculations.join(', ')}.`];
  const answered = answer(calculation, inputs);
  return [
    ...(isCalcProblem(answered) ? answered.problems.map(({ name, given, wanted }) => `${name}: given ${given}; right would be ${wanted}.`) : []),
    ...(of === undefined || balance.spun.has(of) ? [] : [`The file has no “${of}” under balance.spun${balance.spun.size === 0 ? '' : `; there are ${[...balance.spun.keys()].join(', ')}`}.`]),
  ];
}

/** What follows from readings, in a few words. */
export function trialWords({ calculation, inputs }: TrialReadings): string {
  const answered = answer(calculation, inputs);
  if (isCalcProblem(answered)) return 'readings that this version does not take';
  return answers[calculation]?.((name) => answered.outputs[name]) ?? 'no correction follows';
}
