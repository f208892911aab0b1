export { writeDurably } from './durable-file.ts';
export { Home, HomeError, defaultHome } from './home.ts';
export { isMachineId, type MachineFile } from './machine-files.ts';
