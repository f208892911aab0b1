import { membersOf } from '../lookup.ts';
import { Queue } from '../queue.ts';
import { carries, type Assembly, type Body, type Tie } from './assembly.ts';

/**
 * How far each body is from the ground, by the best way: as few second lines as can be, then as few ball links, then as
 * few stacks, then as few joints. A body is kept by its ties to bodies of lower rank; so a blade hangs on its grip, and the
 * grip on its spindle, not on the links that turn it.
 */
export interface Ranks {
  /** Undefined: the file does not say what keeps it. */
  readonly of: (body: Body) => number | undefined;
  /** Whether the best way to the first leads through more stacks, links or second lines than that to the second. */
  readonly isTierAbove: (body: Body, other: Body) => boolean;
}

export function ranksOf(assembly: Assembly): Ranks {
  const base = assembly.bodies.size + 1;
  const weights = { joint: 1, stack: base, link: base ** 2, backup: base ** 3 } as const;
  const known = new Map<Body, number>();
  const weightOf = ({ joint }: Tie): number => (joint.backup ? weights.backup : joint.kind === 'ball-link' ? weights.link : weights.joint);
  const waiting = new Queue<{ readonly body: Body; readonly rank: number }>(({ rank }) => rank);
  const put = (body: Body, rank: number): void => {
    if (!known.has(body)) waiting.push({ body, rank });
  };
  for (const body of assembly.ground) put(body, 0);
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { body, rank } = next;
    if (known.has(body)) continue;
    known.set(body, rank);
    for (const tie of assembly.ties.get(body) ?? []) if (carries(tie.joint, 'place')) put(otherEnd(tie, body), rank + weightOf(tie));
    for (const stack of assembly.stacksOf.get(body) ?? []) {
      // What lies loose in a stack keeps nothing, and comes after what joints keep on its spindle or in its housing.
      const isColumn = (member: Body): boolean => member === stack.spindle || stack.housing.includes(member);
      if (isColumn(body)) for (const other of membersOf(stack)) put(other, rank + (isColumn(other) ? 1 : 2) * weights.stack);
    }
  }
  const tier = (body: Body): number => Math.floor((known.get(body) ?? Infinity) / base);
  return { of: (body) => known.get(body), isTierAbove: (body, other) => tier(body) > tier(other) };
}

export function otherEnd({ between: [a, b] }: Tie, body: Body): Body {
  return body === a ? b : a;
}
