import type { Command } from 'commander';
import type { Conditions } from '@rotorwright/figures';
import { readQuantityOption } from './read-option.ts';
import { WrongInput } from './wrong-input.ts';

export interface ConditionOptions {
  readonly altitude?: string;
  readonly warmer?: string;
  readonly humidity?: string;
  readonly mass?: string;
}

/** Air and mass that a person asks about. */
export const withConditionOptions = (command: Command): Command =>
  command
    .option('--altitude <height>', 'pressure altitude of the air: "400 m"')
    .option('--warmer <difference>', 'air warmer than the standard atmosphere there by: "15 K"')
    .option('--humidity <share>', 'relative humidity of the air: "60 %"')
    .option('--mass <mass>', 'mass of the machine instead of that of the file: "6.8 kg"');

/** @throws WrongInput */
export function readConditions(options: ConditionOptions): Conditions {
  const altitude = readQuantityOption('--altitude', options.altitude, 'm', '400 m');
  const temperatureOffset = readQuantityOption('--warmer', options.warmer, 'K', '15 K');
  const humidity = readQuantityOption('--humidity', options.humidity, '%', '60 %');
  const mass = readQuantityOption('--mass', options.mass, 'kg', '6.8 kg');
  if (mass !== undefined && !(mass > 0)) throw new WrongInput(`--mass: given “${options.mass}”: a machine has more than 0 kg. Right would be "6.8 kg".`);
  if (humidity !== undefined && !(humidity >= 0 && humidity <= 1)) throw new WrongInput(`--humidity: given “${options.humidity}”: it lies between 0 and 100 %. Right would be "60 %".`);
  return { ...(altitude !== undefined && { altitude }), ...(temperatureOffset !== undefined && { temperatureOffset }), ...(humidity !== undefined && { humidity }), ...(mass !== undefined && { mass }) };
}
