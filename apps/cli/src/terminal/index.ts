export { painter, type Ink } from './paint.ts';
export { paragraph, table, widthOf, wrap, type Column } from './table.ts';
export { processTerminal, type Terminal } from './terminal.ts';
export { branch } from './tree.ts';
