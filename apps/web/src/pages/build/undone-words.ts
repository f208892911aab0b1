import type { UndoneReason } from '@rotorwright/logbook';
import { showQuantity } from '@rotorwright/units';
import { dayOf } from '../../sheet/index.ts';

/** Why a signature no longer stands, in a whole sentence, whatever somebody wrote as the reason. */
export function undoneWords(reason: UndoneReason | undefined): string {
  const words = undone(reason);
  return /[.!?]$/u.test(words) ? words : `${words}.`;
}

function undone(reason: UndoneReason | undefined): string {
  switch (reason?.why) {
    case 'changed': return 'The file says something else now than what was signed.';
    case 'opened': return `${reason.by} opened ${reason.fallsWith === undefined ? 'it' : `${reason.fallsWith}, with which it falls`}, ${dayOf(reason.at)}: ${reason.reason}`;
    case 'found-bad': return `${reason.by} looked again, ${dayOf(reason.at)}, and found it bad: ${reason.reason}`;
    case 'corrected': return reason.reason === '' ? 'The signature was taken back.' : `The signature was taken back: ${reason.reason}`;
    case 'failed': return `Measured ${measuredWords(reason.measured)}: not what is wanted.`;
    default: return 'Something that it rests on has changed.';
  }
}

/** "0.04 mm", or the answer of a feel. */
export function measuredWords(measured: { readonly value: number; readonly unit: string } | { readonly feel: string }, shown?: string): string {
  return 'feel' in measured ? measured.feel : showQuantity(measured.value, shown ?? measured.unit);
}
