export { MachinesPage } from './machines-page.tsx';
