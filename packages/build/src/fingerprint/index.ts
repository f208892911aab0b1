export { answersTo } from './answers-to.ts';
export { fingerprint, fingerprinter } from './fingerprint.ts';
export { normalThread } from './normal.ts';
