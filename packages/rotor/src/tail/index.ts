export * from './tail-rotor.ts';
