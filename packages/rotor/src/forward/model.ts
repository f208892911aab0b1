export interface TrimModel {
  /** Places around the azimuth at which the blade is asked. */
  readonly azimuths: number;
  /** κ: mean induced speed over that of momentum theory. */
  readonly inducedFactor: number;
  /** Induced power over thrust times mean induced speed: what uneven inflow along the blade and its ends cost; 1 when nothing. */
  readonly unevenness: number;
  /** Drag of real blades over that of the section. */
  readonly roughness: number;
  /** Beyond B·R a blade has drag but no lift: B = 1 − √(2C_T)/b */
  readonly tipLoss: boolean;
}

/** How the blade flaps about the axis of the rotor. */
export interface Flapping {
  /** Moment of inertia of one blade about its hinge [kg·m²] */
  readonly inertia: number;
  /** Flapping frequency over rotor speed */
  readonly frequencyRatio: number;
  /** Tilt of the tip path against the shaft that is asked for [rad]: up over the tail, up on the advancing side. */
  readonly cosine: number;
  readonly sine: number;
}

/** A rotor that is held to the flow, as in a tunnel; speeds over the tip speed, along and down through the disc. */
export interface FlightCondition {
  /** Ω [rad/s] */
  readonly speed: number;
  /** T [N], positive */
  readonly thrust: number;
  /** μ */
  readonly advanceRatio: number;
  /** λ_c: what would pass down through the disc without lift */
  readonly throughRatio: number;
}

export interface TrimSolution {
  /** θ0, θ1c, θ1s [rad]: pitch θ0 + θ1c·cos ψ + θ1s·sin ψ, ψ = 0 over the tail */
  readonly collective: number;
  readonly cyclicCos: number;
  readonly cyclicSin: number;
  /** λ_i: mean induced speed over the tip speed */
  readonly inducedRatio: number;
  /** β0 [rad] */
  readonly coning: number;
  /** Shaft power, and that part of it which the drag of the sections takes [W] */
  readonly power: number;
  readonly profilePower: number;
  /** H: what the rotor drags backwards along the disc [N] */
  readonly backwardForce: number;
  /** Share of the swept disc on which stall has begun */
  readonly stalledFraction: number;
}

/** A machine that flies steadily; its rotor leans as far as the balance of forces wants. */
export interface SteadyFlight {
  /** Ω [rad/s] */
  readonly speed: number;
  /** Of the machine [N], positive */
  readonly weight: number;
  /** D of the fuselage, against the airspeed [N] */
  readonly drag: number;
  /** Along the ground, and up [m/s] */
  readonly airspeed: number;
  readonly climbRate: number;
}

export interface FlightTrim extends TrimSolution {
  /** T [N] */
  readonly thrust: number;
  /** α of the shaft, forward [rad] */
  readonly discTilt: number;
  /** μ */
  readonly advanceRatio: number;
}
