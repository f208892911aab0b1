import { remembered, type Joint } from '@rotorwright/machine';

/**
 * undone   one copy of a joint was left out, or left loose
 * skipped  the whole step was, with all its copies
 * lock     a lock gave way
 * loose    nothing locks it and nothing keeps it: it works loose by itself
 * wrong    a stack was put together in another order, or facing another way
 */
export type EventKind = 'undone' | 'skipped' | 'lock' | 'loose' | 'wrong';

/** Something that may go wrong by itself. Parts that break are left out. */
export interface BasicEvent {
  readonly id: string;
  readonly kind: EventKind;
  /** Thing id of the joint or stack; also the id of the step whose signature guards it. */
  readonly step: string;
  /** The copy, where one copy is meant. */
  readonly copy?: string;
  /** Lock events: what gives way: a grade, or `fit` where the joint holds by its own kind. */
  readonly lock?: string;
}

export class EventBook {
  readonly events = new Map<string, BasicEvent>();

  undone(joint: Joint, copy: string): readonly string[] {
    const skipped = joint.each.length > 1 ? [this.#put({ id: `skipped:${joint.id}`, kind: 'skipped', step: joint.id })] : [];
    return [this.#put({ id: `undone:${copy}`, kind: 'undone', step: joint.id, copy }), ...skipped];
  }

  lock(joint: Joint, copy: string, lock: string): string {
    return this.#put({ id: `lock:${copy}:${lock}`, kind: 'lock', step: joint.id, copy, lock });
  }

  loose(joint: Joint, copy: string): string {
    return this.#put({ id: `loose:${copy}`, kind: 'loose', step: joint.id, copy });
  }

  wrong(stack: string): string {
    return this.#put({ id: `wrong:${stack}`, kind: 'wrong', step: stack });
  }

  #put(event: BasicEvent): string {
    // What stands in the book already is the same: it keeps its place there.
    this.events.set(event.id, event);
    return event.id;
  }
}

/** Fits that let a pin walk out. */
const loosePin = /slide|loose/iu;

/** Kinds that hold by what they are where the file names no lock: a press fit, glue, a ring in its groove, a snapped ball. */
const holdsItself: ReadonlySet<Joint['kind']> = new Set(['press', 'bond', 'circlip', 'ball-link']);

/** What locks a joint: its grades, or its own fit. Nothing: it must be kept by another joint, or works loose. */
export const locksOf = remembered((joint: Joint): readonly string[] => {
  if (joint.locks !== undefined) return [...new Set(joint.locks.map(({ grade }) => grade).filter((grade) => grade !== 'none'))];
  const pressedPin = joint.kind === 'pin' && joint.fit !== undefined && !loosePin.test(joint.fit);
  return pressedPin || holdsItself.has(joint.kind) ? ['fit'] : [];
});
