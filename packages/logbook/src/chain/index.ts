export * from './hash-entry.ts';
export * from './verify-chain.ts';
