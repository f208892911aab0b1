import type { Plan } from '@rotorwright/build';
import type { BuildState } from './state.ts';

/** A step that speaks against flying: what it holds may come off. */
export interface Objection {
  readonly step: string;
  /** unseen: signed, and nobody has looked again. */
  readonly why: 'open' | 'undone' | 'curing' | 'unseen';
  /** Curing: until when. Unseen: from when on the signer alone may look. ISO 8601. */
  readonly until?: string;
}

/** What speaks against flying, as far as signatures can tell. Whether it flies is for the builder to say. */
export interface Readiness {
  /** The file names no hazard that ends in a crash or an injury and can be followed: nothing is known. */
  readonly assessed: boolean;
  /** In the order of work. */
  readonly objections: readonly Objection[];
  /** Ids of steps that the signer looked at again alone. */
  readonly seenAlone: readonly string[];
}

/**
 * Whether anything that a crash or an injury hangs on is open, undone, uncured or unseen by a second look; and whether
 * what was measured there still stands.
 */
export function readiness(plan: Plan, state: BuildState): Readiness {
  const grave = new Set([...plan.steps.values()].filter(({ secondLook }) => secondLook).map(({ id }) => id));
  const concerned = [...plan.steps.values()].filter(({ id, kind, fallsWith = [] }) => grave.has(id) || (kind === 'measure' && fallsWith.some((other) => grave.has(other))));
  return {
    assessed: grave.size > 0,
    objections: concerned.flatMap(({ id }) => objection(id, state) ?? []),
    seenAlone: concerned.flatMap(({ id }) => {
      const look = state.steps.get(id)?.secondLook;
      return look?.state === 'seen' && look.alone ? [id] : [];
    }),
  };
}

function objection(step: string, { steps }: BuildState): Objection | undefined {
  const { state, until, secondLook } = steps.get(step) ?? { state: 'open' };
  if (state !== 'signed') return { step, why: state, ...(until === undefined ? {} : { until }) };
  return secondLook?.state === 'wanted' ? { step, why: 'unseen', until: secondLook.aloneFrom } : undefined;
}

/** What the readiness comes to, in one short sentence. */
export function readinessWords({ assessed, objections }: Readiness): string {
  if (!assessed) return 'Not assessed: the file names no hazard that ends in a crash or an injury.';
  if (objections.length === 0) return 'Nothing that a crash or an injury hangs on is open, undone, uncured or unseen.';
  const count = (why: Objection['why']) => objections.filter((each) => each.why === why).length;
  const parts = (['undone', 'open', 'curing', 'unseen'] as const).flatMap((why) => (count(why) === 0 ? [] : [`${count(why)} ${why === 'unseen' ? 'without a second look' : why}`]));
  return `Not to be flown: of what a crash or an injury hangs on, ${parts.join(', ')}.`;
}
