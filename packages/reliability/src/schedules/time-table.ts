import type { Bounds } from './bounds.ts';
import type { TickProject } from './project.ts';

/**
 * What must run at every moment: between its latest start and its earliest end an activity runs whatever is decided. Where that
 * leaves too little of a resource, others move away; where it already needs too much, there is a conflict. Every move is explained by
 * one moment and the activities that must run at it.
 *
 * @returns false on a conflict, which then stands in `bounds`
 * @source time-table filtering with pointwise explanation, Schutt, Feydy, Stuckey, Wallace, Solving RCPSP/max by lazy clause generation (2013) (from memory)
 */
export function timeTable(project: TickProject, resource: number, bounds: Bounds): boolean {
  const needs = project.needs[resource]!;
  const capacity = project.capacities[resource]!;
  const { durations } = project;
  const { bound } = bounds;
  const fixed: number[] = [];
  const edges: number[] = [];
  for (let i = 0; i < needs.length; i++) {
    if (needs[i]! > 0 && durations[i]! > 0 && bound[2 * i + 1]! < bound[2 * i]! + durations[i]!) {
      fixed.push(i);
      edges.push(bound[2 * i + 1]!, bound[2 * i]! + durations[i]!);
    }
  }
  if (fixed.length === 0) return true;
  edges.sort((a, b) => a - b);

  // Phase 1: the profile, as steps from `from` to `to`.
  const steps: { from: number; to: number; height: number }[] = [];
  for (let e = 0; e + 1 < edges.length; e++) {
    const from = edges[e]!;
    const to = edges[e + 1]!;
    if (from === to) continue;
    let height = 0;
    for (const i of fixed) if (bound[2 * i + 1]! <= from && bound[2 * i]! + durations[i]! >= to) height += needs[i]!;
    if (height > capacity + 1e-9) {
      bounds.conflict = runningAt(Math.floor((from + to - 1) / 2), capacity, -1);
      return false;
    }
    if (height > 0) steps.push({ from, to, height });
  }

  // Phase 2: whoever does not fit beside a step moves behind it or before it.
  for (let i = 0; i < needs.length; i++) {
    const need = needs[i]!;
    const duration = durations[i]!;
    if (need === 0 || duration === 0 || bound[2 * i]! === bound[2 * i + 1]!) continue;
    for (const step of steps) {
      if (step.from >= bound[2 * i]! + duration) break;
      if (step.to <= bound[2 * i]! || !clashes(i, step)) continue;
      while (bound[2 * i]! < step.to && bound[2 * i]! + duration > step.from) {
        const moment = Math.min(step.to, bound[2 * i]! + duration) - 1;
        if (!bounds.enforce(2 * i, moment + 1, [...runningAt(moment, capacity - need, i), 2 * i, moment + 1 - duration])) return false;
      }
    }
    for (let s = steps.length - 1; s >= 0; s--) {
      const step = steps[s]!;
      if (step.to <= bound[2 * i + 1]!) break;
      if (step.from >= bound[2 * i + 1]! + duration || !clashes(i, step)) continue;
      while (bound[2 * i + 1]! < step.to && bound[2 * i + 1]! + duration > step.from) {
        const moment = Math.max(step.from, bound[2 * i + 1]!);
        if (!bounds.enforce(2 * i + 1, moment - duration, [...runningAt(moment, capacity - need, i), 2 * i + 1, moment])) return false;
      }
    }
  }
  return true;

  function clashes(i: number, step: { from: number; to: number; height: number }): boolean {
    // Its own part of the step does not stand in its way.
    const own = bound[2 * i + 1]! <= step.from && bound[2 * i]! + durations[i]! >= step.to;
    return !own && step.height + needs[i]! > capacity + 1e-9;
  }

  /** Literals that say why more than `room` is taken at a moment: as few activities as will do, the largest first. */
  function runningAt(moment: number, room: number, except: number): number[] {
    const there = fixed.filter((j) => j !== except && bound[2 * j + 1]! <= moment && bound[2 * j]! + durations[j]! > moment).sort((a, b) => needs[b]! - needs[a]!);
    const literals: number[] = [];
    let height = 0;
    for (const j of there) {
      if (height > room + 1e-9) break;
      literals.push(2 * j, moment + 1 - durations[j]!, 2 * j + 1, moment);
      height += needs[j]!;
    }
    return literals;
  }
}
