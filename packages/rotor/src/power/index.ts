export * from './autorotation.ts';
