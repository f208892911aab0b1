export { Sweep } from './sweep.tsx';
