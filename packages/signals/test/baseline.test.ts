import { describe, expect, it } from 'vitest';
import { soundRecord, trendsOf, type HeardLine, type Hearing, type SoundRecord } from '@rotorwright/signals';

const line = (family: string | undefined, multiple: number, order: number, amplitude: number): HeardLine => ({ order, frequency: 28 * order, level: 20, amplitude, ...(family === undefined ? {} : { family, multiple }) });
const hearing = (lines: readonly HeardLine[], more: Partial<Hearing> = {}): Hearing => ({ verdict: 'heard', speed: 180, margin: 30, groups: [], seconds: 10, from: 0, lines, ...more });

describe('what is kept of a recording', () => {
  it('are levels against the machine as a whole: how loud it was recorded does not matter', () => {
    // By hand: amplitudes 0.6 and 0.8 make 1 together: 20·lg 0.6 = −4.4 dB, 20·lg 0.8 = −1.9 dB.
    for (const gain of [1, 0.01]) expect(soundRecord(hearing([line('a', 1, 2, 0.6 * gain), line('b', 1, 9.9, 0.8 * gain)]))!.lines.map(({ level }) => level)).toEqual([-4.4, -1.9]);
  });

  it('of a calibrated sensor are levels over 1 m/s²', () => {
    const record = soundRecord(hearing([line('a', 1, 2, 10)], { unit: 'm/s²' }))!;
    expect(record).toMatchObject({ version: 1, unit: 'm/s²', lines: [{ source: 'a', multiple: 1, order: 2, level: 20 }] });
  });

  it('is nothing when nobody can tell how fast the rotor turned', () => {
    expect(soundRecord(hearing([line('a', 1, 2, 1)], { verdict: 'cannot-tell' }))).toBeUndefined();
    expect(soundRecord(hearing([]))).toBeUndefined();
  });
});

describe('against the baseline', () => {
  const record = (levels: Readonly<Record<string, number>>, unit?: string): SoundRecord => ({ version: 1, speed: 180, seconds: 10, ...(unit === undefined ? {} : { unit }), lines: Object.entries(levels).map(([source, level]) => ({ source, multiple: 1, order: 2, level })) });

  it('a line that has doubled has grown, one that was never there is new, and both come first', () => {
    const earlier = [{ healthy: true, record: record({ a: -10, b: -20 }) }, { healthy: true, record: record({ a: -12, b: -20 }) }, { healthy: false, record: record({ a: -8, b: -14 }) }];
    const trends = trendsOf(record({ a: -9, b: -13.9, c: -30 }), earlier);
    expect(trends.map(({ line: { source }, verdict }) => [source, verdict])).toEqual([['b', 'grown'], ['c', 'new'], ['a', 'as before']]);
    expect(trends[0]).toMatchObject({ baseline: -20, earlier: [-20, -20, -14] });
    // By hand: −9 − (−11) = 2 dB.
    expect(trends[2]!.change).toBeCloseTo(2, 12);
  });

  it('lines that nothing explains are the same when their orders are', () => {
    const at = (order: number): SoundRecord => ({ version: 1, speed: 180, seconds: 10, lines: [{ order, level: -20 }] });
    expect(trendsOf(at(5.61), [{ healthy: true, record: at(5.62) }])[0]!.verdict).toBe('as before');
    expect(trendsOf(at(5.61), [{ healthy: true, record: at(5.7) }])[0]!.verdict).toBe('new');
  });

  it('nothing is compared without a healthy recording in the same unit', () => {
    expect(trendsOf(record({ a: -9 }), [{ healthy: false, record: record({ a: -9 }) }])).toEqual([]);
    expect(trendsOf(record({ a: -9 }), [{ healthy: true, record: record({ a: -9 }, 'm/s²') }])).toEqual([]);
  });
});
