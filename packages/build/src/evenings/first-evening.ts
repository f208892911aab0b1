/**
 * When the evening begins that is on, or that comes next, by the clock on the wall where this runs; ISO 8601.
 *
 * @param time    `18:30`
 * @param length  s; an evening that is over is not on
 * @returns       undefined when the time is no time of day
 */
export function firstEvening(time: string, length: number, now: Date): string | undefined {
  const read = /^([01]?\d|2[0-3]):([0-5]\d)$/u.exec(time);
  if (!read) return undefined;
  const from = new Date(now);
  from.setHours(Number(read[1]), Number(read[2]), 0, 0);
  if (from.getTime() + length * 1000 <= now.getTime()) from.setDate(from.getDate() + 1);
  return from.toISOString();
}
