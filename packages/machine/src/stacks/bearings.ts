import type { Part } from '../model/assembly.ts';

export const isBearing = (part: Part): boolean => /deep-groove|thrust-ball|angular-contact|bearing|needle|roller|one-way/u.test(part.kind);

export const isThrust = (part: Part): boolean => /thrust/u.test(part.kind);
