export { type SoundBearing } from './bearing-sounds.ts';
export { explainFlaw, explainLine, lineTitle, type FlawToExplain, type LineExplained, type LineToExplain } from './explain-line.ts';
export { machineSound, type MachineSound, type OtherCount, type SoundFamily } from './machine-sound.ts';
