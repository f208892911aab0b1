export { heardRecords, type HeardEntry } from './heard-records.ts';
