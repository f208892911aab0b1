export { compareFigures, isSetting, type FigureChange } from './compare-figures.ts';
export { compareWindows, windowsOf, type KeptWindow, type WindowChange } from './windows.ts';
