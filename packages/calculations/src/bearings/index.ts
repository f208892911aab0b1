export { bearingFrequencies } from './bearing-frequencies.ts';
