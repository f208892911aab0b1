export { soundRecord, type RecordedLine, type SoundRecord } from './sound-record.ts';
export { trendsOf, type LineTrend } from './trends.ts';
