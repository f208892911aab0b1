import { maximumLiftShare, waveDrag } from './compressibility.ts';
import { evaluateSection, type Section, type SectionRow } from './section.ts';

/** Roughness thickens a boundary layer that is attached; drag past this is that of separated air. */
const SKIN_DRAG = 0.04;
/** Stall has begun where lift grows at less than half the slope of a thin section [1/rad], or past this angle [rad]. */
const STALL_SLOPE = Math.PI;
const STALL_ANGLE = (25 * Math.PI) / 180;

/**
 * Fills lift and drag of a row of elements of a real blade: its section, what the speed of sound does to it, its roughness.
 *
 * Fast air stalls sooner: the section is asked at a larger angle, and gives a share of what it says.
 *
 * @param row        read in angle and reynolds, written in the rest; angles are widened where air is fast
 * @param mach       Mach number of each element; without it the air is taken as incompressible
 * @param roughness  factor on the drag of attached air
 */
export function evaluateBlade(section: Section, row: SectionRow, mach: Float64Array | undefined, roughness: number): void {
  const { angle, lift, drag, dragSlope } = row;
  if (mach !== undefined) {
    for (let i = 0; i < angle.length; i++) angle[i] = Math.max(-Math.PI, Math.min(Math.PI, angle[i]! / maximumLiftShare(mach[i]!)));
  }
  evaluateSection(section, row);
  if (mach !== undefined) {
    for (let i = 0; i < angle.length; i++) {
      const share = maximumLiftShare(mach[i]!);
      lift[i]! *= share;
      dragSlope[i]! /= share;
      drag[i]! += waveDrag(mach[i]!, Math.abs(lift[i]!), section.thickness);
    }
  }
  if (roughness !== 1) {
    for (let i = 0; i < angle.length; i++) {
      if (drag[i]! < SKIN_DRAG) dragSlope[i]! *= roughness;
      drag[i]! += (roughness - 1) * Math.min(drag[i]!, SKIN_DRAG);
    }
  }
}

/**
 * Whether stall has begun on an element. A drag law without end never stalls.
 *
 * @param angle      α [rad], widened where air is fast
 * @param liftSlope  of the section there [1/rad]
 */
export function stallBegun(section: Section, angle: number, liftSlope: number): boolean {
  return section.kind === 'table' && (liftSlope < STALL_SLOPE || angle > STALL_ANGLE || angle < -STALL_ANGLE);
}
