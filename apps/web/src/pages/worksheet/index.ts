export { WorksheetPage } from './worksheet-page.tsx';
