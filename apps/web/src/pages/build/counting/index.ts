export { Counting } from './counting.tsx';
