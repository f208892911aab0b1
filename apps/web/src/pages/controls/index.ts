export { ControlsPage } from './controls-page.tsx';
