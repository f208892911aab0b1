export { atmosphere } from './atmosphere.ts';
export { autorotation } from './autorotation.ts';
export { bladeLoads } from './blade-loads.ts';
export { linearBlade } from './linear-blade.ts';
export { storedEnergy } from './stored-energy.ts';
export { tipMach } from './tip-mach.ts';
export { tipSpeed } from './tip-speed.ts';
export { uniformBlade } from './uniform-blade.ts';
