export { BuildPage } from './build-page.tsx';
