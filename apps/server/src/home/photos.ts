import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { syncFolder, writeDurably } from './durable-file.ts';

/** Photos are named by what is in them, so that no name leads out of the folder and none ever stands for another picture. */
export const isPhotoName = (name: string): boolean => /^[0-9a-f]{64}$/u.test(name);

/** Bytes. The bench sends a few hundred thousand. */
export const largestPhoto = 4 * 1024 * 1024;

const suffix = '.jpg';
/** Start of image, and the marker that follows it. @source ISO/IEC 10918-1, annex B */
const startOfImage = Buffer.from([0xff, 0xd8, 0xff]);

/** What is wrong with a photo that is said to have this SHA-256, in a sentence; undefined when it is good. */
export function photoProblem(sha256: string, bytes: Uint8Array): string | undefined {
  if (bytes.length > largestPhoto) return `A photo may have ${largestPhoto.toLocaleString('en')} bytes at most; this one has ${bytes.length.toLocaleString('en')}.`;
  if (startOfImage.compare(bytes.subarray(0, startOfImage.length)) !== 0) return 'A photo must be a JPEG picture; its first bytes say that it is none.';
  const found = createHash('sha256').update(bytes).digest('hex');
  return found === sha256 ? undefined : `The SHA-256 of its content is ${found}, not ${sha256}.`;
}

/** The photos of one home folder: `photos/<SHA-256>.jpg`. */
export class Photos {
  readonly #folder: string;

  constructor(home: string) {
    this.#folder = path.join(home, 'photos');
  }

  fileOf(sha256: string): string {
    if (!isPhotoName(sha256)) throw new RangeError(`Photos: not the SHA-256 of a photo: ${sha256}`);
    return path.join(this.#folder, `${sha256}${suffix}`);
  }

  names(): readonly string[] {
    if (!existsSync(this.#folder)) return [];
    return readdirSync(this.#folder).filter((file) => file.endsWith(suffix)).map((file) => file.slice(0, -suffix.length)).filter(isPhotoName).sort();
  }

  has(sha256: string): boolean {
    return existsSync(this.fileOf(sha256));
  }

  read(sha256: string): Uint8Array<ArrayBuffer> | undefined {
    return this.has(sha256) ? new Uint8Array(readFileSync(this.fileOf(sha256))) : undefined;
  }

  /**
   * Puts a photo on the disk. One that is there already stays; a damaged one is replaced.
   *
   * @param bytes in which `photoProblem` finds nothing
   * @returns false when it was there already
   */
  keep(sha256: string, bytes: Uint8Array): boolean {
    const there = this.read(sha256);
    if (there !== undefined && photoProblem(sha256, there) === undefined) return false;
    if (mkdirSync(this.#folder, { recursive: true }) !== undefined) syncFolder(path.dirname(this.#folder));
    writeDurably(this.fileOf(sha256), bytes);
    return true;
  }
}
