export { dimensionName, pureNumber, sameDimension, siUnit } from './dimension.ts';
export { durationWords } from './duration.ts';
export { editDistance, nearestUnit } from './nearest.ts';
export type * from './quantity.ts';
export { isProblem, readQuantity, readSize, readWindow } from './read.ts';
export { fromUnit, inUnit, showNumber, showQuantity, writeQuantity, type ShowOptions } from './show.ts';
export { listedUnits, type ListedUnit } from './table.ts';
export { isUnit, unit, type Unit } from './unit.ts';
