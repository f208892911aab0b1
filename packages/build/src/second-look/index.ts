export { asksSecondLook } from './asks-second-look.ts';
