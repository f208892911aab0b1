import type { Entry, HeardRecord } from '../entry.ts';
import { inOrderOfWork, takenBack } from '../replay/moments.ts';

export interface HeardEntry {
  /** Of the entry. */
  readonly number: number;
  readonly at: string;
  readonly by: string;
  readonly healthy: boolean;
  readonly sensor: string;
  readonly record: HeardRecord;
}

/**
 * Recordings of a machine that were kept, oldest first; one that was taken back is left out.
 *
 * @param sensor  only those by this sensor at its place: others cannot be held against each other
 */
export function heardRecords(entries: readonly Entry[], sensor?: string): readonly HeardEntry[] {
  const back = takenBack(entries);
  return inOrderOfWork(entries).flatMap(({ number, at, by, body }) =>
    body.kind !== 'heard' || back.has(number) || (sensor !== undefined && body.sensor !== sensor) ? [] : [{ number, at, by, healthy: body.healthy, sensor: body.sensor, record: body.record }]);
}
