/** Where in the machine file something stands. Lines and columns count from 1; the end is the column after the last character. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** Keys from the root of the file, joined with dots: `drive.main-mesh.driver.teeth`, list items by number: `machine.links.0`. Keys of the file hold no dot. */
export type EntryPath = string;
