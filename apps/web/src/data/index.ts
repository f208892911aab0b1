export { newEntryId } from './entry-id.ts';
export { Refused } from './api.ts';
export { opensOffline } from './installed.ts';
export type { Kept } from './outbox.ts';
export { photoFrom, type Photo } from './photo.ts';
export { BoardProvider, useBoard, wordsOf, type Board } from './board.tsx';
export { MachineContext, useFile, useMachine, useMachineOnBoard, useOpenMachine, type OpenMachine, type ReadableMachine } from './use-machine.ts';
export { useNow } from './use-now.ts';
export { readFile, type MachineView, type ReadFile } from './view.ts';
