import type { Vector3 } from '../numeric/vector.ts';
import type { Crank } from './spatial-four-bar.ts';

/** A servo whose rod carries the lower plate. Axes: x forward, y left, z up along the mast. */
export interface PlateServo extends Crank {
  /** Ball to ball, m. */
  readonly rodLength: number;
  /** Its ball on the lower plate, in plate coordinates, m. */
  readonly ball: Vector3;
}

/** Servos, plates, link and grip, as they stand in space. Hub coordinates: outboard, towards the leading edge, up. */
export interface SwashplateGeometry {
  /** Seen from above. */
  readonly rotation: 'clockwise' | 'counterclockwise';
  /** Three or more. */
  readonly servos: readonly PlateServo[];
  /** Point of the lower plate that its guide keeps in an upright plane, in plate coordinates, m. */
  readonly guide: Vector3;
  /** Whether the lower plate lies above its servos' balls, or below. */
  readonly plateSide: 'above' | 'below';
  readonly link: {
    /** On the upper plate, in hub coordinates from the plate's centre, m. */
    readonly upperBall: Vector3;
    /** Ball to ball, m. */
    readonly length: number;
    /** Point of the upper plate that its driver keeps in the plane of the blade, in hub coordinates, m. */
    readonly driver: Vector3;
  };
  readonly grip: {
    /** Height of the feathering axis, m, from the same origin as everything else. */
    readonly height: number;
    /** In hub coordinates from the point where the feathering axis meets the mast, at pitch 0, m. */
    readonly ball: Vector3;
  };
}

/** Where the lower plate is. */
export interface PlatePose {
  /** Of its centre on the mast axis, m. */
  readonly height: number;
  /** Its normal leans by p and q: n = (p, q, 1)/√(1 + p² + q²). */
  readonly p: number;
  readonly q: number;
}

/** First harmonics of the blade pitch over azimuth, rad: θ0 + θ1c·cos ψ + θ1s·sin ψ. */
export interface Harmonics {
  readonly collective: number;
  readonly cyclicCos: number;
  readonly cyclicSin: number;
  /** Largest difference between the pitch and that sum, rad. */
  readonly residual: number;
}
