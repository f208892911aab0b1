/** Margins on a logarithmic scale around one, from half to twelve; what lies beyond ends at the edge. */
export const barWidth = 300;
const [least, most] = [0.5, 12];

/** Where a margin stands, 0 to `barWidth`. */
export function barAt(margin: number): number {
  const part = Math.log(Math.min(Math.max(margin, least), most) / least) / Math.log(most / least);
  return part * barWidth;
}

export const beyond = (margin: number): boolean => margin > most || margin < least;

export const marks = [0.5, 0.8, 1, 1.25, 2, 3, 5, 10] as const;
