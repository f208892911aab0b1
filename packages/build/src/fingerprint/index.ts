export { fingerprint, fingerprinter } from './fingerprint.ts';
export { normalThread, normalWords } from './normal.ts';
