export { massProperties, type Body, type MassProperties } from './mass-properties.ts';
export { principalMoments, type Tensor } from './principal-moments.ts';
export { balanceSinglePlane, type Phasor, type SinglePlane } from './single-plane.ts';
