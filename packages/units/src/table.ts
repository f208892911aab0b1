import type { Dimension } from './quantity.ts';

/** One unit that files may use. Value in SI = written · factor + offset. */
export interface ListedUnit {
  readonly symbol: string;
  /** Other spellings that are read; they are shown as the symbol. */
  readonly spellings?: readonly string[];
  readonly title: string;
  readonly factor: number;
  readonly offset?: number;
  readonly dimension: Dimension;
  readonly source: string;
}

// Documents behind the factors. All from memory; the factors are exact by definition.
const base = 'SI Brochure, 9th edition (2019), section 2.3.1, base units (from memory)';
const derived = 'SI Brochure, 9th edition (2019), table 4, units with special names (from memory)';
const prefixed = 'SI Brochure, 9th edition (2019), table 7, prefixes (from memory)';
const beside = 'SI Brochure, 9th edition (2019), table 8, units accepted with the SI (from memory)';

const length: Dimension = [1, 0, 0, 0, 0, 0];
const mass: Dimension = [0, 1, 0, 0, 0, 0];
const time: Dimension = [0, 0, 1, 0, 0, 0];
const force: Dimension = [1, 1, -2, 0, 0, 0];
const energy: Dimension = [2, 1, -2, 0, 0, 0];
const power: Dimension = [2, 1, -3, 0, 0, 0];
const pressure: Dimension = [-1, 1, -2, 0, 0, 0];
const charge: Dimension = [0, 0, 1, 1, 0, 0];
const voltage: Dimension = [2, 1, -3, -1, 0, 0];
const resistance: Dimension = [2, 1, -3, -2, 0, 0];
const volume: Dimension = [3, 0, 0, 0, 0, 0];
const frequency: Dimension = [0, 0, -1, 0, 0, 0];
const angle: Dimension = [0, 0, 0, 0, 0, 1];
const temperature: Dimension = [0, 0, 0, 0, 1, 0];

/**
 * Every unit there is. Prefixes are not a rule of grammar: `mm` is listed, `Mm` is not, so that a slip of the
 * shift key is refused rather than read as a megametre.
 */
