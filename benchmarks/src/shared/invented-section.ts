import type { SectionTable } from '@rotorwright/rotor';

/** An invented section: straight lift that gives way to that of a plate, at 2° and six Reynolds numbers. */
export function inventedSection(): SectionTable {
  const reynolds = Float64Array.from({ length: 6 }, (_, j) => 5e4 * 2 ** j);
  const angles = 181;
  const coefficients = new Float64Array(reynolds.length * angles * 2);
  reynolds.forEach((number, j) => {
    const stall = 10 + 1.5 * j;
    const cd0 = 0.0095 * (4e5 / number) ** 0.35;
    for (let i = 0; i < angles; i++) {
      const degrees = -180 + 2 * i;
      const reversed = Math.abs(degrees) > 90;
      const folded = degrees > 90 ? degrees - 180 : degrees < -90 ? degrees + 180 : degrees;
      const angle = (folded * Math.PI) / 180;
      const attached = 1 / (1 + Math.exp((Math.abs(folded) - stall) / 2));
      const straight = 5.9 * (reversed ? 0.7 : 1) * angle;
      coefficients[2 * (j * angles + i)] = attached * straight + (1 - attached) * 1.15 * Math.sin(2 * angle);
      coefficients[2 * (j * angles + i) + 1] = attached * (cd0 + 0.012 * straight ** 2) + (1 - attached) * (1.9 * Math.sin(angle) ** 2 + cd0);
    }
  });
  return { kind: 'table', thickness: 0.12, angles, reynolds, coefficients };
}
