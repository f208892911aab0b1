/** Highest lift of a stalled section, near 45°, and its drag square to the flow: NACA TN 3361 (1955), NACA 0012 through 180° (from memory). */
const PLATE_LIFT = 1.1;
const PLATE_DRAG = 2;
/** Drag of the section end on [-]: that of turbulent skin on both sides. */
const EDGE_DRAG = 0.02;

/**
 * Lift and drag coefficient of a section that has stalled altogether: cl = 1.1·sin 2α, cd = 0.02 + 2·sin²α
 *
 * @param angle  α [rad], any
 * @neglects the attached lift of reversed flow within some 10° of 180°
 * @source shape of a plate in separated flow; heights after NACA TN 3361 (1955) (from memory)
 * @example stalledPlate(Math.PI / 2)[1] // 2.02
 */
export function stalledPlate(angle: number): readonly [lift: number, drag: number] {
  return [PLATE_LIFT * Math.sin(2 * angle), EDGE_DRAG + PLATE_DRAG * Math.sin(angle) ** 2];
}
