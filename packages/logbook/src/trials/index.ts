export { trialsOf, type Trial } from './trials-of.ts';
