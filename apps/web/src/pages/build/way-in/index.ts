export { WayInDrawer } from './way-in-drawer.tsx';
