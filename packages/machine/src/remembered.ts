import type { Machine } from './model/machine.ts';

/**
 * What follows from one frozen thing alone: computed when it is first asked for, and kept as long as the thing is. A
 * machine never changes, so nothing that is kept can become untrue. Nothing else remembers anything.
 */
export function remembered<Of extends object, Value>(compute: (of: Of) => Value): (of: Of) => Value {
  const known = new WeakMap<Of, Value>();
  return (of) => {
    const before = known.get(of);
    if (before !== undefined || known.has(of)) return before as Value;
    const value = compute(of);
    known.set(of, value);
    return value;
  };
}

/** The same for one thing, or one id, of a machine. */
export function rememberedOf<Key, Value>(compute: (machine: Machine, key: Key) => Value): (machine: Machine, key: Key) => Value {
  const knownIn = remembered<Machine, Map<Key, Value>>(() => new Map());
  return (machine, key) => {
    const known = knownIn(machine);
    const before = known.get(key);
    if (before !== undefined || known.has(key)) return before as Value;
    const value = compute(machine, key);
    known.set(key, value);
    return value;
  };
}
