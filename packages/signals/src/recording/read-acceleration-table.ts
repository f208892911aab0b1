import { mostSamples, type Recording, type Unreadable } from './recording.ts';

const wanted = 'Wanted: a column of time and one to three of acceleration, such as "time (s),ax (m/s²),ay (m/s²),az (m/s²)".';

/** Units of time as a header names them, s. */
const timeUnits: Readonly<Record<string, number>> = { s: 1, sec: 1, seconds: 1, ms: 1e-3, us: 1e-6, µs: 1e-6, ns: 1e-9 };

/** Acceleration of free fall, m/s². @source ISO 80000-3 */
const freeFall = 9.80665;

/** Share of the usual step by which a step may differ and still be even. */
const jitter = 0.5;
/** Steps longer than this many usual ones are gaps. */
const gap = 1.5;

/**
 * Reads a table of time and acceleration, as accelerometers write it: comma, semicolon or tab between columns, decimal
 * point or comma, with or without a header. Uneven steps are set on an even grid by straight lines; gaps are bridged and told.
 *
 * @param text  the whole file
 * @returns     one channel a column, m/s² where the header says so (g is turned into it), or why it cannot be read
 */
export function readAccelerationTable(text: string): Recording | Unreadable {
  const lines = text.replace(/^\uFEFF/u, '').split(/\r\n|\r|\n/u).map((line, index) => ({ line: line.trim(), number: index + 1 })).filter(({ line }) => line !== '' && !line.startsWith('#'));
  const [first] = lines;
  if (first === undefined) return { problem: `The file is empty. ${wanted}` };
  const separator = separatorOf(first.line);
  const cells = (line: string): readonly string[] => line.split(separator).map((cell) => cell.trim().replace(/^"(.*)"$/u, '$1'));
  const number = (cell: string | undefined): number => (cell === undefined || cell === '' ? Number.NaN : Number(separator === ',' ? cell : cell.replace(',', '.')));
  const headed = cells(first.line).some((cell) => Number.isNaN(number(cell)));
  const header = headed ? cells(first.line) : undefined;
  const rows = headed ? lines.slice(1) : lines;
  const width = cells((rows[0] ?? first).line).length;
  if (width < 2 || width > 16) return { problem: `The table has ${width} columns. ${wanted}` };
  const columns = columnsOf(header, width);
  if ('problem' in columns) return columns;
  if (rows.length < 16) return { problem: `The table has ${rows.length} rows; at least 16 are wanted.` };
  if (rows.length > mostSamples) return { problem: `The table has ${rows.length} rows; at most ${mostSamples} are read. Cut it shorter.` };

  const time = new Float64Array(rows.length);
  const values = columns.axes.map(() => new Float64Array(rows.length));
  for (const [index, { line, number: at }] of rows.entries()) {
    const row = cells(line);
    time[index] = number(row[columns.time]) * columns.timeUnit;
    columns.axes.forEach(({ column, factor }, axis) => (values[axis]![index] = number(row[column]) * factor));
    const wrong = [columns.time, ...columns.axes.map(({ column }) => column)].find((column) => !Number.isFinite(number(row[column])));
    if (wrong !== undefined) return { problem: `Line ${at}, column ${wrong + 1}: “${row[wrong] ?? ''}” is no number. ${wanted}` };
    if (index > 0 && !(time[index]! > time[index - 1]!)) return { problem: `Line ${at}: time goes back from ${time[index - 1]} s to ${time[index]} s. It must grow from row to row.` };
  }
  return onEvenGrid(time, values, columns.axes.map(({ name }) => name), columns.unit);
}

function separatorOf(line: string): string {
  const counts = ['\t', ';', ','].map((mark) => ({ mark, count: line.split(mark).length }));
  return counts.reduce((best, each) => (each.count > best.count ? each : best)).mark;
}

interface Columns {
  readonly time: number;
  /** s */
  readonly timeUnit: number;
  readonly axes: readonly { readonly column: number; readonly name: string; readonly factor: number }[];
  readonly unit?: string;
}

