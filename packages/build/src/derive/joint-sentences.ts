import { remembered, rememberedOf, type Joint, type Machine } from '@rotorwright/machine';
import { gathered, thingIdOf } from '../lookup.ts';
import { normalThread } from '../fingerprint/index.ts';
import { hasGrade, isStrap, lockWords, wetLocks } from '../rules/index.ts';
import { counted, lengthWords, listed, phraseOf, sentence, thingWith, titleFromKey, titleOf, torqueWords } from '../words/index.ts';

const nouns: Readonly<Record<Joint['kind'], string>> = {
  screw: 'screw', 'set-screw': 'set screw', bolt: 'bolt', nut: 'nut', stud: 'stud', 'threaded-end': 'threaded end', 'threaded-rod': 'threaded rod',
  pin: 'pin', circlip: 'circlip', clamp: 'clamp', press: 'press fit', bond: 'bond', 'ball-link': 'ball link',
};

const threaded: ReadonlySet<Joint['kind']> = new Set(['screw', 'set-screw', 'bolt', 'nut', 'stud', 'threaded-end', 'threaded-rod', 'clamp']);

export function isThreaded(joint: Joint): boolean {
  return threaded.has(joint.kind);
}

/** The joint as one would ask for it: M3 screw, 2 mm pin, M3 insert nut. */
export const jointNoun = remembered((joint: Joint): string => {
  const noun = joint.kind === 'nut' && hasGrade(joint, 'insert') ? 'insert nut' : nouns[joint.kind];
  const size = joint.thread === undefined ? (joint.diameter === undefined ? '' : lengthWords(joint.diameter)) : normalThread(joint.thread);
  return size === '' ? noun : `${size} ${noun}`;
});

/** The sides of a joint in words, with one name for all copies of a thing. */
interface Sides {
  readonly seat: string;
  readonly held: string;
}

export const sidesOf = rememberedOf((machine, joint: Joint): Sides => {
  const names = (ids: readonly string[]) => listed([...new Set([...gathered(new Set(ids), (id) => [thingIdOf(machine, id)])].map(([thing, copies]) => nameOfAll(machine, thing, copies, joint.module)))]);
  return { seat: names(joint.each.flatMap(({ seat }) => (seat === undefined ? [] : [seat]))), held: names(joint.each.flatMap(({ holds }) => holds)) };
});

function swapped({ seat, held }: Sides): Sides {
  return { seat: held, held: seat };
}

/**
 * A screw whose thread is in the module that is being mounted, and whose head bears on another that stands already: what
 * is brought is then the part with the thread.
 */
export function bringsSeat(machine: Machine, joint: Joint): boolean {
  if (joint.kind !== 'screw' && joint.kind !== 'bolt') return false;
  const isOwn = (id: string) => thingWith(machine, thingIdOf(machine, id))?.module === joint.module;
  const held = joint.each.flatMap(({ holds }) => holds);
  return held.length > 0 && !held.some(isOwn) && joint.each.every(({ seat }) => seat !== undefined && isOwn(seat));
}

/** A copy by its name when it stands alone; of several, each. */
function nameOfAll(machine: Machine, thing: string, copies: readonly string[], from: string): string {
  const [only = thing] = copies;
  return copies.length === 1 ? `the ${phraseOf(machine, only, from)}` : `each ${phraseOf(machine, thing, from)}`;
}

/** The joint by its name; a name that comes from a key such as `block-low-left` is completed: lower left block screw. */
export function jointPhrase(machine: Machine, joint: Joint): string {
  const phrase = phraseOf(machine, joint.id, joint.module);
  const noun = nouns[joint.kind];
  const saysKind = noun.split(' ').some((word) => phrase.includes(word.replace(/ed$/u, '')));
  return saysKind || titleOf(joint) !== titleFromKey(joint.key) ? phrase : `${phrase} ${noun}`;
}

/** The sentence that leads: what, how many, where, with what lock and torque. */
export function leadOf(machine: Machine, joint: Joint): string {
  const what = counted(joint.instances.length, jointNoun(joint));
  const one = joint.instances.length === 1 ? `the ${jointNoun(joint)}` : what;
  const spec = specOf(joint);
  const { seat, held } = bringsSeat(machine, joint) ? swapped(sidesOf(machine, joint)) : sidesOf(machine, joint);
  return sentence(...placings(joint, one, seat, held).flatMap((placing) => [`${placing}${spec}.`, `${placing}.`]), `Fit ${one}${spec}.`, `Fit ${one}.`);
}

function specOf(joint: Joint): string {
  const locks = wetLocks(joint).map(lockWords);
  const torque = typeof joint.torque === 'number' ? [torqueWords(joint.torque)] : joint.torque === 'snug' ? ['snug'] : [];
  const all = [...locks, ...torque];
  return all.length === 0 ? '' : `, ${all.join(', ')}`;
}

/** Wordings from the fullest to the shortest; those whose names the file does not give are left out. */
function placings(joint: Joint, what: string, seat: string, held: string): readonly string[] {
  const both = seat !== '' && held !== '';
  const when = (given: boolean, wording: string) => (given ? [wording] : []);
  switch (joint.kind) {
    case 'screw':
    case 'bolt':
      return [...when(both, `Screw ${held} to ${seat} with ${what}`), ...when(seat !== '', `Fit ${what} in ${seat}`), ...when(held !== '', `Screw ${held} down with ${what}`)];
    case 'set-screw':
      return [...when(both, `Turn ${what} into ${seat} against ${held}`), ...when(seat !== '', `Turn ${what} into ${seat}`)];
    case 'nut':
      return [...when(both, `Run ${what} onto ${seat} against ${held}`), ...when(seat !== '', `Run ${what} onto ${seat}`)];
    case 'stud':
    case 'threaded-rod':
      return when(seat !== '', `Screw ${what} into ${seat}`);
    case 'threaded-end':
      return [...when(both, `Screw ${held} into ${seat}`), ...when(seat !== '', `Screw ${what} into ${seat}`)];
    case 'pin':
      return [...when(both, `Push ${what} through ${held} and ${seat}`), ...when(seat !== '', `Push ${what} into ${seat}`)];
    case 'circlip':
      return [...when(both, `Spring ${what} onto ${seat} to keep ${held}`), ...when(seat !== '', `Spring ${what} onto ${seat}`)];
    case 'clamp':
      return [...when(both, isStrap(joint) ? `Strap ${held} to ${seat}` : `Clamp ${held} on ${seat}`), ...when(seat !== '', `Clamp ${what} on ${seat}`)];
    case 'press':
      return [...when(both, `Press ${held} and ${seat} together`)];
    case 'bond':
      return [...when(both, `Bond ${held} to ${seat}`)];
    case 'ball-link':
      return [...when(both, `Press ${what} between ${seat} and ${held}`), ...when(seat !== '', `Press ${what} onto ${seat}`)];
  }
}
