import { angleToReach, ballOf, type LeverTrain, type Mover } from '@rotorwright/mechanics';
import { less } from './mast-frame.ts';

/** How far the servo has turned that turned a servo or lever so far. */
export function turnBack({ servos, levers }: LeverTrain, mover: Mover, angle: number): { readonly servo: number; readonly angle: number } | undefined {
  if ('servo' in mover) return { servo: mover.servo, angle };
  const { pivot, axis, ball, rod } = levers[mover.lever]!;
  const before = 'servo' in rod.from ? servos[rod.from.servo]! : levers[rod.from.lever]!;
  const turned = angleToReach(before, rod.ball, ballOf({ pivot, axis, arm: less(ball, pivot) }, angle), rod.length);
  return turned === undefined ? undefined : turnBack({ servos, levers }, rod.from, turned);
}
