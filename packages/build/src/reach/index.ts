export { fallsWith } from './falls-with.ts';
export { reach } from './reach.ts';
export { undoneBy, type Fall } from './undone-by.ts';
export { openedOn, wayBack, type BackStep } from './way-back.ts';
export type * from './way.ts';
export type { Why } from './wants.ts';
