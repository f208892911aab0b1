import { gearGeometry, type MeasuredGear } from '@rotorwright/mechanics';

/** Warns when a measuring tool touches a standard tooth (tip height 1, root depth 1.25 modules) off its involute. */
export function touchWarnings(tool: string, contactDiameter: number, gear: MeasuredGear): string[] {
  const { tipDiameter, rootDiameter, baseDiameter } = gearGeometry({ ...gear, addendum: 1, dedendum: 1.25 });
  if (contactDiameter > tipDiameter) return [`${tool} would touch beyond the tip of the tooth.`];
  // On the base circle the involute ends; rounding must not cry wolf.
  return contactDiameter < Math.max(rootDiameter, baseDiameter) * (1 + 1e-9) ? [`${tool} would touch below the involute.`] : [];
}
