import { formatFinding, readMachine, type Machine } from '@rotorwright/machine';
import { AnswerError } from './answer-error.ts';

/** Largest machine file that is taken, bytes of UTF-8. */
export const largestMachineFile = 2 * 1024 * 1024;

/**
 * Reads a text that is about to be kept. Mistakes in it are no hindrance: the file is the builder's own.
 *
 * @throws AnswerError when it is too large, or cannot be read at all: no YAML, nested too deep, of an unknown format
 */
export function readable(text: string): Machine {
  const size = Buffer.byteLength(text);
  if (size > largestMachineFile) throw new AnswerError(413, 'body/too-large', `A machine file may have ${largestMachineFile.toLocaleString('en')} bytes at most; this one has ${size.toLocaleString('en')}.`);
  if (/\p{Surrogate}/u.test(text)) throw new AnswerError(422, 'machine/unreadable', 'The text holds half a character, which no file can keep. Nothing was written.');
  const { machine, findings } = readMachine(text);
  if (machine !== undefined) return machine;
  throw new AnswerError(422, 'machine/unreadable', 'The text cannot be read as a machine file. Nothing was written.', { details: findings.map((finding) => formatFinding(finding, 'machine.yaml')) });
}
