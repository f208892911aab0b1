import type { Joint, Machine, Stack } from '@rotorwright/machine';
import { wantsHeat } from '../rules/index.ts';
import { counted, sentence, stackPhrase } from '../words/index.ts';
import { jointPhrase } from './joint-sentences.ts';

/** Undoing a joint as the factory left it: dry, and glued only where it must stay. */
export function undoingFactory(machine: Machine, joint: Joint): string {
  const { what, short } = namesOf(machine, joint);
  if (joint.kind === 'bond') return sentence(`Leave the bond of ${what} alone unless it moves.`, 'Leave the next bond alone unless it moves.');
  if (joint.kind === 'press') return sentence(`Part ${what} only if it must come; warm it, never hammer.`, 'Part the next press fit only if it must come; warm it, never hammer.');
  if (wantsHeat(machine, joint)) return sentence(`Undo ${what}; if it will not turn, warm it first.`, `Undo ${short}; if it will not turn, warm it first.`);
  return undoingCold(joint, what, short);
}

/** Undoing a joint as it was signed for. */
export function undoing(machine: Machine, joint: Joint): string {
  const { what, short } = namesOf(machine, joint);
  const whole = joint.instances.length === 1 ? what : `${what},`;
  if (joint.kind === 'bond') return sentence(`Warm ${whole} until the bond lets go; the parts may not survive.`, 'Warm the bond until it lets go; the parts may not survive.');
  if (joint.kind === 'press') return sentence(`Warm ${whole} and press it apart; never hammer.`, 'Warm the press fit and press it apart; never hammer.');
  if (wantsHeat(machine, joint)) return sentence(`Warm ${whole} until the compound lets go, then undo it.`, 'Warm it until the compound lets go, then undo it.');
  return undoingCold(joint, what, short);
}

export function unstacking(machine: Machine, stack: Stack): string {
  const name = stackPhrase(machine, stack, stack.module);
  return sentence(`Take the ${name} apart, and note order and facing as found.`, 'Take the stack apart, and note order and facing as found.');
}

function undoingCold(joint: Joint, what: string, short: string): string {
  if (joint.kind === 'pin') return sentence(`Push out ${what}.`, `Push out ${short}.`);
  if (joint.kind === 'circlip') return sentence(`Take off ${what}.`, `Take off ${short}.`);
  if (joint.kind === 'ball-link') return sentence(`Pull off ${what}, with pliers.`, `Pull off ${short}, with pliers.`);
  return sentence(`Undo ${what}.`, `Undo ${short}.`);
}

function namesOf(machine: Machine, joint: Joint): { readonly what: string; readonly short: string } {
  const copies = joint.instances.length;
  const name = jointPhrase(machine, joint);
  return { what: copies === 1 ? `the ${name}` : `each ${name}, ${counted(copies)} in all`, short: copies === 1 ? 'the next joint' : `the next ${counted(copies)}` };
}
