import { answersFor, answersTo, bagsOf, planBuild, type Plan, type Step } from '@rotorwright/build';
import { trialProblems } from '@rotorwright/figures';
import type { EntryBody, MachineOnBoard, NewEntry } from '@rotorwright/logbook';
import { readMachine, type Machine } from '@rotorwright/machine';
import { AnswerError } from './http/answer-error.ts';

/** Why entries stay out of the book: status and sentence of the answer by its code, in the order in which they are told. */
const refusals = {
  'bag/unknown': [422, 'a bag is not in the file.'],
  'trial/wrong': [422, 'readings of a trial are not what the machine or the calculation asks for.'],
  'step/unknown': [422, 'a step is not in the plan.'],
  'step/changed': [409, 'the machine file changed what a step asks for. Look at it again, then sign.'],
  'step/unmeasured': [422, 'a step was signed without what was measured.'],
  'step/measured-wrong': [422, 'what was measured is not what the step asks for.'],
  'photo/unknown': [422, 'a photo is missing. Send it first: PUT /api/photos/ and its SHA-256.'],
} as const satisfies Readonly<Record<string, readonly [status: number, reason: string]>>;

type Code = keyof typeof refusals;

interface Problem {
  readonly code: Code;
  readonly words: string;
}

/** What entries are held against. */
interface Board {
  readonly id: string;
  readonly machine: Machine | undefined;
  readonly plan: Plan | undefined;
  readonly hasPhoto: (hash: string) => boolean;
}

/**
 * Holds well-formed entries against the machine as it is now.
 *
 * @throws AnswerError when one of them cannot be taken: of all reasons the first, with every entry that it is of
 */
export function refuseWrong({ id, text }: MachineOnBoard, entries: readonly NewEntry[], hasPhoto: (hash: string) => boolean): void {
  const { machine } = readMachine(text, { file: id });
  const board: Board = { id, machine, plan: machine && planBuild(machine), hasPhoto };
  const problems = entries.flatMap((entry) => problemsOf(board, entry.body).map(({ code, words }) => ({ code, words: `${entry.id}: ${words}` })));
  const code = (Object.keys(refusals) as Code[]).find((each) => problems.some((problem) => problem.code === each));
  if (code === undefined) return;
  const [status, reason] = refusals[code];
  throw new AnswerError(status, code, `Nothing was recorded: ${reason}`, { details: problems.flatMap((problem) => (problem.code === code ? [problem.words] : [])) });
}

function problemsOf({ id, machine, plan, hasPhoto }: Board, body: EntryBody): readonly Problem[] {
  const photo: readonly Problem[] = 'photo' in body && body.photo !== undefined && !hasPhoto(body.photo) ? [{ code: 'photo/unknown', words: `there is no photo ${body.photo} here` }] : [];
  switch (body.kind) {
    case 'opened': case 'corrected': case 'heard': return photo;
    case 'counted': return machine && bagsOf(machine).some((bag) => bag.id === body.bag) ? photo : [{ code: 'bag/unknown', words: `the file of ${id} has no bag ${body.bag}` }];
    case 'balanced': return machine === undefined ? [{ code: 'trial/wrong', words: `the file of ${id} cannot be read` }] : trialProblems(machine, body).map((words) => ({ code: 'trial/wrong', words }));
    case 'noted': case 'looked': case 'signed': {
      if (body.step === undefined) return photo;
      const step = plan?.steps.get(body.step);
      if (plan === undefined || step === undefined) return [{ code: 'step/unknown', words: `there is no step ${body.step} in the plan of ${id}` }];
      if (body.kind !== 'noted' && !answersTo(plan, step, body.fingerprint)) return [{ code: 'step/changed', words: `${body.step} has changed since it was shown` }];
      return [...photo, ...(body.kind === 'signed' ? measuredProblems(step, body.measured) : [])];
    }
  }
}

/** Whether a signature says what its step asks for, and nothing else. */
function measuredProblems({ id, measure }: Step, measured: Extract<EntryBody, { kind: 'signed' }>['measured']): readonly Problem[] {
  const wrong = (words: string): readonly Problem[] => [{ code: 'step/measured-wrong', words }];
  if (measure === undefined) return measured === undefined ? [] : wrong(`${id} asks for no measurement`);
  if (measured === undefined) return [{ code: 'step/unmeasured', words: `${id} is measured; its signature must say what was read or felt` }];
  if (measure.ask !== undefined || measure.wanted !== undefined) {
    const answers = answersFor(measure).map(({ feel }) => feel);
    if ('feel' in measured && answers.includes(measured.feel)) return [];
    return wrong(`${id} is answered with ${answers.join(' or ')}; given: ${'feel' in measured ? measured.feel : `${measured.value} ${measured.unit}`}`);
  }
  if ('feel' in measured) return wrong(`${id} is measured${measure.unit === undefined ? '' : ` in ${measure.unit}`}, not felt; given: ${measured.feel}`);
  return measure.unit === undefined || measured.unit === measure.unit ? [] : wrong(`${id} is measured in ${measure.unit}; given: ${measured.value} ${measured.unit}`);
}
