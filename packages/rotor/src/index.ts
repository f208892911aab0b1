export * from './airfoils/index.ts';
export * from './atmosphere/index.ts';
export * from './forward/index.ts';
export * from './hover/index.ts';
export * from './loads/index.ts';
export * from './power/index.ts';
export * from './tail/index.ts';
export * from './tip/index.ts';
