export { readAccelerationTable } from './read-acceleration-table.ts';
export { readWav } from './read-wav.ts';
export { isUnreadable, type Recording, type Unreadable } from './recording.ts';
