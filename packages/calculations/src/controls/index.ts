export { pushrod } from './pushrod.ts';
export { swashplate } from './swashplate.ts';
