/** Specs that the calculations of the rotor share. */

export const positive = (title: string, symbol: string, unit: string, shown: string, example: number) => ({ kind: 'number', title, symbol, unit, shown, above: 0, example }) as const;

export const density = { ...positive('Density of the air', '\\rho', 'kg/m³', 'kg/m³', 1.225), default: 1.225 } as const;
export const liftSlope = { ...positive('Lift slope of the sections', 'a', '1/rad', '1/rad', 5.73), default: 5.73 } as const;
export const dragCoefficient = { kind: 'number', title: 'Drag coefficient of the sections', symbol: 'c_{d0}', unit: '-', shown: '-', min: 0, default: 0.012, example: 0.012 } as const;

export const powerOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'W', shown: 'W' }) as const;
export const forceOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'N', shown: 'N' }) as const;
export const airspeedOutput = (title: string, symbol: string) => ({ title, symbol, unit: 'm/s', shown: 'm/s' }) as const;
