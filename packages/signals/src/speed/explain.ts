import { candidatePaths } from './candidates.ts';
import type { LineComb, LineGroup, ReadyFamily } from './comb.ts';
import type { HeardGroup } from './hearing.ts';
import { another, evidenceOf, freeHypotheses, lockedHypothesis, type Hypothesis, type Locked } from './hypotheses.ts';
import { lookAlong, type Look } from './look.ts';
import { groups, type SpeedGrid } from './scores.ts';
import { sharesOf } from './standing.ts';
import type { Turns } from './straighten.ts';

/** A group is audible from these odds on, at a place that the others name. */
const audibleFrom = 5;
/** A machine is heard from these odds on, over all the speeds that were tried. */
const heardFrom = 18;
/** One speed is told from another by these odds. */
export const sureFrom = 7;
/** A path is plain when its lines stand in every part of the recording by so much of what they do in the best: half of it may be luck. */
const evenShare = 0.5;

/** What is listened to, and how. */
export interface Ear {
  readonly samples: Float64Array;
  /** Hz */
  readonly rate: number;
  readonly straighten: (turns: Turns) => Float64Array;
  readonly comb: LineComb;
  readonly grid: SpeedGrid;
}

export interface Explanation {
  readonly best: Hypothesis;
  /** Odds over the next best speed that is another, nepers. */
  readonly margin: number;
  readonly groups: readonly HeardGroup[];
}

/**
 * The best explanation of a recording, locked or free: search after search, until one is plain.
 *
 * @param onSearch  called before each search but the first
 * @returns         undefined when nothing fits the machine
 */
export function explain(ear: Ear, families: readonly ReadyFamily[], onSearch: (searched: number) => void): Explanation | undefined {
  const locked: Locked[] = [];
  const all: Hypothesis[] = [];
  let searched = 0;
  for (const paths of pathsOf(ear, families)) {
    const looks = paths.map((turns) => lookAt(ear, turns, families));
    const own = looks.map((look) => lockedHypothesis(look, families));
    locked.push(...own);
    all.push(...own, ...looks.flatMap((look) => freeHypotheses(look, families, ear.comb)));
    if (locked.some((each) => isPlain(each, families))) break;
    searched += 1;
    onSearch(searched);
  }
  const best = likeliest(all);
  if (!(best.worth >= heardFrom)) return undefined;
  const margin = Math.min(
    ...locked.filter(({ look }) => look === best.look && best.free === undefined).map((each) => each.margin),
    ...all.filter((each) => !alike(each, best)).map((each) => best.rank - each.rank),
    best.worth,
  );
  const heard = groups.filter((group) => families.some(({ family }) => family.group === group)).map((group): HeardGroup => {
    const evidence = evidenceOf(best, group);
    return { group, evidence, audible: evidence >= audibleFrom };
  });
  return { best, margin, groups: heard };
}

/** The same explanation along a path that is searched by other families: those of the machine as it is heard to turn. */
export function explainAgain(ear: Ear, families: readonly ReadyFamily[], before: Hypothesis): Hypothesis {
  const again = (pathsOf(ear, families).next().value ?? []).map((turns) => lockedHypothesis(lookAt(ear, turns, families), families));
  return likeliest([before, ...again.filter((each) => alike(each, before))]);
}

const pathsOf = ({ samples, rate, straighten, comb: { slowest, fastest } }: Ear, families: readonly ReadyFamily[]): Generator<readonly Turns[], undefined> =>
  candidatePaths({ samples, rate, straighten, families, slowest, fastest });

const lookAt = ({ straighten, rate, grid }: Ear, turns: Turns, families: readonly ReadyFamily[]): Look => lookAlong(turns, straighten(turns), rate, families, grid);

const likeliest = (some: readonly Hypothesis[]): Hypothesis => some.reduce((most, each) => (each.rank > most.rank ? each : most));

/** Whether two have the rotor turn at one speed most of the time. */
const alike = (a: Hypothesis, b: Hypothesis): boolean => Math.abs(usualOf(a) - usualOf(b)) <= another;
const usualOf = ({ look, place }: Hypothesis): number => Math.log(look.grid.speeds[place]! * look.usual);

/** Whether a path explains the recording so well, from end to end, that no other needs be looked for. */
function isPlain(hypothesis: Locked, families: readonly ReadyFamily[]): boolean {
  const audible = groups.filter((group: LineGroup) => group !== 'mesh' && evidenceOf(hypothesis, group) > 3 * audibleFrom);
  if (!(hypothesis.worth > 5 * heardFrom && hypothesis.margin > 2 * sureFrom && audible.length > 1)) return false;
  const { look: { pooled, grid }, place } = hypothesis;
  const orders = families.flatMap(({ lines }) => lines.map(({ order }) => order));
  return Math.min(...sharesOf(pooled, grid.speeds[place]!, orders)) > evenShare;
}
