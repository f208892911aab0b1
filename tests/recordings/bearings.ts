import type { BearingOrders, LineComb } from '@rotorwright/signals';
import { fieldScene } from './cases.ts';
import { chanceOf } from './chance.ts';
import { electric, twoStroke } from './machines.ts';
import type { Scene } from './make-recording.ts';

type FlawPlace = keyof BearingOrders['strikes'];

/**
 * Strikes of a bearing by its balls: how many there are, and how thick one is as a part of the circle on which they run.
 *
 * @source n/2·(1 ∓ d/D) for the races, (1 − (d/D)²)·D/d for a ball that strikes both (from memory)
 */
const bearing = (id: string, turns: number, balls: number, part: number): BearingOrders => ({
  id, turns, strikes: { 'outer race': (turns * balls * (1 - part)) / 2, 'inner race': (turns * balls * (1 + part)) / 2, ball: (turns * (1 - part ** 2)) / part },
});

const tailTurns = 4.7 * (19 / 18);

/** The made-up machines with the bearings of their shafts. */
export const withBearings: readonly LineComb[] = [
  {
    ...twoStroke,
    shafts: [{ shaft: 'mast', order: 1 }, { shaft: 'tube', order: 4.7 }, { shaft: 'tail', order: tailTurns }, { shaft: 'crank', order: 113 / 14 }],
    bearings: [bearing('mast', 1, 10, 0.21), bearing('tube', 4.7, 7, 0.27), bearing('tail', tailTurns, 8, 0.2), bearing('clutch', 113 / 14, 9, 0.24)],
  },
  {
    ...electric,
    shafts: [{ shaft: 'mast', order: 1 }, { shaft: 'tail', order: 66 / 14 }, { shaft: 'motor', order: 109 / 12 }],
    bearings: [bearing('mast', 1, 12, 0.19), bearing('tail', 66 / 14, 7, 0.26), bearing('motor', 109 / 12, 8, 0.23)],
  },
];

/** A machine in the field whose bearings are known, recorded with the high frequencies in which they ring. */
export function bearingScene(seed: number, seconds: number, loudness: number): Scene {
  const chance = chanceOf(seed * 59 + 4);
  return { ...fieldScene(seed, seconds, loudness), comb: chance.pick(withBearings), rate: chance.pick([22_050, 44_100, 48_000]) };
}

/** The same machine with a flaw in one of its bearings, whose strikes lie a little off what its sizes say; as loud against all its lines, dB. */
export function strikingScene(seed: number, seconds: number, loudness: number, strikes: number): { readonly scene: Scene; readonly flaw: { readonly bearing: string; readonly place: FlawPlace } } {
  const scene = bearingScene(seed, seconds, loudness);
  const chance = chanceOf(seed * 61 + 8);
  const flawed = chance.pick(scene.comb.bearings!);
  const place = chance.pick<FlawPlace>(['outer race', 'inner race', 'ball']);
  const order = flawed.strikes[place] * (1 + chance.between(-0.02, 0.02));
  return { scene: { ...scene, strikes: { order, ring: chance.between(4500, 9500), loudness: strikes } }, flaw: { bearing: flawed.id, place } };
}
