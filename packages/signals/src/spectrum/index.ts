export { realTransform, type RealTransform } from './fourier.ts';
export { hannWindow, spectra, type Spectra } from './spectra.ts';
