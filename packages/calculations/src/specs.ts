/** Specs that many calculations share. */

export const rpm = (value: number): number => (value * Math.PI) / 30;
export const degrees = (value: number): number => (value * Math.PI) / 180;

export const teethInput = (title: string, symbol: string, example: number) =>
  ({ kind: 'number', title, symbol, unit: '-', shown: '-', whole: true, min: 1, max: 100_000, example }) as const;

export const speedInput = (title: string, symbol: string, exampleRpm: number) =>
  ({ kind: 'number', title, symbol, unit: 'rad/s', shown: 'rpm', example: rpm(exampleRpm) }) as const;

export const countInput = (title: string, symbol: string, example: number) =>
  ({ kind: 'number', title, symbol, unit: '-', shown: '-', whole: true, min: 1, max: 1000, example }) as const;

export const lengthInput = (title: string, symbol: string, exampleMillimetres: number) =>
  ({ kind: 'number', title, symbol, unit: 'm', shown: 'mm', above: 0, example: exampleMillimetres / 1000 }) as const;

export const numberOutput = (title: string, symbol: string) => ({ title, symbol, unit: '-', shown: '-' }) as const;
export const speedOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'rad/s', shown: 'rpm' }) as const;
export const frequencyOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'Hz', shown: 'Hz' }) as const;
export const lengthOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'm', shown: 'mm' }) as const;
export const angleOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'rad', shown: '°' }) as const;

export const forceInput = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'N', shown: 'N', min: 0, example }) as const;
export const torqueInput = (title: string, symbol: string, example: number) => ({ kind: 'number', title, symbol, unit: 'N·m', shown: 'N·m', min: 0, example }) as const;
export const stressInput = (title: string, symbol: string, exampleMegapascals: number) => ({ kind: 'number', title, symbol, unit: 'Pa', shown: 'MPa', above: 0, example: exampleMegapascals * 1e6 }) as const;

export const forceOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'N', shown: 'N' }) as const;
export const torqueOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'N·m', shown: 'N·m' }) as const;
export const stressOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'Pa', shown: 'MPa' }) as const;
export const timeOutput = (title: string, symbol: string) => ({ title, symbol, unit: 's', shown: 'h' }) as const;
export const textOutput = (title: string, symbol: string) => ({ title, symbol, unit: '-', shown: '-', text: true }) as const;
