import { closeSync, openSync, readSync } from 'node:fs';

/** So much of a file is in memory at once, besides the line that is being read. */
const chunkSize = 1 << 20;
const lineFeed = 10;

/** The lines of a UTF-8 file one after the other, without their ends: a backup with many photos does not fit into one text. */
export function* linesOf(file: string): Generator<string> {
  const handle = openSync(file, 'r');
  try {
    const chunk = Buffer.alloc(chunkSize);
    let begun: Buffer[] = [];
    for (let count = readSync(handle, chunk); count > 0; count = readSync(handle, chunk)) {
      let start = 0;
      for (let end = chunk.indexOf(lineFeed); end !== -1 && end < count; end = chunk.indexOf(lineFeed, start)) {
        yield Buffer.concat([...begun, chunk.subarray(start, end)]).toString('utf8');
        begun = [];
        start = end + 1;
      }
      // The chunk is filled anew: what is left of it is copied.
      begun.push(Buffer.from(chunk.subarray(start, count)));
    }
    const rest = Buffer.concat(begun).toString('utf8');
    if (rest !== '') yield rest;
  } finally {
    closeSync(handle);
  }
}
