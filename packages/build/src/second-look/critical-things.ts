import type { HazardEvent, Machine } from '@rotorwright/machine';

/** Things that a crash or an injury is named after: parts that come off or jam, parts of a drive path, links of a control. */
export function criticalThings(machine: Machine): readonly string[] {
  const grave = [...machine.hazards.values()].filter(({ endsIn }) => endsIn === 'crash' || endsIn === 'injury');
  return [...new Set(grave.flatMap(({ when }) => namedIn(machine, when)))];
}

function namedIn(machine: Machine, event: HazardEvent): readonly string[] {
  if ('all' in event) return event.all.flatMap((each) => namedIn(machine, each));
  if ('any' in event) return event.any.flatMap((each) => namedIn(machine, each));
  if ('comesOff' in event) return [event.comesOff];
  if ('jams' in event) return [event.jams];
  return 'noTorque' in event ? drivePath(machine, ...event.noTorque) : controlParts(machine, event.noMotion[0]);
}

/** Parts of the shafts and couplings on the shortest way from one shaft to another; none when no drive leads there. */
function drivePath(machine: Machine, from: string, to: string): readonly string[] {
  const ways = new Map([[from, [] as readonly string[]]]);
  for (const [shaft, parts] of ways) {
    for (const { driver, driven } of machine.couplings.values()) {
      const next = driver.on === shaft ? driven.on : driven.on === shaft ? driver.on : undefined;
      if (next === undefined || ways.has(next)) continue;
      ways.set(next, [...parts, ...[driver.part, driven.part, machine.shafts.get(next)?.part].filter((part) => part !== undefined)]);
    }
  }
  const body = machine.shafts.get(from)?.part;
  return [...(body === undefined || !ways.has(to) ? [] : [body]), ...(ways.get(to) ?? [])];
}

/** What the links of a servo lead to, and every ball link: which of them serve which servo the file does not say. */
function controlParts(machine: Machine, servo: string): readonly string[] {
  const balls = [...machine.joints.values()].filter(({ kind }) => kind === 'ball-link').map(({ id }) => id);
  const ends = [...machine.controls.links.values()].flatMap(({ from, to }) => (from === servo ? [to] : [])).filter((id) => machine.thingOf.has(id));
  return [...balls, ...ends];
}
