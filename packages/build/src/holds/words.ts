import type { Joint, Machine, Stack } from '@rotorwright/machine';
import { jointNoun } from '../derive/index.ts';
import { lockWords } from '../rules/index.ts';
import { capital, counted, phraseOf, stackPhrase } from '../words/index.ts';
import type { BasicEvent } from './events.ts';

/** @example fastenerWords(screws) // '4 × M3 screw' */
export function fastenerWords(joint: Joint): string {
  return joint.each.length > 1 ? `${joint.each.length} × ${jointNoun(joint)}` : jointNoun(joint);
}

/** What a lock is called; `fit`: it holds by what it is. */
export function lockName(lock: string): string {
  return lock === 'fit' ? 'its own fit' : lockWords({ grade: lock } as Parameters<typeof lockWords>[0]);
}

/** A body or joint as a title names it, with its module where that is another than `from`. */
export function thingTitle(machine: Machine, id: string, from = ''): string {
  const stack = machine.stacks.get(id);
  return capital(stack === undefined ? phraseOf(machine, id, from) : stackPhrase(machine, stack as Stack, from));
}

/** One event as a sentence without its stop. */
export function eventWords(machine: Machine, { kind, step, copy, lock }: BasicEvent): string {
  const joint = machine.joints.get(step);
  const one = phraseOf(machine, copy ?? step, '');
  switch (kind) {
    case 'undone':
      return `${one} is left undone`;
    case 'skipped':
      return `${phraseOf(machine, step, '')}: the whole step is left out, ${joint?.each.length === 2 ? 'both' : `all ${counted(joint?.each.length ?? 0)}`}`;
    case 'lock':
      return lock === 'fit' ? `${one} gives way` : `${lockName(lock ?? '')} of ${one} gives way`;
    case 'loose':
      return `${one} works loose: nothing locks it`;
    case 'wrong':
      return `${thingTitle(machine, step)} is put together wrong`;
  }
}
