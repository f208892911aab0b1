export { bearingFrequencyRatios, type BearingFrequencyRatios, type BearingGeometry } from './frequencies.ts';
