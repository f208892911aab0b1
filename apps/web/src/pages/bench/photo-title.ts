import type { Step } from '@rotorwright/build';
import type { StepEvent } from '@rotorwright/logbook';
import { dayOf } from '../../sheet/index.ts';

/** What a photo shows, for whoever does not see it. */
export const photoTitle = (step: Step, { at }: Pick<StepEvent, 'at'>): string => `Photo of ${step.title}, ${dayOf(at)}`;
