import type { Vector } from '../schema/field.ts';

/** x forward, y left, z up. */
const axes: Readonly<Record<string, Vector>> = {
  up: [0, 0, 1], down: [0, 0, -1], fore: [1, 0, 0], aft: [-1, 0, 0], left: [0, 1, 0], right: [0, -1, 0],
};
/** From the machine towards whoever looks at it: turning counter-clockwise for him is right-handed about this. */
const viewers: Readonly<Record<string, Vector>> = {
  above: [0, 0, 1], below: [0, 0, -1], front: [1, 0, 0], behind: [-1, 0, 0], left: [0, 1, 0], right: [0, -1, 0],
};

export const axisWords = Object.keys(axes);
export const viewerWords = Object.keys(viewers);

export function axisOf(word: string): Vector | undefined {
  return Object.hasOwn(axes, word) ? axes[word] : undefined;
}

/**
 * Spin vector of a sense of rotation and the side from which it is seen; the viewer stands there and looks at the machine.
 *
 * @example spinOf('counter-clockwise from above') // [0, 0, 1]
 * @example spinOf('clockwise from left') // [0, -1, 0]
 */
export function spinOf(words: string): Vector | undefined {
  const match = /^\s*(counter-?clockwise|anti-?clockwise|clockwise)\s+from\s+(?:the\s+)?(\w+)\s*$/u.exec(words);
  if (!match || !Object.hasOwn(viewers, match[2] as string)) return undefined;
  const towardsViewer = viewers[match[2] as string] as Vector;
  return match[1] === 'clockwise' ? turned(towardsViewer) : towardsViewer;
}

function turned([x, y, z]: Vector): Vector {
  // `+ 0` keeps -0 out.
  return [-x + 0, -y + 0, -z + 0];
}

/** Unit vector; undefined for one without length. */
export function unitVector([x, y, z]: Vector): Vector | undefined {
  const length = Math.hypot(x, y, z);
  return length > 0 && Number.isFinite(length) ? [x / length + 0, y / length + 0, z / length + 0] : undefined;
}
