export { compareFigures, isSetting, type FigureChange } from './compare-figures.ts';
export { newFindings } from './findings.ts';
export { compareMargins, type CrossingWord, type MarginCrossing } from './margins.ts';
export { compareWindows, windowsOf, type KeptWindow, type WindowChange } from './windows.ts';
