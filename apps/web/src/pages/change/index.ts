export { ChangePage } from './change-page.tsx';
