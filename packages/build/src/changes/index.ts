export type { PartChange } from './replaced.ts';
export { workOfChange, type Again, type ChangeWork, type Planned } from './work.ts';
