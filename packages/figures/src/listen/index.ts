export { machineSound, type MachineSound, type OtherCount, type SoundFamily } from './machine-sound.ts';
