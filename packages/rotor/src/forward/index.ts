export * from './forward-flight.ts';
