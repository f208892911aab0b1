import type { Step } from '@rotorwright/build';
import type { Entry, EntryBody } from '../entry.ts';
import { momentOf } from './moments.ts';
import type { SecondLook, StepState, UndoneReason } from './state.ts';

/** A second look as it stands in the book. */
export type LookedEntry = Entry & { readonly body: Extract<EntryBody, { kind: 'looked' }> };

/**
 * Whoever works alone looks again after this pause, s: a night lies in between, so that he sees the joint and not his
 * memory of it. That the same person may look again only where nobody else is there is a rule of aircraft maintenance
 * (European rules, read); it names no length.
 */
const pauseAlone = 12 * 3600;

/** Names are typed at the bench: case and spaces make no other person. */
function isSamePerson(a: string, b: string): boolean {
  const plain = (name: string) => name.normalize('NFC').trim().replace(/\s+/gu, ' ').toLowerCase();
  return plain(a) === plain(b);
}

/**
 * What the looks at a signature amount to. One by another person counts before one by the signer.
 *
 * @param looks at the step as it is now, in the order in which they were made, all after the signature, none taken back
 * @returns     nothing when the step asks for none and nobody looked
 */
export function secondLookOf(step: Step, signature: Entry, looks: readonly LookedEntry[]): SecondLook | undefined {
  const from = momentOf(signature) + pauseAlone * 1000;
  const others = looks.find(({ by }) => !isSamePerson(by, signature.by));
  const own = looks.find((look) => isSamePerson(look.by, signature.by) && momentOf(look) >= from);
  const counted = others ?? own;
  if (counted !== undefined) return { state: 'seen', by: counted.by, at: counted.at, entry: counted.number, alone: others === undefined };
  return step.secondLook ? { state: 'wanted', aloneFrom: new Date(from).toISOString() } : undefined;
}

/** A fault is a fault whoever sees it, and however soon. */
export function foundBad(looks: readonly LookedEntry[]): UndoneReason | undefined {
  const bad = looks.find(({ body }) => body.found === 'bad');
  return bad === undefined ? undefined : { why: 'found-bad', entry: bad.number, by: bad.by, at: bad.at, reason: bad.body.note ?? '' };
}

/**
 * Why a look would not count as a second look: nothing is signed, or the signer himself looks before the pause is over.
 *
 * @param state of the step at the moment of the look
 * @returns     nothing when it would count
 */
export function lookProblem(state: StepState, by: string, at: Date): { readonly why: 'unsigned' } | { readonly why: 'too-soon'; readonly from: string } | undefined {
  const { state: stands, by: signer, secondLook } = state;
  if ((stands !== 'signed' && stands !== 'curing') || signer === undefined) return { why: 'unsigned' };
  if (secondLook?.state !== 'wanted' || !isSamePerson(by, signer) || at.getTime() >= Date.parse(secondLook.aloneFrom)) return undefined;
  return { why: 'too-soon', from: secondLook.aloneFrom };
}
