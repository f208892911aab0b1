export { RotorPage } from './rotor-page.tsx';
