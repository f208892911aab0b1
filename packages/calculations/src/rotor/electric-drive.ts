import { currentForTorque, dutyForSpeed, electricSpeed, torqueAtSpeed, torqueFromPackCurrent, type DriveLoad, type ElectricDrive } from '@rotorwright/rotor';
import { CalculationError, defineCalculation } from '../define.ts';
import { countInput, numberOutput, speedInput, speedOutput } from '../specs.ts';
import { positive, powerOutput } from './rotor-specs.ts';

const ohms = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'Ω', shown: 'mΩ', min: 0, example }) as const;
const amperes = (title: string, symbol: string) => ({ title, symbol, unit: 'A', shown: 'A' }) as const;
const torqueOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'N·m', shown: 'N·m' }) as const;

export const electricDrive = defineCalculation({
  id: 'electric-drive',
  title: 'Electric drive',
  section: 'Rotor',
  summary: 'Speed, current and power of a brushless motor on its pack, and how much the governor has in hand.',
  inputs: {
    speedConstant: positive('Speed constant of the motor', 'K_v', 'rad/(s·V)', 'rpm/V', 53.4),
    resistance: ohms('Resistance of the motor', 'R_m', 0.015),
    noLoadCurrent: { kind: 'number', title: 'Current without load', symbol: 'I_0', unit: 'A', shown: 'A', min: 0, example: 2.6 },
    cells: countInput('Cells in series', 'N', 12),
    cellVoltage: { ...positive('Open-circuit voltage of a cell', 'U_c', 'V', 'V', 3.7), default: 3.7 },
    packResistance: ohms('Resistance of the whole pack', 'R_p', 0.026),
    controllerResistance: { ...ohms('Resistance of the controller', 'R_c', 0.002), default: 0 },
    ratio: { ...positive('Motor speed over output speed', 'i', '-', '-', 10.2), default: 1 },
    gearEfficiency: { ...positive('Efficiency of the gears', '\\eta', '-', '%', 0.95), max: 1, default: 1 },
    loadCoefficient: { kind: 'number', title: 'Load that goes with the square of the speed: torque over ω²', symbol: 'k', unit: 'N·m·s²', shown: 'N·m·s²', min: 0, optional: true, example: 1e-4 },
    torque: { kind: 'number', title: 'Load that does not ask for the speed: torque at the output', symbol: 'T', unit: 'N·m', shown: 'N·m', min: 0, optional: true },
    throttle: { kind: 'number', title: 'Duty of the controller; 1 when neither it nor the wanted speed is given', symbol: 'D', unit: '-', shown: '%', min: 0, max: 1, optional: true },
    reserve: { kind: 'number', title: 'Duty kept back for the governor', symbol: 'h_r', unit: '-', shown: '%', min: 0, max: 0.9, default: 0, example: 0.1 },
    measuredCurrent: { kind: 'number', title: 'Current measured out of the pack at the wanted speed', symbol: 'I_\\mathrm{m}', unit: 'A', shown: 'A', min: 0, optional: true },
    wantedSpeed: { ...speedInput('Speed that the governor is to hold at the output', 'n_w', 1760), above: 0, optional: true },
  },
  outputs: {
    throttle: { title: 'Duty of the controller', symbol: 'D', unit: '-', shown: '%' },
    speed: speedOutput('Speed at the output', 'n'),
    motorSpeed: speedOutput('Speed of the motor', 'n_m'),
    torque: torqueOutput('Torque at the output', 'T'),
    motorTorque: torqueOutput('Torque of the motor', 'T_m'),
    current: amperes('Current in the motor', 'I'),
    packCurrent: amperes('Current from the pack', 'I_p'),
    packVoltage: { title: 'Voltage at the terminals of the pack', symbol: 'U', unit: 'V', shown: 'V' },
    shaftPower: powerOutput('Power at the output', 'P'),
    inputPower: powerOutput('Power from the pack', 'P_p'),
    efficiency: { title: 'Efficiency from the terminals of the pack to the output', symbol: '\\eta_t', unit: '-', shown: '%' },
    motorEfficiency: { title: 'Efficiency of the motor', symbol: '\\eta_m', unit: '-', shown: '%' },
    fullThrottleSpeed: speedOutput('Speed at full throttle under the same load', 'n_1'),
    headroom: { title: 'Duty left to the governor', symbol: 'h', unit: '-', shown: '%' },
    powerAvailable: powerOutput('Power that it can give at the wanted speed, the reserve kept back', 'P_a'),
    losses: powerOutput('Heat in motor and controller', 'P_v'),
    measuredPower: powerOutput('Power at the output that the measured current tells of', 'P_m'),
    speedHeadroom: numberOutput('Speed at full throttle over the speed wanted', 'n_1/n_w'),
  },
  formulas: [
    { output: 'throttle', tex: String.raw`I R_p D^2 - N U_c D + \frac{i\,\omega}{K_v} + I (R_m + R_c) = 0` },
    { output: 'speed', tex: String.raw`\omega\,i = K_v\left(D U - I (R_m + R_c)\right)` },
    { output: 'motorSpeed', tex: String.raw`\omega_m = i\,\omega` },
    { output: 'torque', tex: String.raw`T = k\,\omega^2` },
    { output: 'motorTorque', tex: String.raw`T_m = \frac{I - I_0}{K_v}` },
    { output: 'current', tex: String.raw`I = I_0 + \frac{K_v\,T}{i\,\eta}` },
    { output: 'packCurrent', tex: String.raw`I_p = D\,I` },
    { output: 'packVoltage', tex: String.raw`U = N U_c - D\,I\,R_p` },
    { output: 'shaftPower', tex: String.raw`P = T\,\omega` },
    { output: 'inputPower', tex: String.raw`P_p = U\,I_p` },
    { output: 'efficiency', tex: String.raw`\eta_t = \frac{P}{P_p}` },
    { output: 'motorEfficiency', tex: String.raw`\eta_m = \frac{T_m\,\omega_m}{I\,(D U - I R_c)}` },
    { output: 'fullThrottleSpeed', tex: String.raw`\omega_1 = \omega(D = 1)` },
    { output: 'headroom', tex: String.raw`h = 1 - D` },
    { output: 'powerAvailable', tex: String.raw`P_a = \frac{\eta\,\omega_w i}{K_v}\left(\frac{D N U_c - \omega_w i/K_v}{R_m + R_c + D^2 R_p} - I_0\right),\quad D = 1 - h_r` },
    { output: 'losses', tex: String.raw`P_v = P_p - \frac{P}{\eta}` },
    { output: 'measuredPower', tex: String.raw`(N U_c - R_p I_\mathrm{m})\,I_\mathrm{m} = I\,\frac{\omega_w i}{K_v} + (R_m + R_c)\,I^2,\quad P_m = \eta\,\frac{\omega_w i}{K_v}(I - I_0)` },
    { output: 'speedHeadroom', tex: String.raw`\frac{n_1}{n_w} = \frac{\omega_1}{\omega_w}` },
  ],
  source: 'Three-constant model of a motor (common practice), balance of energy with an ideal controller.',
  validity: [
    'Steady running. The no-load current is held; iron losses that grow with speed and warming of the windings are left out.',
    'The pack stands at its open-circuit voltage less its resistance; sag that builds up over seconds is left out.',
    'A governor needs headroom for gusts and climbs: common practice leaves it 10 to 15 % or more at the end of the pack.',
  ],
  compute: (inputs) => {
    const { speedConstant, resistance, controllerResistance, noLoadCurrent, cells, cellVoltage, packResistance, ratio, gearEfficiency, wantedSpeed } = inputs;
    const load = readLoad(inputs);
    if (wantedSpeed !== undefined && inputs.throttle !== undefined) throw new CalculationError('throttle', `${inputs.throttle} as well as wantedSpeed`, 'one of the two: the governor sets the throttle');
    const drive = { speedConstant, resistance: resistance + controllerResistance, noLoadCurrent, openVoltage: cells * cellVoltage, packResistance, ratio, gearEfficiency };
    const fullThrottleSpeed = electricSpeed(drive, load, 1);
    const torqueAt = (speed: number): number => load.coefficient * speed ** 2 + load.constant;
    const throttle = wantedSpeed === undefined ? (inputs.throttle ?? 1) : dutyForSpeed(drive, wantedSpeed, torqueAt(wantedSpeed));
    const speed = throttle === undefined ? undefined : (wantedSpeed ?? electricSpeed(drive, load, throttle));
    const running = throttle === undefined || speed === undefined ? undefined : runningOutputs(inputs, drive, { throttle, speed, torque: torqueAt(speed) });
    const measured = wantedSpeed === undefined || inputs.measuredCurrent === undefined ? undefined : torqueFromPackCurrent(drive, wantedSpeed, inputs.measuredCurrent);
    return {
      outputs: {
        ...running,
        ...(fullThrottleSpeed === undefined ? {} : { fullThrottleSpeed }),
        ...(wantedSpeed === undefined || throttle === undefined ? {} : { headroom: 1 - throttle }),
        ...(wantedSpeed === undefined ? {} : { powerAvailable: torqueAtSpeed(drive, wantedSpeed, 1 - inputs.reserve) * wantedSpeed }),
        ...(measured === undefined ? {} : { measuredPower: measured * wantedSpeed! }),
        ...(wantedSpeed === undefined || fullThrottleSpeed === undefined ? {} : { speedHeadroom: fullThrottleSpeed / wantedSpeed }),
      },
      warnings: [
        ...(running === undefined ? [`${RUNNING.join(', ')} are left out: ${throttle === undefined ? 'no duty of the controller reaches the wanted speed under this load' : 'the motor cannot turn this load'}.`] : []),
        ...(running !== undefined && running.throttle > 1 ? ['The wanted speed cannot be held: it asks for more than full throttle.'] : []),
        ...(running !== undefined && !('efficiency' in running) ? ['efficiency and motorEfficiency are left out: no power is drawn.'] : []),
        ...(fullThrottleSpeed === undefined ? ['fullThrottleSpeed and speedHeadroom are left out: even at full throttle the motor cannot turn this load.'] : []),
        ...(wantedSpeed === undefined ? ['headroom, powerAvailable, measuredPower and speedHeadroom are left out: they need wantedSpeed.'] : []),
        ...(wantedSpeed !== undefined && measured === undefined ? [inputs.measuredCurrent === undefined ? 'measuredPower is left out: it needs measuredCurrent.' : 'measuredPower is left out: the measured current does not cover what the motor takes without load.'] : []),
        ...(wantedSpeed !== undefined && throttle === undefined ? ['headroom is left out with the duty.'] : []),
      ],
    };
  },
});

