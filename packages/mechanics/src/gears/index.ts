export * from './gear-pair.ts';
export * from './helix-push.ts';
export * from './involute.ts';
export * from './tooth-measures.ts';
export * from './tooth-profile.ts';
