import type { Conditions } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { fromUnit, inUnit } from '@rotorwright/units';

/** What a hand may move on this sheet; SI. */
export interface Settings {
  /** Of the main rotor, rad/s; that of the file when not set. */
  readonly speed?: number;
  readonly mass?: number;
  readonly altitude?: number;
  /** K above the standard atmosphere */
  readonly warmer?: number;
  readonly humidity?: number;
}

export interface Setting {
  readonly key: keyof Settings;
  readonly title: string;
  readonly unit: string;
  /** Of the file, or of a standard day, in the unit shown. */
  readonly filed: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

const rounded = (value: number, step: number): number => Number((Math.round(value / step) * step).toPrecision(10));

/** Sliders for a machine: around what its file says. */
export function settingsOf(machine: Machine, mainSpeed: number | undefined): readonly Setting[] {
  const rpm = mainSpeed === undefined ? undefined : inUnit(mainSpeed, 'rpm');
  return [
    ...(rpm === undefined ? [] : [{ key: 'speed', title: 'Rotor speed', unit: 'rpm', filed: rounded(rpm, 1), min: rounded(0.6 * rpm, 10), max: rounded(1.3 * rpm, 10), step: 1 } as const]),
    ...(machine.mass === undefined ? [] : [{ key: 'mass', title: 'Mass', unit: 'kg', filed: machine.mass, min: rounded(0.6 * machine.mass, 0.1), max: rounded(2 * machine.mass, 0.1), step: 0.05 } as const]),
    { key: 'altitude', title: 'Altitude', unit: 'm', filed: 0, min: -400, max: 4000, step: 10 },
    { key: 'warmer', title: 'Warmer than standard', unit: 'K', filed: 0, min: -40, max: 40, step: 1 },
    { key: 'humidity', title: 'Humidity', unit: '%', filed: 0, min: 0, max: 100, step: 1 },
  ];
}

export const shownOf = ({ key, unit, filed }: Setting, settings: Settings): number => {
  const value = settings[key];
  return value === undefined ? filed : key === 'warmer' ? value : Number(inUnit(value, unit).toPrecision(10));
};

/** The settings with one of them moved; one that stands where the file has it is none. */
export function withSetting(settings: Settings, { key, unit, filed }: Setting, shown: number): Settings {
  const { [key]: _, ...rest } = settings;
  return shown === filed ? rest : { ...rest, [key]: key === 'warmer' ? shown : fromUnit(shown, unit) };
}

/** @param perRotor  turns of engine or motor for each turn of the main rotor */
export function conditionsOf({ speed, mass, altitude, warmer, humidity }: Settings, perRotor: number | undefined): Conditions {
  return {
    ...(speed === undefined || perRotor === undefined ? {} : { sourceSpeed: speed * perRotor }),
    ...(mass === undefined ? {} : { mass }),
    ...(altitude === undefined ? {} : { altitude }),
    ...(warmer === undefined ? {} : { temperatureOffset: warmer }),
    ...(humidity === undefined ? {} : { humidity }),
  };
}

/** As they stand in the address: `speed=1650&mass=7.2`. */
export function settingsFrom(search: URLSearchParams, known: readonly Setting[]): Settings {
  return known.reduce<Settings>((settings, setting) => {
    const text = search.get(setting.key);
    const value = text === null || text.trim() === '' ? Number.NaN : Number(text);
    return value >= setting.min && value <= setting.max ? withSetting(settings, setting, value) : settings;
  }, {});
}

export function settingsInto(search: URLSearchParams, settings: Settings, known: readonly Setting[]): URLSearchParams {
  const next = new URLSearchParams(search);
  for (const setting of known) {
    if (settings[setting.key] === undefined) next.delete(setting.key);
    else next.set(setting.key, String(shownOf(setting, settings)));
  }
  return next;
}
