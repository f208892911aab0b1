export { CalculationFields, CalculationResults } from './calculation-parts.tsx';
export { useCalculation } from './use-calculation.ts';
export { WorksheetPage } from './worksheet-page.tsx';
