export { ListenPage } from './listen-page.tsx';
