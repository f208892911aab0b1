export { HoldsPage } from './holds-page.tsx';
