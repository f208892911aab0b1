import { propertyClasses } from '@rotorwright/mechanics';
import { inSentence } from '../drive/in-sentence.ts';
import type { MarginBench } from './bench.ts';
import { addStripping } from './rotor-margins.ts';

/** Limits of the file that must not be passed. */
export function addLimits(bench: MarginBench): void {
  for (const { id, path, of, window, source } of bench.machine.limits.values()) {
    const figure = bench.builder.get(of);
    // A place that may lie on either side of nought has room left, but no ratio: the finding says when it leaves its window.
    if (!figure || window.max === undefined || window.max <= 0 || (window.min ?? 0) < 0) continue;
    bench.add({
      kind: 'limit', of: id, title: `${figure.title}, limit`, demand: of,
      capacity: { title: `Limit for ${inSentence(figure.title)}`, unit: figure.unit, shown: figure.shown, inputs: { value: { entry: `${path}.at-most`, value: window.max, unit: figure.unit } } },
      leavesOut: source === undefined ? ['Who says so: the file names no source.'] : [],
      improve: source === undefined ? [`${path}.source`] : [],
    });
  }
}

/** Threads that must hold the preload of their screws. */
export function addThreads(bench: MarginBench): void {
  for (const joint of bench.machine.joints.values()) {
    if (!bench.isFirst(joint) || joint.kind !== 'screw' || !bench.builder.get(`preload ${joint.id}`)) continue;
    if (propertyClasses.some((each) => each === joint.class)) addStripping(bench, joint, `preload ${joint.id}`);
  }
}
