export { minimalCutSets, type CutSets } from './cut-sets.ts';
export { FaultTreeError, type FaultTree, type Gate } from './fault-tree.ts';
export { singleCauses } from './single-causes.ts';
export { probabilitySolver, topProbability, type TopProbability } from './top-probability.ts';
