export * from './autorotation.ts';
export * from './combustion.ts';
export * from './electric-drive.ts';
export * from './endurance.ts';
