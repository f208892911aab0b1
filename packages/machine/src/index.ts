export type * from './findings/finding.ts';
export { findingCodes, formatFinding, isFindingCode, severityOf, wordFinding, type FindingCode, type WordedFinding } from './findings/words.ts';
export type * from './model/index.ts';
export { placeOf } from './place-of.ts';
export { readMachine, type ReadOptions, type ReadResult } from './read/read-machine.ts';
export { removeEntry, setEntry, type EditResult } from './edit/set-entry.ts';
export { completions, type Completion, type Completions } from './complete/completions.ts';
export { machineSchema, type JsonSchema } from './schema/json-schema.ts';
export { newMachine, type FirstFacts, type FirstRotor } from './new-machine.ts';
