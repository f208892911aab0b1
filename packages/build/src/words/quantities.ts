import { showQuantity } from '@rotorwright/units';

/** @param torque N·m */
export function torqueWords(torque: number): string {
  return showQuantity(torque, 'N·m', { significant: 3 });
}

/** @param length m */
export function lengthWords(length: number): string {
  return showQuantity(length, 'mm', { significant: 4 });
}
