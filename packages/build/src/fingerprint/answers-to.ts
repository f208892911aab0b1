import type { Plan, Step } from '../step.ts';

/**
 * Whether a signature with this fingerprint answers to a step as the file has it now. One that was made under an older
 * rule is held against what that rule makes of the step.
 */
export function answersTo(plan: Plan, step: Step, fingerprint: string): boolean {
  return fingerprint === step.fingerprint || (fingerprint.startsWith('f1:') && fingerprint === plan.olderFingerprint?.(step.id));
}
