export { CalculationFields, CalculationResults } from './calculation-parts.tsx';
export { useCalculation, type OpenCalculation } from './use-calculation.ts';
export { WorksheetPage } from './worksheet-page.tsx';
