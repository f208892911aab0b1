import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layModules, type GraphNode } from '../apps/web/src/pages/build/module-graph.ts';

const metrics = { boxWidth: 160, boxHeight: 54, gapX: 32, gapY: 16 };

const graph = fc
  .integer({ min: 1, max: 14 })
  .chain((count) => fc.tuple(fc.constant(count), fc.array(fc.tuple(fc.nat(count - 1), fc.nat(count - 1)), { maxLength: 30 })))
  .map(([count, pairs]): readonly GraphNode[] => Array.from({ length: count }, (_, index) => ({ id: `m${index}`, after: pairs.filter(([, to]) => to === index).map(([from]) => `m${from}`) })));

describe('the graph of modules', () => {
  it('every module has a box, and every arrow points to the right, whatever the order, even with loops', () => {
    fc.assert(
      fc.property(graph, (nodes) => {
        const laid = layModules(nodes, metrics);
        expect(laid.boxes.map((box) => box.id).sort()).toEqual(nodes.map((node) => node.id).sort());
        const layer = new Map(laid.boxes.map((box) => [box.id, box.layer]));
        for (const arrow of laid.arrows) expect(layer.get(arrow.from) ?? NaN).toBeLessThan(layer.get(arrow.to) ?? NaN);
      }),
    );
  });

  it('boxes never overlap', () => {
    fc.assert(
      fc.property(graph, (nodes) => {
        const { boxes } = layModules(nodes, metrics);
        for (const [index, a] of boxes.entries()) {
          for (const b of boxes.slice(index + 1)) expect(Math.abs(a.x - b.x) >= metrics.boxWidth || Math.abs(a.y - b.y) >= metrics.boxHeight).toBe(true);
        }
      }),
    );
  });

  it('an arrow that two others imply is left out', () => {
    const laid = layModules([{ id: 'a', after: [] }, { id: 'b', after: ['a'] }, { id: 'c', after: ['a', 'b'] }], metrics);
    // By hand: a before b before c says a before c.
    expect(laid.arrows.map((arrow) => `${arrow.from}${arrow.to}`)).toEqual(['ab', 'bc']);
    expect(laid.layers).toEqual([['a'], ['b'], ['c']]);
  });

  it('arrows begin and end at the edges of their boxes and run level or upright', () => {
    fc.assert(
      fc.property(graph, (nodes) => {
        const laid = layModules(nodes, metrics);
        const box = new Map(laid.boxes.map((one) => [one.id, one]));
        for (const { from, to, points } of laid.arrows) {
          expect(points[0]?.[0]).toBe((box.get(from)?.x ?? NaN) + metrics.boxWidth);
          expect(points.at(-1)?.[0]).toBe(box.get(to)?.x);
          for (const [index, point] of points.slice(1).entries()) {
            const before = points[index] ?? point;
            expect(Math.abs(point[0] - before[0]) < 0.6 || Math.abs(point[1] - before[1]) < 0.6).toBe(true);
          }
        }
      }),
    );
  });

  it('two ladders that a naive order would cross are drawn without a crossing', () => {
    const laid = layModules([{ id: 'a', after: [] }, { id: 'b', after: [] }, { id: 'c', after: ['b'] }, { id: 'd', after: ['a'] }], metrics);
    const y = new Map(laid.boxes.map((one) => [one.id, one.y]));
    expect(Math.sign((y.get('a') ?? 0) - (y.get('b') ?? 0))).toBe(Math.sign((y.get('d') ?? 0) - (y.get('c') ?? 0)));
  });

  it('modules named in `after` that do not exist are passed over', () => {
    expect(layModules([{ id: 'a', after: ['nowhere'] }], metrics).arrows).toEqual([]);
  });
});
