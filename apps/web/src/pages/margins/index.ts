export { MarginsPage } from './margins-page.tsx';
