export { BalancePage } from './balance-page.tsx';
