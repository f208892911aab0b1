import type { EntryPath, Machine, Window } from '@rotorwright/machine';
import { centreOf, fitsIn } from '../choices/centres.ts';
import { inSentence } from '../drive/in-sentence.ts';
import type { FigureSet } from '../set/figure-set.ts';

/** A window of the file that a figure should keep: a wanted band, a limit, a slot of the frame, the band of an engine. */
export interface KeptWindow {
  /** What must keep it: name of a figure, or a coupling for its centre distance. */
  readonly of: string;
  readonly kind: 'band' | 'limit' | 'centre' | 'engine';
  /** In words: "Speed of mast", "centre distance of pinion and main gear". */
  readonly title: string;
  /** Entry that sets it. */
  readonly path: EntryPath;
  readonly unit: string;
  readonly shown: string;
  readonly window: Window;
  /** SI; absent while it is not known: then nobody can say whether it is kept. */
  readonly value?: number;
  readonly kept?: boolean;
  readonly source?: string;
}

/** A window before and after a change. Either is absent where one of the two files has no such window. */
export interface WindowChange {
  readonly before?: KeptWindow;
  readonly after?: KeptWindow;
}

/** Every window that the file sets for something that can be computed, and whether it is kept. */
export function windowsOf(set: FigureSet): readonly KeptWindow[] {
  const { machine } = set;
  const figure = (kind: KeptWindow['kind'], name: string, path: EntryPath, window: Window, source?: string): KeptWindow[] => {
    const found = set.get(name);
    return found === undefined ? [] : [judged({ of: name, kind, title: found.title, path, unit: found.unit, shown: found.shown, window, ...(source === undefined ? {} : { source }) }, found.value)];
  };
  const source = machine.power.engine ?? machine.power.motor;
  return [
    ...[...machine.rotors.values()].flatMap((rotor) => (rotor.wanted === undefined ? [] : figure('band', `speed ${rotor.on}`, `${rotor.path}.wanted`, rotor.wanted))),
    ...(source?.bestSpeed === undefined ? [] : figure('engine', `speed ${source.on}`, `${source.path}.best`, source.bestSpeed)),
    ...[...machine.limits.values()].flatMap((limit) => figure('limit', limit.of, limit.path, limit.window, limit.source)),
    ...slotsOf(machine),
  ];
}

function slotsOf(machine: Machine): readonly KeptWindow[] {
  return [...machine.couplings.values()].flatMap((coupling) => {
    const { driver, driven, centre } = coupling;
    if (centre === undefined || coupling.kind === 'bevel' || driver.teeth === undefined || driven.teeth === undefined) return [];
    const distance = centreOf(coupling, driver.teeth, driven.teeth);
    const slot: KeptWindow = { of: coupling.id, kind: 'centre', title: `Centre distance of ${inSentence(coupling.title)}`, path: `${coupling.path}.centre`, unit: 'm', shown: 'mm', window: centre };
    if (typeof distance !== 'number') return [slot];
    const kept = fitsIn(centre, distance);
    return [{ ...slot, value: distance, ...(kept === undefined ? {} : { kept }) }];
  });
}

function judged(window: Omit<KeptWindow, 'value' | 'kept'>, value: number | undefined): KeptWindow {
  if (value === undefined) return window;
  const { min = -Infinity, max = Infinity } = window.window;
  return { ...window, value, kept: value >= min && value <= max };
}

/** Windows that a change brings about, moves, or comes to stand differently in; those that stay as they are are left out. */
export function compareWindows(before: FigureSet, after: FigureSet): readonly WindowChange[] {
  const key = ({ kind, of, path }: KeptWindow): string => `${kind} ${of} ${path}`;
  const [was, is] = [before, after].map((set) => new Map(windowsOf(set).map((window) => [key(window), window] as const))) as [Map<string, KeptWindow>, Map<string, KeptWindow>];
  return [...new Set([...is.keys(), ...was.keys()])].flatMap((name): WindowChange[] => {
    const [old, now] = [was.get(name), is.get(name)];
    const same = old !== undefined && now !== undefined && old.value === now.value && old.window.min === now.window.min && old.window.max === now.window.max;
    return same ? [] : [{ ...(old === undefined ? {} : { before: old }), ...(now === undefined ? {} : { after: now }) }];
  });
}
