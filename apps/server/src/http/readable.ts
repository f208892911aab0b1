import { formatFinding, readMachine, type Machine } from '@rotorwright/machine';
import { AnswerError } from './answer-error.ts';

/** Largest machine file that is taken, bytes of UTF-8. */
export const largestMachineFile = 2 * 1024 * 1024;

/** What is no YAML at all: nothing could be said about it, or edited in it, but the bare text. */
const unreadable = new Set(['yaml/syntax', 'yaml/too-large', 'yaml/too-deep', 'yaml/alias']);

/**
 * Reads a text that is about to be kept. Mistakes in it are no hindrance: the file is the builder's own.
 *
 * @throws AnswerError when it is too large, or no YAML
 */
export function readable(text: string): Machine {
  const size = Buffer.byteLength(text);
  if (size > largestMachineFile) throw new AnswerError(413, 'body/too-large', `A machine file may have ${largestMachineFile.toLocaleString('en')} bytes at most; this one has ${size.toLocaleString('en')}.`);
  const { machine, findings } = readMachine(text);
  const problems = findings.filter(({ code }) => unreadable.has(code));
  if (problems.length > 0) {
    throw new AnswerError(422, 'machine/unreadable', 'The text cannot be read as a machine file. Nothing was written.', { details: problems.map((problem) => formatFinding(problem, 'machine.yaml')) });
  }
  return machine;
}
