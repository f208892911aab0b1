export * from './fault-trees/index.ts';
export * from './schedules/index.ts';
