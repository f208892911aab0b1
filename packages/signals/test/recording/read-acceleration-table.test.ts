import { describe, expect, it } from 'vitest';
import { isUnreadable, readAccelerationTable, type Recording } from '../../src/index.ts';

const read = (text: string): Recording => {
  const found = readAccelerationTable(text);
  if (isUnreadable(found)) throw new Error(found.problem);
  return found;
};
/** Rows of 100 Hz: time, and its value in each further column. */
const rows = (count: number, line: (index: number) => string): string => Array.from({ length: count }, (_, index) => line(index)).join('\n');

describe('a table of time and acceleration', () => {
  it('is read with commas, semicolons and decimal commas, tabs, quotes and a byte order mark', () => {
    const plain = read(`time (s),ax (m/s²),ay (m/s²)\n${rows(32, (n) => `${n / 100},${n},${-n}`)}`);
    expect(plain.rate).toBeCloseTo(100, 9);
    expect(plain.unit).toBe('m/s²');
    expect(plain.names).toEqual(['ax', 'ay']);
    expect(plain.channels[1]![31]).toBeCloseTo(-31, 9);
    const german = read(`\uFEFF"Time (s)";"Acceleration x (m/s^2)"\r\n${rows(32, (n) => `${(n / 100).toFixed(2).replace('.', ',')};${n},5`).replaceAll('\n', '\r\n')}`);
    expect(german.channels[0]![3]).toBeCloseTo(3.5, 9);
    expect(german.unit).toBe('m/s²');
    expect(read(rows(20, (n) => `${n * 0.01}\t${n}`)).names).toEqual(['x']);
  });

  it('turns g into m/s² and milliseconds into seconds', () => {
    const { channels, rate } = read(`time (ms),x (g),y (g),z (g)\n${rows(40, (n) => `${n * 2},0,0,1`)}`);
    expect(rate).toBeCloseTo(500, 6);
    expect(channels).toHaveLength(3);
    expect(channels[2]![7]).toBeCloseTo(9.80665, 9);
  });

  it('leaves a column of totals out, and has no unit where the header names none', () => {
    const found = read(`t,ax,ay,az,total\n${rows(20, (n) => `${n / 50},1,2,3,9`)}`);
    expect(found.channels).toHaveLength(3);
    expect(found).not.toHaveProperty('unit');
  });

  it('bridges a gap by a straight line, and says so', () => {
    const { channels, warnings, rate } = read(`time,x\n${rows(40, (n) => `${(n < 20 ? n : n + 10) / 100},${n < 20 ? 0 : 11}`)}`);
    expect(rate).toBeCloseTo(100, 6);
    expect(channels[0]).toHaveLength(50);
    expect(channels[0]![25]).toBeGreaterThan(4);
    expect(channels[0]![25]).toBeLessThan(8);
    expect(warnings).toEqual([expect.stringMatching(/A gap of 0\.11 s after 0\.19 s/u)]);
  });

  it('sets uneven steps on an even grid', () => {
    const at = (n: number): number => n / 100 + (n % 2 === 0 ? 0 : 0.003);
    const { channels } = read(`time,x\n${rows(64, (n) => `${at(n)},${2 * at(n)}`)}`);
    // A straight line stays one, wherever it is sampled.
    const [x] = channels;
    for (let n = 1; n < 60; n += 1) expect(x![n]! - x![n - 1]!).toBeCloseTo(x![1]! - x![0]!, 9);
  });

  it.each<[string, string, RegExp]>([
    ['nothing', '', /empty/u],
    ['one column', rows(20, (n) => `${n}`), /1 columns/u],
    ['few rows', 'time,x\n0,1\n1,2', /2 rows; at least 16/u],
    ['a word among numbers', `time,x\n${rows(20, (n) => `${n},${n === 4 ? 'hot' : 1}`)}`, /Line 6, column 2: “hot” is no number/u],
    ['time that goes back', `time,x\n${rows(20, (n) => `${n === 7 ? 2 : n},1`)}`, /Line 9: time goes back/u],
    ['no time', `a,b\n${rows(20, (n) => `${n},1`)}`, /No column of the table is called time/u],
    ['no acceleration', `time,speed\n${rows(20, (n) => `${n},1`)}`, /No column of the table look/u],
    ['an unknown unit of time', `time (h),x\n${rows(20, (n) => `${n},1`)}`, /“h”/u],
    ['many columns without a header', rows(20, (n) => `${n},1,2,3,4`), /no header/u],
  ])('%s is refused in words', (_, text, words) => {
    const found = readAccelerationTable(text);
    expect(isUnreadable(found) && found.problem).toMatch(words);
  });
});
