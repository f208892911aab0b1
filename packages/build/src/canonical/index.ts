export * from './canonical-json.ts';
export * from './sha256.ts';
