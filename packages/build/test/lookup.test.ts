import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isBearing, rememberedOf, type Machine } from '@rotorwright/machine';
import { jointsNaming, namedBy, thingIdOf } from '../src/lookup.ts';
import { AcyclicOrder } from '../src/order/acyclic.ts';
import { OrderGraph } from '../src/order/graph.ts';
import { tiedIn } from '../../machine/src/stacks/tied.ts';
import { bigMachine } from '../../../benchmarks/src/machines/big-machine.ts';

describe('what is remembered', () => {
  it('is computed once for each machine and key, nothing included, and for another machine again', () => {
    const asked: string[] = [];
    const of = rememberedOf((machine, key: string) => {
      asked.push(`${machine.name} ${key}`);
      return key === 'none' ? undefined : `${machine.name}/${key}`;
    });
    const [one, other] = [{ name: 'one' } as Machine, { name: 'other' } as Machine];
    expect([of(one, 'a'), of(one, 'a'), of(one, 'none'), of(one, 'none'), of(other, 'a')]).toEqual(['one/a', 'one/a', undefined, undefined, 'other/a']);
    expect(asked).toEqual(['one a', 'one none', 'other a']);
  });
});

describe('an order that grows', () => {
  const edgesOf = (graph: OrderGraph) => graph.nodes.flatMap((first) => [...graph.next(first)].map(([later, cured]) => ({ first, later, cured })));

  it('takes just those edges that close no loop (independent route: a walk through the whole graph)', () => {
    const nodes = Array.from({ length: 12 }, (_, at) => `s${at}`);
    const edge = fc.record({ first: fc.constantFrom(...nodes, 'unknown'), later: fc.constantFrom(...nodes), cured: fc.boolean() });
    fc.assert(
      fc.property(fc.array(edge, { maxLength: 60 }), (edges) => {
        const [walked, graph] = [new OrderGraph(nodes), new OrderGraph(nodes)];
        const growing = new AcyclicOrder(graph, nodes);
        for (const each of edges) {
          if (walked.takes([each])) walked.add(each);
          growing.add(each);
        }
        expect(edgesOf(graph)).toEqual(edgesOf(walked));
        for (const { first, later } of edgesOf(graph)) expect(graph.previous(later).has(first)).toBe(true);
      }),
    );
  });
});

describe('what joints tie together', () => {
  const { machine } = bigMachine(6, 7);
  const parts = [...machine.parts.values()].flatMap(({ instances }) => instances);

  /** Joint by joint, as one would follow them by hand. */
  function walk(from: string): ReadonlySet<string> {
    const found = new Set([from]);
    for (const id of found) {
      const part = machine.parts.get(thingIdOf(machine, id));
      if (part === undefined || (part.ground && id !== from) || isBearing(part)) continue;
      for (const { seat, holds } of [...machine.joints.values()].flatMap(({ each }) => each)) {
        if (seat === id) for (const held of holds) found.add(held);
        else if (seat !== undefined && holds.includes(id)) found.add(seat);
      }
    }
    return found;
  }

  it('is what a walk from joint to joint meets, from any part (independent route)', () => {
    for (const from of parts.filter((id, at) => at % 7 === 0 || machine.parts.get(thingIdOf(machine, id))?.ground)) {
      const [isTied, met] = [tiedIn(machine)([from]), walk(from)];
      expect(parts.filter(isTied)).toEqual(parts.filter((id) => met.has(id)));
    }
  });

  it('joints that name some parts come in the order of the file, each once', () => {
    const some = new Set(parts.filter((_, at) => at % 5 === 0));
    expect(jointsNaming(machine, some)).toEqual([...machine.joints.values()].filter((joint) => namedBy(joint).some((id) => some.has(id))));
  });
});
