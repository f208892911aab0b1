import type { LeastThread, Thread } from './thread.ts';

/** Areas that shear when a thread strips; m². */
export interface ShearAreas {
  /** Of the nut's thread, along the crests of the screw. */
  readonly internal: number;
  /** Of the screw's thread, along the crests of the nut. */
  readonly external: number;
}

/**
 * Shear areas of an engaged thread.
 *
 * Nut: π/P·L·d·(P/2 + (d − D_2)/√3) with the screw's major and the nut's pitch diameter; screw:
 * π/P·L·D_1·(P/2 + (d_2 − D_1)/√3) with the screw's pitch and the nut's minor diameter.
 *
 * @param engagement  L [m], of full threads
 * @param least       diameters within tolerance that overlap least
 * @throws RangeError unless the engagement is positive and the threads overlap
 * @neglects the widening of a thin nut, the bending of the threads, the chamfer: count full threads only
 * @source Alexander, SAE 770420 (1977), and FED-STD-H28 (from memory); the first agrees with a published example
 */
export function shearAreas({ pitch }: Thread, engagement: number, least: LeastThread): ShearAreas {
  const { screwMajor, screwPitch, nutPitch, nutMinor } = least;
  if (!(engagement > 0)) throw new RangeError(`shearAreas: engagement must be positive, got ${engagement} m`);
  const area = (circle: number, overlap: number): number => (Math.PI / pitch) * engagement * circle * (pitch / 2 + overlap / Math.sqrt(3));
  const areas = { internal: area(screwMajor, screwMajor - nutPitch), external: area(nutMinor, screwPitch - nutMinor) };
  if (!(screwMajor > nutMinor && areas.internal > 0 && areas.external > 0)) {
    throw new RangeError(`shearAreas: screwMajorDiameter, screwPitchDiameter, nutPitchDiameter and nutMinorDiameter must let the threads overlap, got ${screwMajor}, ${screwPitch}, ${nutPitch} and ${nutMinor} m`);
  }
  return areas;
}
