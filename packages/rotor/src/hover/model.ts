export interface Flow {
  /** ρ [kg/m³] */
  readonly density: number;
  /** ν [m²/s] */
  readonly kinematicViscosity: number;
  /** a [m/s]; without it the air is taken as incompressible */
  readonly speedOfSound?: number;
  /** Up along the axis [m/s], not negative */
  readonly climbRate: number;
}

export interface MomentumModel {
  /** The wake turns: the swirl of the lift is counted. Drag never feeds it. */
  readonly swirl: boolean;
  /** Lift falls off towards the tip, and towards the root, by Prandtl’s factor. */
  readonly tipLoss: boolean;
  readonly rootLoss: boolean;
  /** Drag takes part in the force that drives the axial inflow. */
  readonly dragInInflow: boolean;
  /** Induced speed over that of the ring’s own momentum: what the real wake costs beyond it. */
  readonly inducedFactor: number;
  /** Drag of real blades over that of the section. */
  readonly roughness: number;
}

export interface HoverSolution {
  /** θ at twist 0 [rad] */
  readonly collective: number;
  /** T [N] */
  readonly thrust: number;
  /** Q [N·m] */
  readonly torque: number;
  /** Parts of the power Ω·Q [W]: of the lift, of the drag */
  readonly inducedPower: number;
  readonly profilePower: number;
}

/** What an element sees, from root to tip. */
export interface HoverStations {
  /** α [rad] */
  readonly angleOfAttack: Float64Array;
  readonly reynolds: Float64Array;
  /** Axial force per radius of one blade [N/m] */
  readonly lift: Float64Array;
  /** Share of the blade’s length on which stall has begun. */
  readonly stalledFraction: number;
}