function columnsOf(header: readonly string[] | undefined, width: number): Columns | Unreadable {
  if (header === undefined) {
    if (width > 4) return { problem: `The table has ${width} columns and no header that says what they are. ${wanted}` };
    return { time: 0, timeUnit: 1, axes: Array.from({ length: width - 1 }, (_, axis) => ({ column: axis + 1, name: ['x', 'y', 'z'][axis]!, factor: 1 })) };
  }
  const described = header.map((cell) => ({ name: cell.replace(/[([].*$/u, '').trim(), unit: /[([]([^)\]]*)[)\]]/u.exec(cell)?.[1]?.trim() }));
  const time = described.findIndex(({ name }) => /^(?:t|time|elapsed|seconds?|timestamp)\b/iu.test(name));
  if (time === -1) return { problem: `No column of the table is called time: ${header.join(', ')}. ${wanted}` };
  const timeUnit = timeUnits[described[time]!.unit?.toLowerCase() ?? 's'];
  if (timeUnit === undefined) return { problem: `Time is given in “${described[time]!.unit}”; s, ms, µs and ns are known.` };
  const axes = described.flatMap(({ name, unit }, column) => (column !== time && /^(?:(?:linear )?acc|a[_ ]?[xyz]?$|[xyz]$|g[_ ]?f)/iu.test(name) && !/total|abs|norm/iu.test(name) ? [{ column, name, unit }] : []));
  if (axes.length === 0 || axes.length > 3) return { problem: `${axes.length === 0 ? 'No column' : `${axes.length} columns`} of the table look like acceleration: ${header.join(', ')}. ${wanted}` };
  const units = axes.map(({ unit }) => unit?.replace('^', '').replace('2', '²'));
  const known = units.every((unit) => unit === 'm/s²' || unit === 'g');
  return { time, timeUnit, axes: axes.map(({ column, name }, axis) => ({ column, name, factor: known && units[axis] === 'g' ? freeFall : 1 })), ...(known ? { unit: 'm/s²' } : {}) };
}

function onEvenGrid(time: Float64Array, values: readonly Float64Array[], names: readonly string[], unit: string | undefined): Recording | Unreadable {
  const steps = Float64Array.from({ length: time.length - 1 }, (_, index) => time[index + 1]! - time[index]!);
  const usual = steps.slice().sort()[steps.length >> 1]!;
  const gaps = [...steps.entries()].filter(([, step]) => step > gap * usual);
  const uneven = steps.filter((step) => Math.abs(step - usual) > jitter * usual && step <= gap * usual).length;
  const warnings = [
    ...gaps.slice(0, 3).map(([index, step]) => `A gap of ${Number(step.toPrecision(3))} s after ${Number(time[index]!.toPrecision(6))} s is bridged by a straight line.`),
    ...(gaps.length > 3 ? [`${gaps.length - 3} more gaps are bridged.`] : []),
    ...(uneven > 0 ? [`${uneven} steps of time are uneven; the samples were set on an even grid.`] : []),
  ];
  const span = time[time.length - 1]! - time[0]!;
  // Without gaps the mean step is the best there is: the clock of each row may be coarse.
  const step = gaps.length === 0 ? span / steps.length : usual;
  const count = Math.floor(span / step + 1e-9) + 1;
  if (count > mostSamples) return { problem: `With its gaps bridged the recording has ${count} samples; at most ${mostSamples} are read.` };
  const channels = values.map((column) => {
    const even = new Float64Array(count);
    for (let index = 0, row = 0; index < count; index += 1) {
      const at = time[0]! + index * step;
      while (row < time.length - 2 && time[row + 1]! < at) row += 1;
      const share = Math.min(1, Math.max(0, (at - time[row]!) / (time[row + 1]! - time[row]!)));
      even[index] = column[row]! + share * (column[row + 1]! - column[row]!);
    }
    return even;
  });
  return { rate: 1 / step, channels, names, ...(unit === undefined ? {} : { unit }), warnings };
}