const RUNNING = ['throttle', 'speed', 'motorSpeed', 'torque', 'motorTorque', 'current', 'packCurrent', 'packVoltage', 'shaftPower', 'inputPower', 'losses', 'efficiency', 'motorEfficiency'] as const;

function readLoad({ loadCoefficient, torque }: { readonly loadCoefficient?: number; readonly torque?: number }): DriveLoad {
  if (loadCoefficient !== undefined && torque !== undefined) throw new CalculationError('torque', `${torque} N·m as well as loadCoefficient`, 'one of the two');
  if (loadCoefficient === undefined && torque === undefined) throw new CalculationError('loadCoefficient', 'nothing', 'the load: loadCoefficient in N·m·s², or torque in N·m');
  return { coefficient: loadCoefficient ?? 0, constant: torque ?? 0 };
}

interface Motor {
  readonly speedConstant: number;
  readonly noLoadCurrent: number;
  readonly cells: number;
  readonly cellVoltage: number;
  readonly packResistance: number;
  readonly controllerResistance: number;
  readonly ratio: number;
  readonly gearEfficiency: number;
}

interface Running {
  readonly throttle: number;
  readonly speed: number;
  readonly torque: number;
}

function runningOutputs(motor: Motor, drive: ElectricDrive, { throttle, speed, torque }: Running) {
  const current = currentForTorque(drive, torque);
  const motorSpeed = speed * motor.ratio;
  const motorTorque = (current - motor.noLoadCurrent) / motor.speedConstant;
  const packCurrent = throttle * current;
  const packVoltage = motor.cells * motor.cellVoltage - packCurrent * motor.packResistance;
  const shaftPower = torque * speed;
  const inputPower = packVoltage * packCurrent;
  const drawn = inputPower > 0;
  return {
    throttle,
    speed,
    motorSpeed,
    torque,
    motorTorque,
    current,
    packCurrent,
    packVoltage,
    shaftPower,
    inputPower,
    losses: inputPower - shaftPower / motor.gearEfficiency,
    ...(drawn ? { efficiency: shaftPower / inputPower, motorEfficiency: (motorTorque * motorSpeed) / (current * (throttle * packVoltage - current * motor.controllerResistance)) } : {}),
  };
}
