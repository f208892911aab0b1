export { bagsOf, sizeWords, type BagLine, type KitBag } from './bags.ts';
export { bagsFromList, type ReadList } from './bags-from-list.ts';
