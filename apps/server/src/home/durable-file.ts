import { randomUUID } from 'node:crypto';
import { closeSync, existsSync, fchmodSync, fsyncSync, openSync, realpathSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';
import path from 'node:path';

/**
 * Replaces a file as a whole: a reader sees the old content or the new one, and after the return the new one survives a power cut.
 * A link is followed, so that a file kept elsewhere stays there.
 */
export function writeDurably(file: string, content: string | Uint8Array): void {
  writePiecesDurably(file, [content]);
}

/** As `writeDurably`, of pieces that need not fit into memory together. When making one of them throws, the old content stays. */
export function writePiecesDurably(file: string, pieces: Iterable<string | Uint8Array>): void {
  const target = existsSync(file) ? realpathSync(file) : file;
  const folder = path.dirname(target);
  const temporary = path.join(folder, `.${path.basename(target)}.${randomUUID()}.tmp`);
  try {
    const handle = openSync(temporary, 'wx', 0o644);
    try {
      if (existsSync(target)) fchmodSync(handle, statSync(target).mode & 0o777);
      for (const piece of pieces) {
        const bytes = typeof piece === 'string' ? Buffer.from(piece, 'utf8') : piece;
        for (let written = 0; written < bytes.length; ) written += writeSync(handle, bytes, written);
      }
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(temporary, target);
  } catch (error) {
    rmSync(temporary, { force: true });
    throw error;
  }
  syncFolder(folder);
}

/** Makes renames and new names in a folder last. Windows cannot open folders and needs no such thing. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
