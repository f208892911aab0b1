import { placeOf, severityOf, type EntryPath, type Finding, type FindingCode, type Machine } from '@rotorwright/machine';

/** A finding about an entry, at its place in the file or at the place where it would have to be written. */
export function findingAt(machine: Machine, code: FindingCode, path: EntryPath, values: Finding['values']): Finding {
  const place = placeOf(machine, path);
  return { code, severity: severityOf(code), path, ...(place ? { place } : {}), values };
}
