import { findLeast, findRoot } from '@rotorwright/mechanics';
import { STANDARD_GRAVITY } from '../atmosphere/index.ts';

/** Best speeds are sought from rest to this share of the tip speed. */
const SEARCHED = 0.5;
/** Even parts of that range in which the lowest power is looked for before it is closed in. */
const SAMPLES = 64;

export interface FlyingRotor {
  readonly blades: number;
  /** R [m] */
  readonly radius: number;
  /** c [m] */
  readonly chord: number;
  /** Ω [rad/s], positive */
  readonly speed: number;
  /** Of the machine [kg] */
  readonly mass: number;
  /** f [m²]: drag over dynamic pressure */
  readonly dragArea: number;
  /** [m/s] */
  readonly climbRate: number;
  /** ρ [kg/m³] */
  readonly density: number;
  /** cd0 of the sections */
  readonly dragCoefficient: number;
  /** κ */
  readonly inducedFactor: number;
  /** K of the profile power: 1 + Kμ² */
  readonly profileGrowth: number;
}

export interface FlightPower {
  /** T [N] */
  readonly thrust: number;
  /** α [rad], forward */
  readonly discTilt: number;
  /** v [m/s] */
  readonly inducedSpeed: number;
  /** μ */
  readonly advanceRatio: number;
  /** W each */
  readonly inducedPower: number;
  readonly profilePower: number;
  readonly parasitePower: number;
  readonly climbPower: number;
  readonly power: number;
}

/**
 * Induced speed of a rotor in forward flight: the positive root of v·√((V cosα)² + (V sinα + v)²) = T/2ρA
 *
 * @param hoverSpeedSquared  T/2ρA [m²/s²], not negative
 * @param along              V cosα, along the disc [m/s]
 * @param through            V sinα, down through the disc [m/s], not negative
 * @returns                  v [m/s]
 * @source H. Glauert, A General Theory of the Autogyro, R&M 1111 (1926) (from memory)
 * @example inducedSpeed(9, 0, 0) // 3
 * @example inducedSpeed(9, 0, 8) // 1
 */
export function inducedSpeed(hoverSpeedSquared: number, along: number, through: number): number {
  if (hoverSpeedSquared === 0) return 0;
  const square = hoverSpeedSquared ** 2;
  return findRoot((v) => v * v * (along * along + (through + v) ** 2) - square, 0, Math.sqrt(hoverSpeedSquared) * (1 + 1e-12));
}

/**
 * Power of a machine in steady forward flight as the sum of induced, profile, parasite and climb power.
 *
 * Thrust T = √(W² + D²), D = ½ρV²f; induced κTv; profile σ·cd0/8·(1 + Kμ²)·ρA(ΩR)³; parasite DV; climb W·climb rate.
 *
 * @param airspeed  V [m/s], not negative
 * @throws RangeError when a sum is too large for a number
 * @neglects stall, compressibility, tail rotor, drive; the climb enters the power sum only
 * @source A. Gessow, G. C. Myers, Aerodynamics of the Helicopter (1952), energy method (from memory)
 */
export function forwardFlightPower(rotor: FlyingRotor, airspeed: number): FlightPower {
  const { blades, radius, chord, speed, mass, dragArea, climbRate, density, dragCoefficient, inducedFactor, profileGrowth } = rotor;
  const weight = mass * STANDARD_GRAVITY;
  const area = Math.PI * radius ** 2;
  const bladeTip = speed * radius;
  const drag = 0.5 * density * airspeed ** 2 * dragArea;
  const thrust = Math.sqrt(weight ** 2 + drag ** 2);
  const discTilt = Math.atan2(drag, weight);
  const along = airspeed * Math.cos(discTilt);
  const induced = inducedSpeed(thrust / (2 * density * area), along, airspeed * Math.sin(discTilt));
  const advanceRatio = along / bladeTip;
  const solidity = (blades * chord) / (Math.PI * radius);
  const inducedPower = inducedFactor * thrust * induced;
  const profilePower = ((solidity * dragCoefficient) / 8) * (1 + profileGrowth * advanceRatio ** 2) * density * area * bladeTip ** 3;
  const parasitePower = drag * airspeed;
  const climbPower = weight * climbRate;
  return { thrust, discTilt, inducedSpeed: induced, advanceRatio, inducedPower, profilePower, parasitePower, climbPower, power: inducedPower + profilePower + parasitePower + climbPower };
}

/**
 * Airspeed of the least power: that in which the machine stays up longest.
 *
 * @returns [m/s] between 0 and half the tip speed; undefined when the power is least at an end of that range
 * @throws RangeError as forwardFlightPower
 */
export function enduranceSpeed(rotor: FlyingRotor): number | undefined {
  return findLeast((airspeed) => forwardFlightPower(rotor, airspeed).power, 0, SEARCHED * rotor.speed * rotor.radius, SAMPLES);
}

/**
 * Airspeed of the least power for the way made: that in which the machine gets farthest.
 *
 * @returns [m/s] between 0 and half the tip speed; undefined when it lies at an end of that range
 * @throws RangeError as forwardFlightPower
 */
export function rangeSpeed(rotor: FlyingRotor): number | undefined {
  return findLeast((airspeed) => forwardFlightPower(rotor, airspeed).power / airspeed, 0, SEARCHED * rotor.speed * rotor.radius, SAMPLES);
}

export interface FlapBalance {
  /** σ */
  readonly solidity: number;
  /** a [1/rad] */
  readonly liftSlope: number;
  /** C_T = T/(ρA(ΩR)²) */
  readonly thrustCoefficient: number;
  /** μ */
  readonly advanceRatio: number;
  /** λ = (V sinα + v)/ΩR */
  readonly inflowRatio: number;
  /** β0 [rad] */
  readonly coning: number;
}

export interface BladePitch {
  /** θ0 [rad] */
  readonly collective: number;
  /** θ1c [rad], + more pitch over the tail */
  readonly cyclicCos: number;
  /** θ1s [rad], + more pitch on the advancing side */
  readonly cyclicSin: number;
}

/**
 * Pitch θ0 + θ1c cosψ + θ1s sinψ, relative to the tip-path plane, of a blade that neither climbs nor sinks out of it:
 * C_T = (σa/2)(θ0(1/3 + μ²/2) + θ1s·μ/2 − λ/2), θ1s = −(8/3)μ(θ0 − ¾λ)/(1 + 3μ²/2), θ1c = (4/3)μβ0/(1 + μ²/2)
 *
 * @neglects twist, tip loss, root cutout, reversed flow; flapping frequency 1 per turn
 * @source A. Gessow, G. C. Myers, Aerodynamics of the Helicopter (1952), flapping coefficients (from memory)
 */
export function pitchInTipPathPlane({ solidity, liftSlope, thrustCoefficient, advanceRatio: mu, inflowRatio, coning }: FlapBalance): BladePitch {
  const perPitch = ((8 / 3) * mu) / (1 + 1.5 * mu ** 2);
  // The second equation put into the first; its divisor has no zero: (1/3 − μ²/3 + ¾μ⁴)/(1 + 3μ²/2).
  const collective = ((2 * thrustCoefficient) / (solidity * liftSlope) + inflowRatio / 2 - 0.375 * mu * perPitch * inflowRatio) / (1 / 3 + mu ** 2 / 2 - (mu * perPitch) / 2);
  return { collective, cyclicCos: ((4 / 3) * mu * coning) / (1 + mu ** 2 / 2), cyclicSin: -perPitch * (collective - 0.75 * inflowRatio) };
}
