import type { StateSolution } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import type { PlacedTrain } from './place.ts';
import { lieOf } from './view.ts';

/** How a shaft moves on the paper. */
export interface PaperMotion {
  readonly condition: 'turns' | 'stands' | 'unknown' | 'contradicted';
  /** Speed over that of the source, without sign; 0 when it stands or is not known. */
  readonly factor: number;
  /** End-on: 1 anticlockwise on the paper. In the paper: 1 right-handed about its axis. */
  readonly way: 1 | -1;
  /** The way follows from the file, and so may be shown as an arrow. */
  readonly known: boolean;
}

/**
 * How every shaft moves on the paper in one state. Where the file does not settle the sense, the meshes still say how
 * the wheels turn against each other, so that the picture can turn in step; no arrow is drawn then.
 */
export function paperMotions(machine: Machine, train: PlacedTrain, solution: StateSolution | undefined): ReadonlyMap<string, PaperMotion> {
  const motions = new Map<string, PaperMotion>();
  const ways = new Map<string, 1 | -1>();
  for (const station of train.stations) {
    for (const shaft of station.shafts) {
      const lie = lieOf(machine.shafts.get(shaft)!, train.view);
      const sense = solution?.motions.get(shaft)?.sense;
      if (sense && lie.kind === 'end' && lie.sign) ways.set(station.id, (sense * lie.sign) as 1 | -1);
    }
  }
  if (train.stations[0] && !ways.has(train.stations[0].id)) ways.set(train.stations[0].id, 1);
  for (const { coupling, from, to } of train.ties) {
    const way = ways.get(from) ?? 1;
    if (!ways.has(to)) ways.set(to, (coupling.kind === 'external' ? -way : way) as 1 | -1);
  }
  for (const [shaft, motion] of solution?.motions ?? []) {
    const station = train.stations.find(({ shafts }) => shafts.includes(shaft));
    motions.set(shaft, { condition: motion.condition, factor: motion.factor ?? 0, way: station ? (ways.get(station.id) ?? 1) : (motion.sense ?? 1), known: motion.sense !== undefined && machine.shafts.get(shaft)!.axis !== undefined });
  }
  for (const shaft of machine.shafts.keys()) if (!motions.has(shaft)) motions.set(shaft, { condition: 'unknown', factor: 0, way: 1, known: false });
  return motions;
}

