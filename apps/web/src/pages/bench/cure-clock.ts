/** "20 h 48 min", rounded up to the minute, so that nothing is called cured a moment early. */
export function timeLeft(milliseconds: number): string {
  const minutes = Math.max(0, Math.ceil(milliseconds / 60_000));
  const days = Math.floor(minutes / 1440);
  const hours = Math.floor((minutes % 1440) / 60);
  const rest = minutes % 60;
  return [days > 0 ? `${days} d` : '', hours > 0 ? `${hours} h` : '', rest > 0 || minutes === 0 ? `${rest} min` : ''].filter((word) => word !== '').join(' ');
}

/**
 * Wedge of a round dial that shows what is left of a cure, clockwise from the top.
 *
 * @param left   part that is left, 0 to 1
 * @param radius of the dial
 * @returns SVG path about the dial's centre; empty when nothing is left
 */
export function wedge(left: number, radius: number): string {
  const part = Math.min(Math.max(left, 0), 1);
  if (part === 0) return '';
  if (part === 1) return `M0 ${-radius}A${radius} ${radius} 0 1 1 0 ${radius}A${radius} ${radius} 0 1 1 0 ${-radius}Z`;
  const angle = part * 2 * Math.PI;
  const x = (radius * Math.sin(angle)).toFixed(2);
  const y = (-radius * Math.cos(angle)).toFixed(2);
  return `M0 0L0 ${-radius}A${radius} ${radius} 0 ${part > 0.5 ? 1 : 0} 1 ${x} ${y}Z`;
}
