import { formatFinding, readMachine, type Machine } from '@rotorwright/machine';

/** Reads a machine for a test. What the reader itself refuses has no place in the tests of figures, unless it is asked for. */
export function read(text: string, options: { readonly refused?: readonly string[] } = {}): Machine {
  const { machine, findings } = readMachine(text);
  const errors = findings.filter((finding) => finding.severity === 'error' && !options.refused?.includes(finding.code));
  if (!machine || errors.length > 0) throw new Error(`the test's machine is refused:\n${errors.map((finding) => formatFinding(finding, 'test')).join('\n')}`);
  return machine;
}
