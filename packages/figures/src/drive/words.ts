import { dot } from '@rotorwright/mechanics';
import type { Direction } from '@rotorwright/machine';

/** Where somebody stands who looks at a turning shaft, and the direction from the shaft to him. */
interface Viewer {
  readonly name: string;
  readonly from: Direction;
}

const above: Viewer = { name: 'from above', from: [0, 0, 1] };
const behind: Viewer = { name: 'from behind', from: [-1, 0, 0] };
const leftSide: Viewer = { name: 'from the left', from: [0, 1, 0] };

/** A sense of rotation in words, with the viewer named. */
export interface SenseWords {
  /** "clockwise from above", "top towards the tail". */
  readonly words: string;
  /** "clockwise". */
  readonly sense: 'clockwise' | 'counter-clockwise';
  /** "from above", "from behind", "from the left". */
  readonly viewer: string;
  /** The axis leans by more than 5° from the line of sight. */
  readonly leaning: boolean;
}

/**
 * Puts a spin vector into words. Right-handed about a vector that points at the viewer is counter-clockwise.
 * A shaft across the machine is named by its top, as people of the trade do.
 *
 * @param spin  unit vector about which the shaft turns right-handed
 */
export function senseWords(spin: Direction): SenseWords {
  const across = Math.abs(spin[1]);
  const viewer = Math.abs(spin[2]) >= Math.max(Math.abs(spin[0]), across) ? above : Math.abs(spin[0]) >= across ? behind : leftSide;
  const towards = dot(spin, viewer.from);
  const sense = towards > 0 ? 'counter-clockwise' : 'clockwise';
  const leaning = Math.abs(towards) < Math.cos(Math.PI / 36);
  // About left (y) the top (z) moves along y × z = x, to the nose.
  const words = viewer === leftSide ? `top towards the ${towards > 0 ? 'nose' : 'tail'}` : `${sense} ${viewer.name}`;
  return { words, sense, viewer: viewer.name, leaning };
}

const named: readonly (readonly [string, Direction])[] = [
  ['up', [0, 0, 1]],
  ['down', [0, 0, -1]],
  ['fore', [1, 0, 0]],
  ['aft', [-1, 0, 0]],
  ['left', [0, 1, 0]],
  ['right', [0, -1, 0]],
];

/** The nearest of up, down, fore, aft, left, right. */
export function directionWord(direction: Direction): string {
  let best = named[0]!;
  for (const each of named) if (dot(each[1], direction) > dot(best[1], direction)) best = each;
  return best[0];
}

/** The direction that a word names; undefined for words such as inboard, which turn with the rotor. */
export const directionOf = (word: string): Direction | undefined => named.find(([name]) => name === word)?.[1];
