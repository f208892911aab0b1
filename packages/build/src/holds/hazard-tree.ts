import type { Hazard, HazardEvent } from '@rotorwright/machine';
import { once } from '../once.ts';
import { phraseOf } from '../words/index.ts';
import type { Assembly, Body } from './assembly.ts';
import { gripsOf, motionNetworks, shaftEnds, torqueNetwork } from './drive-network.ts';
import type { Loss } from './gate-book.ts';
import type { Losses } from './losses.ts';
import type { Ranks } from './rank.ts';
import { cutBetween, type Network } from './ways-between.ts';

/** What keeps what, and when it no longer does. */
export interface HoldGraph {
  readonly assembly: Assembly;
  readonly ranks: Ranks;
  readonly losses: Losses;
}

/** What brings a hazard about, and what of it the file does not tell. */
export interface HazardTree {
  /** Nothing when nothing that the file tells can bring it about. */
  readonly top: Loss;
  /** Why some of it cannot be followed: each completes "cannot be followed to its causes: …". */
  readonly gaps: readonly string[];
}

export function hazardTrees({ assembly, ranks, losses }: HoldGraph): (hazard: Hazard) => HazardTree {
  const { machine } = assembly;
  const { book } = losses;
  const torque = once(() => torqueNetwork(assembly, losses));
  const motion = once(() => motionNetworks(assembly, losses));
  const called = (id: string): string => phraseOf(machine, id, '');

  return (hazard) => {
    const gaps: string[] = [];
    const gap = (reason: string): undefined => {
      if (!gaps.includes(reason)) gaps.push(reason);
      return undefined;
    };
    const kept = (body: Body): boolean => ranks.of(body) !== undefined || gap(`the file does not say what keeps ${called(body)}`) === true;

    const follow = (network: Network, source: Body, target: Body, what: string): Loss => {
      const cut = cutBetween(book, network, source, target);
      if (cut === undefined) return gap(`no joint or coupling passes ${what} on from ${called(source)} to ${called(target)}`);
      for (const end of [source, target]) kept(end);
      return cut.cut;
    };

    const lossOf = (event: HazardEvent): Loss => {
      if ('any' in event) return book.any(event.any.map(lossOf));
      if ('all' in event) return book.all(event.all.map(lossOf));
      if ('comesOff' in event) {
        kept(event.comesOff);
        return losses.place(event.comesOff);
      }
      if ('noTorque' in event) return noTorque(event.noTorque);
      if ('noMotion' in event) return noMotion(event.noMotion);
      return jams(event.jams);
    };

    const noTorque = ([from, to]: readonly [string, string]): Loss => {
      const [source] = shaftEnds(machine, from, 'source');
      const targets = shaftEnds(machine, to, 'target');
      if (source === undefined) return gap(`the file names no part of the shaft ${from}`);
      if (targets.length === 0) return gap(`the file names no part of the shaft ${to}`);
      return book.any(targets.map((target) => follow(torque(), source, target, 'torque')));
    };

    const noMotion = ([from, to]: readonly [string, string]): Loss => {
      const sources = moversOf(from, gap);
      const targets = moversOf(to, gap);
      const network = motion()(new Set([...sources, ...targets]));
      return book.any(sources.flatMap((source) => targets.map((target) => follow(network, source, target, 'motion'))));
    };

    const moversOf = (id: string, gap: (reason: string) => undefined): readonly Body[] => {
      const { servos, levers, slider, links, swashplate } = machine.controls;
      if (machine.thingOf.has(id)) return bodiesOf(id);
      const part = servos.get(id)?.part ?? levers.get(id)?.part ?? (id === 'slider' ? slider?.part : undefined);
      if (part !== undefined) return [part];
      const grips = gripsOf(machine, id);
      if (grips.length > 0) return grips;
      if (servos.has(id)) gap(`the file does not say which part the servo ${id} is`);
      else if (levers.has(id)) gap(`the file does not say which part the lever ${id} is`);
      else if (machine.rotors.has(id)) gap(`the file stacks no blade grip on the hub of the rotor ${id}`);
      else if (links.has(id) || swashplate !== undefined) gap(`${id} is not a part; name the part that moves`);
      return [];
    };

    const bodiesOf = (id: string): readonly Body[] => {
      if (assembly.bodies.has(id)) return [id];
      const joint = machine.joints.get(machine.thingOf.get(id) ?? id);
      const copies = joint?.each.filter((copy) => copy.id === id || joint.id === id) ?? [];
      const bodies = copies.flatMap(({ seat, holds }) => [...(seat === undefined ? [] : [seat]), ...holds]).filter((body) => assembly.bodies.has(body));
      return bodies.length > 0 ? bodies.slice(0, 1) : (machine.parts.get(id)?.instances ?? []);
    };

    /** A thing jams when a stack that it is part of was put together wrong, or has lost what closes it. */
    const jams = (id: string): Loss => {
      const bodies = machine.shafts.has(id) ? shaftEnds(machine, id, 'source') : machine.thingOf.has(id) ? bodiesOf(id) : moversOf(id, gap);
      const stacks = [...new Set(bodies.flatMap((body) => assembly.stacksOf.get(body) ?? []))];
      if (bodies.length > 0 && stacks.length === 0) gap(`${called(id)} is in no stack, so the file does not say how it could jam`);
      return book.any(stacks.map(losses.stack));
    };

    const top = lossOf(hazard.when);
    if (top === undefined && gaps.length === 0) gap('nothing that the file tells can bring it about');
    return { top, gaps };
  };
}
