export { balanceGrade } from './balance-grade.ts';
export { balanceSinglePlane } from './balance-single-plane.ts';
export { massProperties } from './mass-properties.ts';
