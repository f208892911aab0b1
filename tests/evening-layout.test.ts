import { describe, expect, it } from 'vitest';
import type { Evenings, Step } from '@rotorwright/build';
import { layEvenings } from '../apps/web/src/pages/build/evening-layout.ts';

const first = '2026-03-02T18:00:00.000Z';
const at = (hours: number): string => new Date(Date.parse(first) + hours * 3_600_000).toISOString();
const step = (module: string): Step => ({ module }) as Step;

// By hand: two evenings of two hours, 100 px each, nights of 20 px; an hour of work is 50 px.
const found: Evenings = {
  evenings: [
    { from: at(0), to: at(2), work: 5400, steps: [{ step: step('tail'), starts: at(0), ends: at(0.5), curesUntil: at(13) }, { step: step('tail'), starts: at(0.5), ends: at(1) }, { step: step('head'), starts: at(1.5), ends: at(2) }] },
    { from: at(24), to: at(26), work: 3600, steps: [{ step: step('tail'), starts: at(24), ends: at(25), curesUntil: at(49) }] },
  ],
  count: 2, atLeast: 2, proven: true, ready: at(49), tooLong: [],
};
const layout = layEvenings(found, first, 7200, [{ step: step('mast'), until: at(1) }, { step: step('mast'), until: at(-3) }], { evening: 100, night: 20 });
const barsOf = (module: string) => layout.rows.find((row) => row.module === module)?.bars;

describe('the timeline of evenings', () => {
  it('joins work that follows on, and runs a cure through the night, drawn short', () => {
    // By hand: the night of 22 h takes 20 px; 11 h of it are 10 px.
    expect(barsOf('tail')).toEqual([
      { kind: 'curing', x: 25, width: 85 },
      { kind: 'curing', x: 170, width: 70 },
      { kind: 'planned', x: 0, width: 50 },
      { kind: 'planned', x: 120, width: 50 },
    ]);
  });

  it('shows what cures already, and nothing that has cured', () => {
    expect(barsOf('mast')).toEqual([{ kind: 'curing', x: 0, width: 50 }]);
  });

  it('has a column for each evening with its work and full hours', () => {
    expect(layout.width).toBe(240);
    expect(layout.columns.map(({ x, work }) => [x, work])).toEqual([[0, 5400], [120, 3600]]);
    expect(layout.columns[0]?.hours.map((hour) => hour.x)).toEqual([0, 50, 100]);
  });
});
