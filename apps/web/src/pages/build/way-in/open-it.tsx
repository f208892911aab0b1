import { openedOn, type Way } from '@rotorwright/build';
import type { ReactNode } from 'react';
import type { ReadableMachine } from '../../../data/index.ts';
import { ReasonForm } from '../reason-form.tsx';

export interface OpenItProps {
  readonly open: ReadableMachine;
  readonly way: Way;
  /** What is reached, in words. */
  readonly what: string;
  readonly onDone: () => void;
}

const reasons = ['Replace a part', 'Inspect', 'Clean and grease', 'Repair'];

/** Enters into the book that a way was gone; what it undoes is work from then on. */
export function OpenIt({ open, way, what, onDone }: OpenItProps): ReactNode {
  return (
    <ReasonForm
      open={open} ask="Open it up" askKind="ink" intro="What comes apart counts as undone from now on: lock, torque, mark and signature are void until it is done and signed again."
      reasons={reasons} act="Enter it in the book" body={(reason) => ({ kind: 'opened', things: openedOn(way), reason })} what={`opened ${what}`} onDone={onDone}
    />
  );
}
