import type { Step } from '@rotorwright/build';
import type { ReactNode } from 'react';
import type { ReadableMachine } from '../../data/index.ts';
import { ReasonForm } from './reason-form.tsx';

export interface TakeBackProps {
  readonly open: ReadableMachine;
  readonly step: Step;
  /** Number of the signature. */
  readonly entry: number;
}

const reasons = ['Signed the wrong step', 'Not done after all', 'Opened again', 'Looked again and it was not right'];

/** Takes a signature back by an entry with a reason; the signature itself stays in the book. */
export function TakeBack({ open, step, entry }: TakeBackProps): ReactNode {
  return (
    <ReasonForm
      open={open} ask="Take the signature back" intro={`Entry ${entry} stays in the book. A new one says why it no longer counts.`} reasons={reasons} act="Take it back"
      body={(reason) => ({ kind: 'corrected', entry, reason })} what={`took back ${step.title}`}
    />
  );
}
