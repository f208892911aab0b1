export { BackupError, makeBackup, restoreBackup, type BackupCount } from './backup.ts';
export { writeDurably } from './durable-file.ts';
export { Home, HomeError, defaultHome } from './home.ts';
export { isMachineId } from './machine-files.ts';
export { isPhotoName, largestPhoto, photoProblem } from './photos.ts';
