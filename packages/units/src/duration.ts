/**
 * A span of time as people say it: 8 min, 3 h, 1.5 h, 2 days.
 *
 * @param seconds  0 or more; anything under a minute and a half is one minute
 */
export function durationWords(seconds: number): string {
  const minutes = Math.round(seconds / 60);
  if (minutes < 90) return `${Math.max(1, minutes)} min`;
  const hours = seconds / 3600;
  return hours < 48 ? `${Number(hours.toFixed(hours < 10 ? 1 : 0))} h` : `${Number((hours / 24).toFixed(1))} days`;
}
