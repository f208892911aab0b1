export { FilePage } from './file-page.tsx';
