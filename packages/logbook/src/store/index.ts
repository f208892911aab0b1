export { LogStoreError, type LogStore, type LogStoreProblem } from './log-store.ts';
export { openLogStore } from './sqlite-log-store.ts';
