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

export const gearStandard = 'ISO 21771:2007';
