export { lockFindings } from './lock-findings.ts';
