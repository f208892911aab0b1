export { circlipHold, type CirclipGroove, type CirclipHold } from './circlip.ts';
export { shearAreas, type ShearAreas } from './engagement.ts';
export { insertNutHeat, insertNuts, leastTorqueOff, type InsertNutSize, type PrevailingTorques } from './insert-nut.ts';
export { pinShearCapacity, pinShearForce } from './pin.ts';
export { propertyClasses, screwStrength, type PropertyClass, type ScrewStrength } from './property-class.ts';
export { setScrewForce, setScrewHold } from './set-screw.ts';
export { capScrewSeat, leastThread, metricThread, tapDrill, threadSizes, type HeadSeat, type LeastThread, type Thread } from './thread.ts';
export { threadlockCureTime, threadlockHeatShare, threadlocks, threadlockSizeShare, type CureSurface, type Threadlock, type ThreadlockClass } from './threadlock.ts';
export { assemblyPreload, combinedStressRatio, tighteningArms, type Friction, type TighteningArms } from './tightening.ts';
