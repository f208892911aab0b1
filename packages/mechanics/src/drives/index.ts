export * from './belt-centre.ts';
export * from './ratio.ts';
export * from './sign-rules.ts';
export * from './solve-train.ts';
export * from './thread-sense.ts';
export * from './tooth-contact.ts';
