export * from './fault-trees/index.ts';
export * from './schedules/index.ts';
export * from './life/index.ts';
export * from './omissions/index.ts';
