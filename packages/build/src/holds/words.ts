import type { Joint, Machine, Stack } from '@rotorwright/machine';
import { jointNoun } from '../derive/index.ts';
import { lockWords } from '../rules/index.ts';
import { capital, counted, phraseOf, stackPhrase } from '../words/index.ts';
import type { ChanceRange } from './chance.ts';
import type { BasicEvent } from './events.ts';
import type { SinglePoint } from './holds.ts';
import type { Importance } from './importance.ts';

/** @example fastenerWords(screws) // '4 × M3 screw' */
export function fastenerWords(joint: Joint): string {
  return joint.each.length > 1 ? `${joint.each.length} × ${jointNoun(joint)}` : jointNoun(joint);
}

/** What a lock is called; `fit`: it holds by what it is. */
function lockName(lock: string): string {
  return lock === 'fit' ? 'its own fit' : lockWords({ grade: lock } as Parameters<typeof lockWords>[0]);
}

/** What stands on the link of a lock: a compound by its strength. */
export function lockLabel(lock: string): string {
  return lock === 'low' || lock === 'medium' || lock === 'high' ? `lock, ${lock}` : lockName(lock);
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

/**
 * What can fail at a single point, in a few words: one copy or the whole step, and each lock that gives way alone.
 *
 * @example failureWords(machine, point) // 'left undone; medium-strength threadlocker gives way'
 */
export function failureWords(machine: Machine, { step, events }: SinglePoint): string {
  const copies = machine.joints.get(step)?.each.length ?? 1;
  const one = copies > 1 ? 'one of them ' : '';
  const has = (kind: BasicEvent['kind']): boolean => events.some((event) => event.kind === kind);
  const locks = [...new Set(events.flatMap(({ lock }) => lock ?? []))];
  return [
    ...(has('wrong') ? ['put together wrong'] : []),
    ...(has('undone') ? [`${one}left undone`] : has('skipped') ? [`${copies === 2 ? 'both' : `all ${counted(copies)}`} left undone`] : []),
    ...locks.map((lock) => `${lock === 'fit' ? 'its fit' : lockName(lock)}${one === '' ? '' : ' of one'} gives way`),
    ...(has('loose') ? [`${one}works loose: nothing locks it`] : []),
  ].join('; ');
}

/**
 * A range of chances as a person says it: of 1 in so many up to a tenth, else as shares. Two figures, for nobody knows more.
 *
 * @example chanceWords({ low: 0.001, middle: 0.003, high: 0.009 }) // '1 in 110 to 1,000'
 */
export function chanceWords({ low, high }: ChanceRange): string {
  const oneIn = (chance: number): string => Number((1 / chance).toPrecision(2)).toLocaleString('en');
  const share = (chance: number): string => (chance > 0.99 ? 'over 99' : String(Number((chance * 100).toPrecision(2))));
  return high < 0.1 ? `1 in ${oneIn(high)} to ${oneIn(low)}` : `${share(low)} to ${share(high)} %`;
}

/**
 * A range of shares in percent, two figures.
 *
 * @example shareWords({ low: 0.1234, middle: 0.2, high: 0.4 }) // '12 to 40 %'
 */
export function shareWords({ low, high }: ChanceRange): string {
  const [from, to] = [low, high].map((share) => String(Number((share * 100).toPrecision(2))));
  return from === to ? `${from} %` : `${from} to ${to} %`;
}

/** What an omission does to a hazard: brings it about by itself, or adds so much to its chance when others are left out too. */
export function gainWords({ alone, gain }: Pick<Importance, 'alone' | 'gain'>): string {
  return alone ? 'is enough by itself' : `with others: ${chanceWords(gain)}`;
}
