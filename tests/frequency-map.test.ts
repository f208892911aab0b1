import { describe, expect, it } from 'vitest';
import type { FrequencyMap } from '@rotorwright/figures';
import { layMap, mapFrame } from '../apps/web/src/pages/margins/map-layout.ts';

const flown = 180;
const order = (slope: number, title: string): FrequencyMap['orders'][number] => ({ title, slope, order: 1, speed: 'speed mast', shaft: 'mast' });
const mode = (frequency: number): FrequencyMap['modes'][number] => ({ title: `mode of ${frequency} Hz`, figure: `mode ${frequency}`, margin: `margin ${frequency}`, frequency });
const laid = (frequencies: readonly number[]) => layMap({ flown, crossings: [], orders: [order(0.16, 'once a turn'), order(0.32, 'each blade')], modes: frequencies.map(mode) });

describe('the map of what shakes', () => {
  it('places a frequency by its logarithm: ten times as much lies as far above as a tenth lies below (law)', () => {
    const { y } = laid([10, 1000]);
    expect(y(10) - y(100)).toBeCloseTo(y(100) - y(1000), 9);
  });

  it('lets names of frequencies that lie close make room for each other, the upper one upwards', () => {
    const { modes, y } = laid([50, 51, 52, 800]);
    const heights = modes.map(({ label }) => label);
    for (let i = 1; i < heights.length; i++) expect(heights[i - 1]! - heights[i]!).toBeGreaterThanOrEqual(14);
    expect(modes.map(({ mode: { frequency } }) => frequency)).toEqual([50, 51, 52, 800]);
    expect(heights[0]).toBeLessThan(y(50));
    expect(heights[0]).toBeGreaterThan(y(50) - 14);
  });

  it('names the lines that leave at the side, not those that leave through the top', () => {
    const { orders } = laid([40]);
    expect(orders.map(({ order: { title }, label }) => [title, label === undefined])).toEqual([['once a turn', false], ['each blade', true]]);
    for (const { to, label } of orders) expect(label === undefined).toBe(to[0] < mapFrame.left + mapFrame.width - 1e-9);
  });
});
