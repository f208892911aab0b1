import { hear, type Hearing, type LineComb } from '@rotorwright/signals';
import { makeRecording, type Made, type Scene } from '../../../tests/recordings/make-recording.ts';

/** One kind of recording, and what is asked of its answers besides the speed. */
export interface HearingClass {
  readonly name: string;
  /** The file is right and the machine heard whole: such classes are also told together. */
  readonly right?: true;
  /** What sounds in the recording of this number, and what the file says of the machine where that is something else. */
  readonly scene: (number: number) => { readonly scene: Scene; readonly file?: LineComb };
  readonly marks?: (heard: Heard, number: number) => Readonly<Record<string, boolean | number>>;
}

export interface Heard {
  readonly scene: Scene;
  readonly made: Made;
  readonly hearing: Hearing;
}

/** What is kept of one answer. */
export interface Row {
  readonly class: string;
  readonly number: number;
  readonly verdict: Hearing['verdict'];
  /** Relative error of the mean speed, and that over its deviation; not there when none was named. */
  readonly error?: number;
  readonly deviations?: number;
  readonly inside?: boolean;
  readonly margin: number;
  readonly marks: Readonly<Record<string, boolean | number>>;
  /** CPU seconds */
  readonly time: number;
}

export function judge({ name, scene: sceneOf, marks }: HearingClass, number: number): Row {
  const { scene, file = scene.comb } = sceneOf(number);
  const made = makeRecording(scene);
  const start = process.cpuUsage();
  const hearing = hear(made.recording, file);
  const { user, system } = process.cpuUsage(start);
  const { speed, deviation, interval, verdict, margin } = hearing;
  const truth = 2 * Math.PI * made.speed;
  return {
    class: name, number, verdict, margin,
    ...(speed === undefined ? {} : { error: speed / truth - 1, deviations: (speed - truth) / deviation!, inside: interval![0] <= truth && truth <= interval![1] }),
    marks: marks?.({ scene, made, hearing }, number) ?? {},
    time: (user + system) / 1e6,
  };
}
