export interface RollerClutch {
  readonly rollers: number;
  /** m */
  readonly rollerDiameter: number;
  /** Of the line on which a roller bears, m. */
  readonly rollerLength: number;
  /** m */
  readonly shaftDiameter: number;
  /** Angle between the two surfaces that pinch a roller [rad]. */
  readonly wedgeAngle: number;
  /** Of shaft and rollers. */
  readonly youngsModulus: number;
  readonly poissonsRatio: number;
}

function refuseImpossible({ rollers, rollerDiameter, rollerLength, shaftDiameter, wedgeAngle, youngsModulus, poissonsRatio }: RollerClutch): void {
  if (!(Number.isInteger(rollers) && rollers > 0)) throw new RangeError(`rollerClutch: rollers must be a whole number above 0, got ${rollers}`);
  if (!(rollerDiameter > 0 && rollerLength > 0 && shaftDiameter > 0)) throw new RangeError(`rollerClutch: diameters and length must be positive, got ${rollerDiameter}, ${rollerLength}, ${shaftDiameter} m`);
  if (!(wedgeAngle > 0 && wedgeAngle < Math.PI / 2)) throw new RangeError(`rollerClutch: wedgeAngle must be over 0 and below π/2, got ${wedgeAngle} rad`);
  if (!(youngsModulus > 0 && poissonsRatio >= 0 && poissonsRatio <= 0.5)) throw new RangeError(`rollerClutch: youngsModulus must be positive and poissonsRatio 0 to 0.5, got ${youngsModulus} Pa and ${poissonsRatio}`);
}

/** p² = F/l · stiffness, of two cylinders that touch outside: E/(2(1 − ν²)) · (1/r₁ + 1/r₂)/π */
const stiffness = ({ rollerDiameter, shaftDiameter, youngsModulus, poissonsRatio }: RollerClutch): number =>
  (youngsModulus / (2 * (1 - poissonsRatio ** 2)) / Math.PI) * (2 / rollerDiameter + 2 / shaftDiameter);

/** Torque per newton that pinches each roller: z·r·tan(ε/2) [m]. */
const arm = ({ rollers, shaftDiameter, wedgeAngle }: RollerClutch): number => ((rollers * shaftDiameter) / 2) * Math.tan(wedgeAngle / 2);

/**
 * Hertzian pressure between the rollers of a one-way clutch and the shaft that they grip.
 *
 * Each roller is pinched with N and drags N·tan(ε/2) along the shaft.
 *
 * @param torque  N·m, not negative
 * @returns       Pa, in the middle of the line of contact
 * @throws RangeError when the clutch cannot be, or the torque is negative
 * @neglects crowning and skew of the rollers, unequal sharing, the give of the shell, impact
 * @source statics of a roller in a wedge; Hertz for two cylinders of one material, Shigley's Mechanical Engineering Design, 9th ed., section 3-19 (from memory)
 */
export function rollerClutchPressure(clutch: RollerClutch, torque: number): number {
  refuseImpossible(clutch);
  if (!(torque >= 0)) throw new RangeError(`rollerClutchPressure: torque must not be negative, got ${torque} N·m`);
  return Math.sqrt((torque / arm(clutch) / clutch.rollerLength) * stiffness(clutch));
}

/**
 * Torque at which the rollers of a one-way clutch press on the shaft as hard as they may.
 *
 * @param pressure  allowed Hertzian pressure [Pa], positive
 * @returns         N·m
 * @throws RangeError when the clutch cannot be, or the pressure is not positive
 * @source as `rollerClutchPressure`, solved for the torque
 */
export function rollerClutchTorque(clutch: RollerClutch, pressure: number): number {
  refuseImpossible(clutch);
  if (!(pressure > 0)) throw new RangeError(`rollerClutchTorque: pressure must be positive, got ${pressure} Pa`);
  return (pressure ** 2 / stiffness(clutch)) * clutch.rollerLength * arm(clutch);
}
