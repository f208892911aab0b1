import { transverse, type GearBasics } from '@rotorwright/mechanics';
import { CalculationError } from '../define.ts';
import { degrees, lengthInput, teethInput } from '../specs.ts';

/** Gears below three teeth have no outline; the catalogue asks for at least four. */
export const gearTeeth = (title: string, symbol: string, example: number) => ({ ...teethInput(title, symbol, example), min: 4 }) as const;

export const shiftInput = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', min: -2, max: 3, default: 0, example: 0 }) as const;

/** What all gear calculations ask for. */
export const basicInputs = {
  normalModule: lengthInput('Normal module', 'm_n', 1),
  helixAngle: { kind: 'number', title: 'Helix angle at the reference circle', symbol: '\\beta', unit: 'rad', shown: '°', min: 0, max: degrees(60), default: 0, example: 0 },
  pressureAngle: { kind: 'number', title: 'Normal pressure angle', symbol: '\\alpha_n', unit: 'rad', shown: '°', min: degrees(10), max: degrees(35), default: degrees(20), example: degrees(20) },
} as const;

const height = (title: string, symbol: string, value: number) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', above: 0, max: 3, default: value, example: value }) as const;

/** Teeth, shifts and rack of a pair. */
export const toothInputs = {
  ...basicInputs,
  teeth1: gearTeeth('Teeth of gear 1', 'z_1', 17),
  teeth2: gearTeeth('Teeth of gear 2', 'z_2', 84),
  shift1: shiftInput('Profile shift of gear 1, in normal modules', 'x_1'),
  shift2: shiftInput('Profile shift of gear 2, in normal modules', 'x_2'),
  addendum: height('Tip height of the basic rack, in normal modules', 'h_{aP}^*', 1),
  dedendum: height('Root depth of the basic rack, in normal modules', 'h_{fP}^*', 1.25),
} as const;

export const centreDistanceInput = { ...lengthInput('Centre distance; without backlash when not given', 'a', 52.4), optional: true } as const;

/** A pair in mesh. */
export const pairInputs = { ...toothInputs, faceWidth: lengthInput('Face width in mesh', 'b', 12), centreDistance: centreDistanceInput } as const;

export const filletInput = { kind: 'number', title: 'Tip radius of the rack that cuts the teeth, in normal modules', symbol: '\\rho_{fP}^*', unit: '-', shown: '-', min: 0, max: 1, default: 0.38, example: 0.38 } as const;

export const torqueInput = { kind: 'number', title: 'Torque on gear 1', symbol: 'T_1', unit: 'N·m', shown: 'N·m', min: 0, max: 1e9, example: 1.6 } as const;

/** Centre distance at which the base circles touch [m]. */
export function leastCentreDistance(inputs: GearBasics & { readonly teeth1: number; readonly teeth2: number }): number {
  const { module, pressureAngle } = transverse(inputs);
  return (module * Math.cos(pressureAngle) * (inputs.teeth1 + inputs.teeth2)) / 2;
}

/** @throws CalculationError where the base circles would overlap */
export function checkCentreDistance(inputs: Parameters<typeof leastCentreDistance>[0] & { readonly centreDistance?: number }): void {
  const least = leastCentreDistance(inputs);
  if (inputs.centreDistance !== undefined && inputs.centreDistance < least) {
    throw new CalculationError('centreDistance', `${inputs.centreDistance} m`, `at least ${least} m, where the base circles touch`);
  }
}

export const gearStandard = 'ISO 21771:2007';
