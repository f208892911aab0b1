export { linkLength } from './link-length.ts';
export { pushrod } from './pushrod.ts';
export { swashplate } from './swashplate.ts';
