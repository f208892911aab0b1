import type { Row } from './judge.ts';

const quantile = (values: readonly number[], part: number): number => values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(part * values.length))] ?? Number.NaN;
const percent = (value: number): number => Number((100 * value).toPrecision(3));
const sure = ({ verdict }: Row): boolean => verdict === 'heard' || verdict === 'mismatch';
/** Off by more than one per cent. */
const gross = ({ error }: Row): boolean => error !== undefined && Math.abs(error) > 0.01;

/** What a class of recordings came to: shares and errors in per cent; recordings that failed by their number. */
export function tableRow(name: string, rows: readonly Row[], call: (row: Row) => number | string = ({ number }) => number): object {
  const share = (which: (row: Row) => boolean): number => percent(rows.filter(which).length / rows.length);
  const numbers = (which: (row: Row) => boolean): readonly (number | string)[] => rows.filter(which).map(call);
  const answered = rows.filter((row) => sure(row) && !gross(row));
  const errors = answered.map(({ error }) => Math.abs(error!));
  const marks = [...new Set(rows.flatMap((row) => Object.keys(row.marks)))];
  return {
    class: name, cases: rows.length,
    sure: share(sure), gross: numbers(gross), wrongAndSure: numbers((row) => gross(row) && sure(row)),
    ...(answered.length === 0 ? {} : {
      medianError: percent(quantile(errors, 0.5)), error95: percent(quantile(errors, 0.95)),
      inside: percent(answered.filter(({ inside }) => inside).length / answered.length),
      rmsDeviations: Number(Math.sqrt(answered.reduce((sum, { deviations }) => sum + deviations! ** 2, 0) / answered.length).toFixed(2)),
    }),
    mismatches: numbers(({ verdict }) => verdict === 'mismatch').length,
    ...Object.fromEntries(marks.map((mark) => {
      const values = rows.map((row) => row.marks[mark]).filter((value) => value !== undefined);
      // Yes and no make a share; numbers the root of their mean square.
      return [mark, values.every((value) => typeof value === 'boolean') ? percent(values.filter(Boolean).length / rows.length) : Number(Math.sqrt(values.reduce<number>((sum, value) => sum + Number(value) ** 2, 0) / values.length).toFixed(3))];
    })),
    cpuSeconds: Number(quantile(rows.map(({ time }) => time), 0.5).toFixed(2)),
  };
}
