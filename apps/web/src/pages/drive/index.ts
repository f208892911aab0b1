export { DrivePage } from './drive-page.tsx';
