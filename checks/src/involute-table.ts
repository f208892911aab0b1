import type { Check } from './check.ts';
import { gearCase, gearCheck, si } from './gear-cases.ts';

const table = ['gear-inv-10', 'gear-inv-14p5', 'gear-inv-20', 'gear-inv-25'];

/** Involute tables of gear handbooks. */
export const involuteTable: readonly Check[] = [
  ...table.map((id) => gearCheck(id, 'involute', 'inv', 'involute', { angle: si(gearCase(id).inputs, 'alpha') })),
  gearCheck('gear-invinv-1', 'involute-inverse', 'alpha', 'angle', { involute: si(gearCase('gear-invinv-1').inputs, 'inv') }),
];
