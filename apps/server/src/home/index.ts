export { backupLines, BackupError, restoreBackup, type BackupCount } from './backup.ts';
export { writeDurably, writePiecesDurably } from './durable-file.ts';
export { Home, HomeError, defaultHome } from './home.ts';
export { linesOf } from './lines-of.ts';
export { isMachineId } from './machine-files.ts';
export { isPhotoName, largestPhoto, photoProblem } from './photos.ts';