export const listedUnits: readonly ListedUnit[] = [
  { symbol: 'mm', title: 'millimetre', factor: 1e-3, dimension: length, source: prefixed },
  // U+00B5 micro sign is the symbol; U+03BC Greek mu looks the same.
  { symbol: 'µm', spellings: ['\u03BCm'], title: 'micrometre', factor: 1e-6, dimension: length, source: prefixed },
  { symbol: 'cm', title: 'centimetre', factor: 1e-2, dimension: length, source: prefixed },
  { symbol: 'm', title: 'metre', factor: 1, dimension: length, source: base },
  { symbol: 'km', title: 'kilometre', factor: 1e3, dimension: length, source: prefixed },
  { symbol: 'in', title: 'inch', factor: 0.0254, dimension: length, source: 'international yard and pound agreement (1959): 25.4 mm exactly (from memory)' },

  { symbol: 'g', title: 'gram', factor: 1e-3, dimension: mass, source: prefixed },
  { symbol: 'mg', title: 'milligram', factor: 1e-6, dimension: mass, source: prefixed },
  { symbol: 'kg', title: 'kilogram', factor: 1, dimension: mass, source: base },

  { symbol: 's', title: 'second', factor: 1, dimension: time, source: base },
  { symbol: 'µs', spellings: ['\u03BCs'], title: 'microsecond', factor: 1e-6, dimension: time, source: prefixed },
  { symbol: 'ms', title: 'millisecond', factor: 1e-3, dimension: time, source: prefixed },
  { symbol: 'min', title: 'minute', factor: 60, dimension: time, source: beside },
  { symbol: 'h', title: 'hour', factor: 3600, dimension: time, source: beside },
  { symbol: 'day', spellings: ['days'], title: 'day', factor: 86_400, dimension: time, source: beside },

  { symbol: 'Hz', title: 'hertz', factor: 1, dimension: frequency, source: derived },
  { symbol: 'kHz', title: 'kilohertz', factor: 1e3, dimension: frequency, source: prefixed },
  { symbol: 'rad', title: 'radian', factor: 1, dimension: angle, source: derived },
  { symbol: '°', title: 'degree', factor: Math.PI / 180, dimension: angle, source: beside },
  { symbol: 'rpm', title: 'revolutions per minute', factor: (2 * Math.PI) / 60, dimension: [0, 0, -1, 0, 0, 1], source: 'definition: 2π rad in 60 s' },

  { symbol: 'N', title: 'newton', factor: 1, dimension: force, source: derived },
  { symbol: 'kN', title: 'kilonewton', factor: 1e3, dimension: force, source: prefixed },
  // A torque is a product; its joined spelling is listed because nobody on the bench writes it otherwise.
  { symbol: 'N·m', spellings: ['Nm'], title: 'newton metre', factor: 1, dimension: energy, source: 'SI Brochure, 9th edition (2019), table 6, moment of force (from memory)' },
  { symbol: 'Pa', title: 'pascal', factor: 1, dimension: pressure, source: derived },
  { symbol: 'hPa', title: 'hectopascal', factor: 1e2, dimension: pressure, source: prefixed },
  { symbol: 'kPa', title: 'kilopascal', factor: 1e3, dimension: pressure, source: prefixed },
  { symbol: 'MPa', title: 'megapascal', factor: 1e6, dimension: pressure, source: prefixed },
  { symbol: 'GPa', title: 'gigapascal', factor: 1e9, dimension: pressure, source: prefixed },

  // The elasticity factor of gears is given so: a pressure follows from it by a force over an area under the root.
  { symbol: '√Pa', title: 'root of a pascal', factor: 1, dimension: [-0.5, 0.5, -1, 0, 0, 0], source: 'definition: its square is 1 Pa' },
  { symbol: '√MPa', title: 'root of a megapascal', factor: 1e3, dimension: [-0.5, 0.5, -1, 0, 0, 0], source: 'definition: its square is 1 MPa' },

  { symbol: 'W', title: 'watt', factor: 1, dimension: power, source: derived },
  { symbol: 'kW', title: 'kilowatt', factor: 1e3, dimension: power, source: prefixed },
  { symbol: 'J', title: 'joule', factor: 1, dimension: energy, source: derived },
  { symbol: 'kJ', title: 'kilojoule', factor: 1e3, dimension: energy, source: prefixed },
  { symbol: 'Wh', title: 'watt hour', factor: 3600, dimension: energy, source: 'definition: 1 W for 3600 s' },

  { symbol: 'A', title: 'ampere', factor: 1, dimension: [0, 0, 0, 1, 0, 0], source: base },
  { symbol: 'mA', title: 'milliampere', factor: 1e-3, dimension: [0, 0, 0, 1, 0, 0], source: prefixed },
  { symbol: 'Ah', title: 'ampere hour', factor: 3600, dimension: charge, source: 'definition: 1 A for 3600 s' },
  { symbol: 'mAh', title: 'milliampere hour', factor: 3.6, dimension: charge, source: 'definition: 1 mA for 3600 s' },
  { symbol: 'V', title: 'volt', factor: 1, dimension: voltage, source: derived },
  // U+03A9 Greek omega is the symbol; U+2126 ohm sign looks the same.
  { symbol: 'Ω', spellings: ['\u2126'], title: 'ohm', factor: 1, dimension: resistance, source: derived },
  { symbol: 'mΩ', spellings: ['m\u2126'], title: 'milliohm', factor: 1e-3, dimension: resistance, source: prefixed },

  { symbol: 'l', spellings: ['L'], title: 'litre', factor: 1e-3, dimension: volume, source: beside },
  { symbol: 'ml', spellings: ['mL'], title: 'millilitre', factor: 1e-6, dimension: volume, source: prefixed },

  { symbol: 'K', title: 'kelvin', factor: 1, dimension: temperature, source: base },
  { symbol: '°C', title: 'degree Celsius', factor: 1, offset: 273.15, dimension: temperature, source: 'SI Brochure, 9th edition (2019), section 2.3.1, Celsius temperature: T/K = t/°C + 273.15 (from memory)' },
  { symbol: '%', title: 'per cent', factor: 0.01, dimension: [0, 0, 0, 0, 0, 0], source: 'SI Brochure, 9th edition (2019), section 5.4.7: the number 0.01 (from memory)' },
];

/** What people write when they mean a listed unit, where spelling alone would lead elsewhere. */
export const usualSlips: Readonly<Record<string, string>> = {
  gr: 'g', gram: 'g', grams: 'g', gm: 'g', kilo: 'kg', kilos: 'kg', kgs: 'kg', lb: 'kg', lbs: 'kg', oz: 'g',
  um: 'µm', us: 'µs', micron: 'µm', microns: 'µm', inch: 'in', inches: 'in', '"': 'in', '″': 'in', ft: 'm', feet: 'm', mil: 'mm', thou: 'mm',
  'r/min': 'rpm', 'u/min': 'rpm', upm: 'rpm', '1/min': 'rpm', rev: 'rpm', revs: 'rpm',
  deg: '°', degree: '°', degrees: '°', grad: '°', celsius: '°C', degc: '°C', c: '°C', '℃': '°C', f: '°C', '°f': '°C',
  sec: 's', secs: 's', second: 's', seconds: 's', minute: 'min', minutes: 'min', mins: 'min', hour: 'h', hours: 'h', hr: 'h', hrs: 'h', d: 'day', week: 'day', weeks: 'day',
  cc: 'cm³', ccm: 'cm³', litre: 'l', litres: 'l', liter: 'l', cl: 'ml',
  ohm: 'Ω', ohms: 'Ω', mohm: 'mΩ', volt: 'V', volts: 'V', amp: 'A', amps: 'A', watt: 'W', watts: 'W', hp: 'kW', ps: 'kW',
  newton: 'N', ncm: 'N·m', nmm: 'N·m', mnm: 'N·m', kgcm: 'N·m', 'n-m': 'N·m', kv: 'rpm/V', percent: '%', psi: 'MPa', bar: 'kPa',
};
