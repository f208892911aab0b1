export { linkLength } from './link-length.ts';
export { pushrod } from './pushrod.ts';
export { servoTorque } from './servo-torque.ts';
export { swashplate } from './swashplate.ts';
