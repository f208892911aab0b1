import { divideRatios, multiplyRatios, ratio, sameRatio, type Ratio } from './ratio.ts';

/** Two shafts whose speeds are tied: ω_b = ratio · ω_a while engaged. */
export interface TrainCoupling {
  /** Shaft numbers, 0 … shafts − 1. */
  readonly a: number;
  readonly b: number;
  /** Exact signed speed ratio ω_b/ω_a; not zero. */
  readonly ratio: Ratio;
  /** False when it lets the shafts turn freely: a clutch that is open, a one-way clutch that overruns. */
  readonly engaged: boolean;
}

/** Two ways to one shaft that ask for different speeds. Nothing but a jam or a broken tooth can meet both. */
export interface Contradiction {
  /** Shaft where the two ways meet. */
  readonly shaft: number;
  /** Numbers of the couplings, in order once round the loop; the last is the one that closes it. */
  readonly couplings: readonly number[];
  /** Speed of that shaft over the speed of the source, or of the first shaft of a group that the source does not turn: by either way. */
  readonly ratios: readonly [Ratio, Ratio];
}

export interface TrainSolution {
  /** Speed over the speed of the source, one for each shaft. */
  readonly ratios: readonly (Ratio | 'decoupled')[];
  /** Empty for a sound drive. Where there are any, the ratios hold for the ways that come first in the list of couplings. */
  readonly contradictions: readonly Contradiction[];
}

/**
 * Exact speeds of all shafts of a train that one shaft turns.
 *
 * A spanning forest is grown breadth first; each coupling that it does not use must agree with it. The time is
 * linear in shafts and couplings, and in the length of the contradictory loops when there are any.
 *
 * @param shafts     how many
 * @param couplings  in any order, several between the same shafts allowed
 * @param source     number of the shaft that turns the others
 * @throws RangeError when a shaft number is out of range or a ratio is zero
 * @source definition: speeds multiply along a path
 * @example ratioText(solveTrain(2, [{ a: 0, b: 1, ratio: ratio(-17, 85), engaged: true }], 0).ratios[1]) // '-1/5'
 */
export function solveTrain(shafts: number, couplings: readonly TrainCoupling[], source: number): TrainSolution {
  checkTrain(shafts, couplings, source);
  const meetings = couplingsOfEachShaft(shafts, couplings);
  const speed: (Ratio | undefined)[] = Array.from({ length: shafts });
  const viaCoupling = new Int32Array(shafts).fill(-1);
  const depth = new Int32Array(shafts);
  const used = new Uint8Array(couplings.length);

  function grow(root: number): number[] {
    speed[root] = ratio(1);
    const reached = [root];
    for (let next = 0; next < reached.length; next += 1) {
      const from = reached[next]!;
      for (const index of meetings[from]!) {
        const coupling = couplings[index]!;
        const to = coupling.a === from ? coupling.b : coupling.a;
        if (speed[to] !== undefined) continue;
        speed[to] = speedAcross(coupling, from, speed[from]!);
        viaCoupling[to] = index;
        depth[to] = depth[from]! + 1;
        used[index] = 1;
        reached.push(to);
      }
    }
    return reached;
  }

  // Groups that the source does not turn are grown too, only to find the loops that would jam in them.
  const driven = new Set(grow(source));
  for (let shaft = 0; shaft < shafts; shaft += 1) if (speed[shaft] === undefined) grow(shaft);

  const contradictions: Contradiction[] = [];
  couplings.forEach((coupling, index) => {
    if (!coupling.engaged || used[index]) return;
    const { a, b } = coupling;
    const other = multiplyRatios(speed[a]!, coupling.ratio);
    if (sameRatio(other, speed[b]!)) return;
    contradictions.push({ shaft: b, couplings: [...treePath(couplings, viaCoupling, depth, a, b), index], ratios: [speed[b]!, other] });
  });
  return { ratios: speed.map((value, shaft) => (driven.has(shaft) ? value! : 'decoupled')), contradictions };
}

function speedAcross(coupling: TrainCoupling, from: number, speed: Ratio): Ratio {
  return coupling.a === from ? multiplyRatios(speed, coupling.ratio) : divideRatios(speed, coupling.ratio);
}

function couplingsOfEachShaft(shafts: number, couplings: readonly TrainCoupling[]): number[][] {
  const meetings: number[][] = Array.from({ length: shafts }, () => []);
  couplings.forEach(({ a, b, engaged }, index) => {
    if (!engaged) return;
    meetings[a]!.push(index);
    if (a !== b) meetings[b]!.push(index);
  });
  return meetings;
}

/** Couplings of the forest from one shaft up to where the two branches meet and down to the other. */
function treePath(couplings: readonly TrainCoupling[], viaCoupling: Int32Array, depth: Int32Array, from: number, to: number): number[] {
  const up: number[] = [];
  const down: number[] = [];
  let left = from;
  let right = to;
  while (left !== right) {
    const leftIsDeeper = depth[left]! >= depth[right]!;
    const shaft = leftIsDeeper ? left : right;
    const index = viaCoupling[shaft]!;
    const { a, b } = couplings[index]!;
    const parent = a === shaft ? b : a;
    (leftIsDeeper ? up : down).push(index);
    if (leftIsDeeper) left = parent;
    else right = parent;
  }
  return [...up, ...down.toReversed()];
}

function checkTrain(shafts: number, couplings: readonly TrainCoupling[], source: number): void {
  const known = (shaft: number): boolean => Number.isInteger(shaft) && shaft >= 0 && shaft < shafts;
  if (!known(source)) throw new RangeError(`solveTrain: the source must be a shaft number below ${shafts}, got ${source}`);
  couplings.forEach((coupling, index) => {
    if (!known(coupling.a) || !known(coupling.b)) throw new RangeError(`solveTrain: coupling ${index} must join shaft numbers below ${shafts}, got ${coupling.a} and ${coupling.b}`);
    if (coupling.ratio.numerator === 0n) throw new RangeError(`solveTrain: the ratio of coupling ${index} must not be 0`);
  });
}
