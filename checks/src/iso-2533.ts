import table from '../data/iso-2533.json' with { type: 'json' };
import type { Check } from './check.ts';

const source = { document: 'ISO 2533:1975 and ADD 2:1997, from a public transcription', place: 'tables of the standard atmosphere', kind: 'published' } as const;

/** Column of the table, output of the calculation, SI value of the column's unit. */
const columns = [
  ['TK', 'temperature', 1],
  ['p_mbar', 'pressure', 100],
  ['rho', 'density', 1],
  ['a', 'speedOfSound', 1],
  ['mu', 'dynamicViscosity', 1],
] as const;

export const iso2533: readonly Check[] = [
  ...table.rows.flatMap((row) =>
    columns.map(
      ([column, output, unit]): Check => ({
        calculation: 'atmosphere',
        title: `${output} at ${row.H} m`,
        source,
        inputs: { pressureAltitude: row.H },
        output,
        expected: row[column] * unit,
        tolerance: 1e-4,
        mode: 'relative',
      }),
    ),
  ),
  {
    calculation: 'atmosphere',
    title: 'density at 20 °C and half humidity',
    source: { document: 'CIPM-2007 equation for the density of moist air, 20 °C, 101,325 Pa, 50 %: 1.1992 kg/m³ (from memory)', kind: 'published' },
    inputs: { pressureAltitude: 0, temperatureOffset: '5 K', relativeHumidity: '50 %' },
    output: 'density',
    // Carbon dioxide and compressibility, which CIPM-2007 counts and ISO 2533 does not, make 3·10⁻⁴ of difference.
    expected: 1.1992,
    tolerance: 5e-4,
    mode: 'relative',
  },
  {
    calculation: 'atmosphere',
    title: 'air at sea level so warm that it is as thin as 1,000 m up: 288.15 K · (1.2250/1.1117 − 1) warmer',
    source,
    inputs: { pressureAltitude: 0, temperatureOffset: 288.15 * (1.225 / 1.1117 - 1) },
    output: 'densityAltitude',
    expected: 1000,
    tolerance: 1e-3,
    mode: 'relative',
  },
  {
    calculation: 'atmosphere',
    title: 'saturated at 20 °C: 101,325 Pa less 2,339 Pa of vapour',
    source: { document: 'IAPWS-IF97 steam tables, saturation pressure at 20 °C: 2.3392 kPa (from memory)', kind: 'published' },
    inputs: { pressureAltitude: 0, temperatureOffset: '5 K', relativeHumidity: '100 %' },
    output: 'dryPressure',
    expected: 101_325 - 2339.2,
    tolerance: 1e-4,
    mode: 'relative',
  },
];
