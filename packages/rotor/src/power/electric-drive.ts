export interface ElectricDrive {
  /** K_v [rad/(s·V)], positive */
  readonly speedConstant: number;
  /** Of motor and controller together [Ω] */
  readonly resistance: number;
  /** I₀ [A], the same at any speed */
  readonly noLoadCurrent: number;
  /** Of the pack without load [V] */
  readonly openVoltage: number;
  /** Of the pack [Ω] */
  readonly packResistance: number;
  /** Motor speed over output speed, positive */
  readonly ratio: number;
  /** η of the gears, above 0 to 1 */
  readonly gearEfficiency: number;
}

/** Torque at the output: coefficient·ω² + constant [N·m·s², N·m], neither negative. */
export interface DriveLoad {
  readonly coefficient: number;
  readonly constant: number;
}

/** Motor current that a torque at the output asks for: I = I₀ + K_v·torque/(ratio·η) [A] */
export function currentForTorque(drive: ElectricDrive, torque: number): number {
  return drive.noLoadCurrent + (drive.speedConstant * torque) / (drive.ratio * drive.gearEfficiency);
}

/**
 * Output speed at which motor and load agree, the controller at a duty D:
 * ω·ratio = K_v(D·U − I(R + D²·R_pack)), I from the torque of the load at ω.
 *
 * @param duty  D, 0 to 1
 * @returns     ω [rad/s]; undefined when the motor cannot turn this load
 * @neglects iron losses that grow with speed, inductance, warming
 * @source three-constant model of a motor, ideal controller: pack current = D·motor current; solved for ω
 * @example electricSpeed({ speedConstant: 50, resistance: 0.02, noLoadCurrent: 0, openVoltage: 40, packResistance: 0, ratio: 10, gearEfficiency: 1 }, { coefficient: 0, constant: 0 }, 1) // 200
 */
export function electricSpeed(drive: ElectricDrive, load: DriveLoad, duty: number): number | undefined {
  const { speedConstant, resistance, openVoltage, packResistance, ratio, gearEfficiency } = drive;
  const seen = resistance + duty ** 2 * packResistance;
  const square = (speedConstant ** 2 * seen * load.coefficient) / (ratio * gearEfficiency);
  const rest = speedConstant * (duty * openVoltage - seen * currentForTorque(drive, load.constant));
  if (!(rest > 0)) return undefined;
  // square·ω² + ratio·ω − rest = 0
  return (2 * rest) / (ratio + Math.sqrt(ratio ** 2 + 4 * square * rest));
}

/**
 * Duty that holds an output speed against a torque: the smaller root of I·R_pack·D² − U·D + ω·ratio/K_v + I·R = 0
 *
 * @param speed   ω [rad/s]
 * @param torque  [N·m]
 * @returns       D, above 1 when the pack has too few volts; undefined when no duty reaches the speed
 * @source as electricSpeed
 */
export function dutyForSpeed(drive: ElectricDrive, speed: number, torque: number): number | undefined {
  const current = currentForTorque(drive, torque);
  const wanted = (speed * drive.ratio) / drive.speedConstant + current * drive.resistance;
  const under = drive.openVoltage ** 2 - 4 * current * drive.packResistance * wanted;
  return under >= 0 ? (2 * wanted) / (drive.openVoltage + Math.sqrt(under)) : undefined;
}

/**
 * Torque at the output that the motor gives at a speed with a duty: I = (D·U − ω·ratio/K_v)/(R + D²·R_pack), less I₀.
 *
 * @param duty  D, 0 to 1
 * @returns     [N·m], not negative: at or above its own speed the motor gives none
 * @source as electricSpeed
 * @example torqueAtSpeed({ speedConstant: 50, resistance: 0.02, noLoadCurrent: 0, openVoltage: 40, packResistance: 0, ratio: 10, gearEfficiency: 1 }, 200, 1) // 0
 */
export function torqueAtSpeed(drive: ElectricDrive, speed: number, duty: number): number {
  const current = (duty * drive.openVoltage - (speed * drive.ratio) / drive.speedConstant) / (drive.resistance + duty ** 2 * drive.packResistance);
  return Math.max(0, ((current - drive.noLoadCurrent) * drive.ratio * drive.gearEfficiency) / drive.speedConstant);
}

/**
 * Torque at the output that a current out of the pack tells of, the governor holding a speed: the power into the controller
 * (U − R_pack·I_p)·I_p is I·ω·ratio/K_v + R·I² of the motor.
 *
 * @param packCurrent  I_p [A], not negative
 * @returns            [N·m]; undefined when that current does not cover what the motor takes without load
 * @source as electricSpeed, solved for the motor current
 */
export function torqueFromPackCurrent(drive: ElectricDrive, speed: number, packCurrent: number): number | undefined {
  const input = (drive.openVoltage - drive.packResistance * packCurrent) * packCurrent;
  const back = (speed * drive.ratio) / drive.speedConstant;
  const current = (2 * input) / (back + Math.sqrt(back ** 2 + 4 * drive.resistance * input));
  return current >= drive.noLoadCurrent && input >= 0 ? ((current - drive.noLoadCurrent) * drive.ratio * drive.gearEfficiency) / drive.speedConstant : undefined;
}
