import { rememberedOf, type Joint } from '@rotorwright/machine';
import { wetLocks } from './locks.ts';
import { touchedParts } from './touched.ts';

/** A press fit in which something gives, such as a cap or a damper: it is pushed home by hand. */
export const isPushFit = rememberedOf((machine, joint: Joint): boolean =>
  joint.kind === 'press' && wetLocks(joint).length === 0 && touchedParts(machine, joint).some(({ material }) => material !== undefined && /rubber|silicone|foam/iu.test(material)));

/** A clamp without a thread that is drawn tight by hand: a strap or a tie. */
export function isStrap(joint: Joint): boolean {
  return joint.kind === 'clamp' && joint.thread === undefined && joint.torque === 'snug' && wetLocks(joint).length === 0;
}
