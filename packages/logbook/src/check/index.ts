export { readEntry, type ReadSealedEntry } from './read-entry.ts';
export { readNewEntry, type ReadEntry } from './read-new-entry.ts';
