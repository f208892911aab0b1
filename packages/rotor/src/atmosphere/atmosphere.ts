export interface Air {
  /** K */
  readonly temperature: number;
  /** Pa */
  readonly pressure: number;
  /** Of the air without its vapour [Pa] */
  readonly dryPressure: number;
  /** kg/m³ */
  readonly density: number;
  /** Where the standard atmosphere is as thin, geopotential [m] */
  readonly densityAltitude: number;
  /** m/s */
  readonly speedOfSound: number;
  /** Pa·s */
  readonly dynamicViscosity: number;
}

/** Standard values at sea level: temperature [K], pressure [Pa], gradient [K/m], top of the lowest layer [m]. ISO 2533:1975. */
const SEA_LEVEL_TEMPERATURE = 288.15;
const SEA_LEVEL_PRESSURE = 101_325;
const GRADIENT = -0.0065;
const TROPOPAUSE = 11_000;
const BOTTOM = -2000;
const TOP = 20_000;
/** m/s², ISO 2533:1975 */
export const STANDARD_GRAVITY = 9.80665;
/** Specific gas constant of dry air, J/(kg·K), as ISO 2533 has it. */
const GAS_CONSTANT = 287.05287;
const HEAT_RATIO = 1.4;
/** Specific gas constant of water vapour over that of dry air: R_v = 461.52 J/(kg·K) (from memory). */
const VAPOUR_GAS_RATIO = 461.52 / GAS_CONSTANT;
/** Heat capacities of water vapour and dry air at constant pressure, J/(kg·K), near room temperature (from memory). */
const VAPOUR_HEAT = 1864;

/**
 * Air at a pressure altitude.
 *
 * The standard atmosphere gives the pressure; a temperature offset warms the air at that same pressure. Humidity makes
 * it lighter, and sound faster.
 *
 * @param pressureAltitude   H [m], geopotential, −2,000 to 20,000
 * @param temperatureOffset  ΔT [K], added to the standard temperature
 * @param relativeHumidity   φ, 0 to 1
 * @throws RangeError when an argument is out of range, or the air would be below 150 K
 * @neglects the effect of humidity on viscosity (under 1 % below 40 °C)
 * @source ISO 2533:1975, sections 2.3 to 2.14; saturation pressure: WMO No. 8, annex 4.B (from memory); both over water
 * @example airAt(0).pressure // 101325
 */
export function airAt(pressureAltitude: number, temperatureOffset = 0, relativeHumidity = 0): Air {
  if (!(pressureAltitude >= BOTTOM && pressureAltitude <= TOP)) throw new RangeError(`airAt: pressureAltitude [m] must lie between ${BOTTOM} and ${TOP}, got ${pressureAltitude}`);
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) throw new RangeError(`airAt: relativeHumidity must lie between 0 and 1, got ${relativeHumidity}`);
  const { temperature: standard, pressure } = standardLayer(pressureAltitude);
  const temperature = standard + temperatureOffset;
  if (!(temperature >= 150 && temperature <= 400)) throw new RangeError(`airAt: the temperature [K] must lie between 150 and 400, got ${temperature}`);
  // Vapour cannot press harder than the air it is part of.
  const vapour = Math.min(relativeHumidity * saturationPressure(temperature), pressure);
  const dry = pressure - vapour;
  const density = dry / (GAS_CONSTANT * temperature) + vapour / (GAS_CONSTANT * VAPOUR_GAS_RATIO * temperature);
  return { temperature, pressure, dryPressure: dry, density, densityAltitude: densityAltitude(density), speedOfSound: Math.sqrt((heatRatio(dry, vapour) * pressure) / density), dynamicViscosity: sutherland(temperature) };
}

/**
 * Altitude at which the standard atmosphere has a density: the law of its layer turned round.
 *
 * @param density  ρ [kg/m³], positive
 * @returns        H [m], geopotential
 * @source ISO 2533:1975, layers up to 20,000 m
 */
function densityAltitude(density: number): number {
  const seaLevel = SEA_LEVEL_PRESSURE / (GAS_CONSTANT * SEA_LEVEL_TEMPERATURE);
  const exponent = -STANDARD_GRAVITY / (GAS_CONSTANT * GRADIENT) - 1;
  const altitude = (SEA_LEVEL_TEMPERATURE * ((density / seaLevel) ** (1 / exponent) - 1)) / GRADIENT;
  if (altitude <= TROPOPAUSE) return altitude;
  const { temperature, pressure } = standardLayer(TROPOPAUSE);
  return TROPOPAUSE + ((GAS_CONSTANT * temperature) / STANDARD_GRAVITY) * Math.log(pressure / (GAS_CONSTANT * temperature * density));
}

/**
 * Pressure of water vapour in saturated air, over water.
 *
 * @param temperature  [K]
 * @returns            [Pa]
 * @source Magnus form of WMO No. 8 (2008), annex 4.B: 6.112 hPa·exp(17.62 t/(243.12 + t)), −45 to 60 °C (from memory)
 */
export function saturationPressure(temperature: number): number {
  const celsius = temperature - 273.15;
  // Far below the range of the fit there is no vapour worth counting, and its pole must not be met.
  return celsius <= -100 ? 0 : 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius));
}

function standardLayer(altitude: number): { temperature: number; pressure: number } {
  const temperature = SEA_LEVEL_TEMPERATURE + GRADIENT * Math.min(altitude, TROPOPAUSE);
  const below = SEA_LEVEL_PRESSURE * (temperature / SEA_LEVEL_TEMPERATURE) ** (-STANDARD_GRAVITY / (GAS_CONSTANT * GRADIENT));
  const isothermal = Math.exp((-STANDARD_GRAVITY * Math.max(0, altitude - TROPOPAUSE)) / (GAS_CONSTANT * temperature));
  return { temperature, pressure: below * isothermal };
}

/** Ratio of the heat capacities of a mixture of dry air and vapour, by their partial pressures. */
function heatRatio(dry: number, vapour: number): number {
  const dryHeat = (HEAT_RATIO / (HEAT_RATIO - 1)) * GAS_CONSTANT;
  const vapourMassShare = vapour / VAPOUR_GAS_RATIO / (dry + vapour / VAPOUR_GAS_RATIO);
  const heat = dryHeat + vapourMassShare * (VAPOUR_HEAT - dryHeat);
  const gas = GAS_CONSTANT * (1 + vapourMassShare * (VAPOUR_GAS_RATIO - 1));
  return heat / (heat - gas);
}

/** Sutherland's law with the constants of ISO 2533: 1.458·10⁻⁶ kg/(m·s·K^½), 110.4 K. */
function sutherland(temperature: number): number {
  return (1.458e-6 * temperature ** 1.5) / (temperature + 110.4);
}
