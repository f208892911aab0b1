import type { Hatch, Point } from './primitives.ts';

/** A region that is cut: hatched once its neighbours are known. */
export interface Cut {
  readonly points: readonly Point[];
  readonly part: string;
  readonly small: boolean;
}

const touches = (a: Cut, b: Cut): boolean => {
  const box = (cut: Cut) => ({ x0: Math.min(...cut.points.map(([x]) => x)), x1: Math.max(...cut.points.map(([x]) => x)), y0: Math.min(...cut.points.map(([, y]) => y)), y1: Math.max(...cut.points.map(([, y]) => y)) });
  const p = box(a);
  const q = box(b);
  const slack = 1e-6;
  return p.x0 <= q.x1 + slack && q.x0 <= p.x1 + slack && p.y0 <= q.y1 + slack && q.y0 <= p.y1 + slack;
};

const hatches: readonly Hatch[] = [{ turn: 1, close: false }, { turn: -1, close: false }, { turn: 1, close: true }, { turn: -1, close: true }];

/** Gives every cut part its section lines: all regions of one part alike, touching parts never alike. */
export function hatchNeighbours(cuts: readonly Cut[]): readonly (Cut & { readonly hatch: Hatch })[] {
  const given = new Map<string, Hatch>();
  for (const cut of cuts) {
    if (given.has(cut.part)) continue;
    const own = cuts.filter((one) => one.part === cut.part);
    const taken = cuts.filter((one) => one.part !== cut.part && own.some((mine) => touches(mine, one))).flatMap((one) => given.get(one.part) ?? []);
    const turnTaken = new Set(taken.map((hatch) => hatch.turn));
    const wished = hatches.filter((hatch) => hatch.close === cut.small);
    const free = wished.find((hatch) => !turnTaken.has(hatch.turn)) ?? hatches.find((hatch) => !taken.some((one) => one.turn === hatch.turn && one.close === hatch.close));
    given.set(cut.part, free ?? wished[0] ?? { turn: 1, close: cut.small });
  }
  return cuts.map((cut) => ({ ...cut, hatch: given.get(cut.part) ?? { turn: 1, close: false } }));
}

