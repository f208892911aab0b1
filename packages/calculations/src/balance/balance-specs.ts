import { degrees } from '../specs.ts';

export const amplitudeInput = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: '-', shown: '-', min: 0, max: 1e12, example }) as const;
export const turnInput = (title: string, symbol: string, exampleDegrees: number) => ({ kind: 'number', title, symbol, unit: 'rad', shown: '°', min: -1e4, max: 1e4, example: degrees(exampleDegrees) }) as const;
export const trialMassInput = (title: string, symbol: string) => ({ kind: 'number', title, symbol, unit: 'kg', shown: 'g', min: 1e-12, max: 1e6, example: 0.002 }) as const;
export const massOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'kg', shown: 'g' }) as const;
