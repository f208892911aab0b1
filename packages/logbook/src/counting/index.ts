export { countBags, wantedOf, type BagCount, type LineCount, type Wanted } from './count-bags.ts';
