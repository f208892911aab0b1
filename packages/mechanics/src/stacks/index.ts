export { randomState } from '../numeric/random.ts';
export type { StackMember } from './draw-gaps.ts';
export { simulateStack, worstCase } from './tolerance-stack.ts';
