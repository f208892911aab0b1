import { remembered, rememberedOf, type Machine, type Module, type Stack, type Thing } from '@rotorwright/machine';
import { thingIdOf } from '../lookup.ts';

/** Words at the end of a key that say which of several: they go behind a comma in a title, in front in a sentence. */
const sides: Readonly<Record<string, string>> = {
  left: 'left', right: 'right', front: 'front', rear: 'rear', low: 'lower', high: 'upper', lower: 'lower', upper: 'upper',
  in: 'inner', out: 'outer', inner: 'inner', outer: 'outer', top: 'top', bottom: 'bottom', inboard: 'inboard', outboard: 'outboard', fore: 'fore', aft: 'aft',
};

/**
 * A title made from a key.
 *
 * @example titleFromKey('post-screw-left') // 'Post screw, left'
 */
export function titleFromKey(key: string): string {
  const [kind, side] = split(key);
  return capital(side.length === 0 ? kind.join(' ') : `${kind.join(' ')}, ${side.join(' ')}`);
}

/**
 * What a sentence calls it.
 *
 * @example phraseFromKey('block-low-left') // 'lower left block'
 */
export function phraseFromKey(key: string): string {
  const [kind, side] = split(key);
  return [...side.map((word) => sides[word] ?? word), ...kind].join(' ');
}

/** The title that the file gives, or one made from the key. */
export const titleOf = remembered((thing: Pick<Thing, 'title' | 'key'>): string => (isOwnTitle(thing) ? capital(thing.title) : titleFromKey(thing.key)));

/** Title of a module copy: the copy's name belongs to it. */
export const moduleTitle = remembered((module: Module): string => {
  const title = titleOf(module);
  return module.copy === undefined || title.endsWith(` ${module.copy}`) ? title : `${title} ${module.copy}`;
});

/**
 * What a sentence calls a thing or one copy of it; things of other modules name their module.
 *
 * @param from module in whose step the sentence stands
 */
export function phraseOf(machine: Machine, id: string, from: string): string {
  const { phrase, home } = namesIn(machine, id);
  return home === undefined || home.id === from ? phrase : `${phrase} (${small(moduleTitle(home))})`;
}

/** What a thing or one copy of it is called at home, and where that is. */
const namesIn = rememberedOf((machine, id: string): { readonly phrase: string; readonly home?: Module | undefined } => {
  const thingId = thingIdOf(machine, id);
  const thing = thingWith(machine, thingId);
  if (thing === undefined) return { phrase: id };
  const own = isOwnTitle(thing) ? small(thing.title) : phraseFromKey(thing.key);
  return { phrase: id === thingId || !id.startsWith(`${thingId}.`) ? own : ofCopy(own, id.slice(thingId.length + 1)), home: machine.modules.get(thing.module) };
});

/** Copies that are called by their side stand as one says it: the left skid, but post b. */
function ofCopy(phrase: string, copy: string): string {
  const side = Object.hasOwn(sides, copy) ? sides[copy] : undefined;
  return side === undefined ? `${phrase} ${copy}` : `${side} ${phrase}`;
}

/** A stack by its title; a name that comes from a key is completed: input stack. */
export function stackPhrase(machine: Machine, stack: Stack, from: string): string {
  const phrase = phraseOf(machine, stack.id, from);
  return isOwnTitle(stack) || /stack/u.test(phrase) ? phrase : phrase.replace(/^([^(]*[^( ])/u, '$1 stack');
}

/** The thing of any kind that has this id. */
export function thingWith(machine: Machine, id: string): Thing | undefined {
  return machine.parts.get(id) ?? machine.joints.get(id) ?? machine.stacks.get(id) ?? machine.measurements.get(id) ?? machine.steps.get(id);
}

/** First letter small, unless the word is an abbreviation or a thread: POM, M3. */
export function small(title: string): string {
  return /^\p{Lu}(?:\p{Lu}|\d)/u.test(title) ? title : title.charAt(0).toLowerCase() + title.slice(1);
}

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** A title that is only the key in other clothes says nothing of its own. */
const isOwnTitle = remembered(({ title, key }: Pick<Thing, 'title' | 'key'>): boolean => {
  // Where the file gives no title, the reader makes one of the key: it need not be looked at letter by letter.
  if (title === key || title.toLowerCase() === key.replaceAll('-', ' ')) return false;
  const plain = (words: string) => words.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ').trim();
  return plain(title) !== '' && plain(title) !== plain(key);
});

function split(key: string): readonly [kind: readonly string[], side: readonly string[]] {
  const words = key.split('-').filter((word) => word !== '');
  let cut = words.length;
  while (cut > 1 && Object.hasOwn(sides, words[cut - 1] ?? '')) cut -= 1;
  return [words.slice(0, cut), words.slice(cut)];
}
