export { material, materials, type Material, type Sourced } from './table.ts';
