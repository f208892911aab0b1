import type { Machine, Stack } from '@rotorwright/machine';

/** Which way round the two washers of a thrust bearing go: words for the two ends of its stack. */
export interface WasherSides {
  readonly tight: string;
  readonly loose: string;
}

/**
 * The washer with the tight bore sits against what is fixed to the spindle, the one with the loose bore against the
 * housing side, so that it can float. From the direction of the load: a housing pushed outboard pushes the loose washer
 * from inboard; a spindle pushed outboard pushes the tight one from inboard.
 *
 * @returns nothing when the file gives no direction, gives both, or what pushes is neither spindle nor housing
 * @source single-direction thrust ball bearings: shaft washer with the ground, tight bore (read, makers); sides derived from the load path
 */
export function washerSides(machine: Machine, stack: Stack): WasherSides | undefined {
  const sides = stack.loads.map((load) => {
    const at = 'pushes' in load ? stack.ends.indexOf(load.towards) : -1;
    const member = 'pushes' in load ? memberOf(machine, stack, load.pushes) : undefined;
    if (at === -1 || member === undefined) return undefined;
    const ahead = stack.ends[at === 0 ? 0 : 1];
    const behind = stack.ends[at === 0 ? 1 : 0];
    return member === 'housing' ? { loose: behind, tight: ahead } : { tight: behind, loose: ahead };
  });
  const [first] = sides;
  return first !== undefined && sides.every((side) => side?.tight === first.tight) ? first : undefined;
}

function memberOf(machine: Machine, stack: Stack, pushes: string): 'spindle' | 'housing' | undefined {
  if (pushes === stack.spindle) return 'spindle';
  if (stack.housing.includes(pushes)) return 'housing';
  // A loose washer or collar goes with what it turns with.
  const turnsWith = machine.parts.get(machine.thingOf.get(pushes) ?? pushes)?.turnsWith;
  if (turnsWith === undefined || turnsWith === pushes) return undefined;
  return turnsWith === stack.spindle ? 'spindle' : stack.housing.includes(turnsWith) ? 'housing' : undefined;
}
