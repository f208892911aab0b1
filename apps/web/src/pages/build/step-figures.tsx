import type { Step } from '@rotorwright/build';
import { careAt, careNotes, careOf, endPlays, figures, screwFigures, type Figure } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { Fragment, useMemo, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { ReadableMachine } from '../../data/index.ts';
import { figureAt, StateMark } from '../../sheet/index.ts';

/** What follows for the screw or the stack of a step. Each figure opens into its working. */
export function StepFigures({ open, step }: { readonly open: ReadableMachine; readonly step: Step }): ReactNode {
  const groups = useMemo(() => groupsOf(open.machine, step.id), [open.machine, step.id]);
  return groups.map(({ label, rows, note }) => (
    <Fragment key={label}>
      <ul className="figure-links" aria-label={label}>
        {rows.map((figure) => (
          <li key={figure.name}>
            <Link href={figureAt(open.id, figure.name)}>{figure.title}</Link>{' '}
            {figure.value === undefined ? <span className="state-word unknown"><StateMark state="unknown" size={12} />{figure.missing.length > 0 ? 'entry missing' : figure.warnings[0] ?? 'not known'}</span> : showQuantity(figure.value, figure.shown, { significant: 3 })}
          </li>
        ))}
      </ul>
      {note !== undefined && <p className="small soft">{note}</p>}
    </Fragment>
  ));
}

interface StepFigureRows {
  readonly label: string;
  readonly rows: readonly Figure[];
  readonly note?: string;
}

function groupsOf(machine: Machine, id: string): readonly StepFigureRows[] {
  const [own, bearings] = [figuresOf(machine, id), bearingRows(machine, id)];
  return [...(own ? [own] : []), ...(bearings ? [bearings] : [])];
}

/** How warm the housings of a stack or a press fit must be, how far that stays below what must not get hot, and how much grease goes in. */
function bearingRows(machine: Machine, id: string): StepFigureRows | undefined {
  if (!machine.stacks.has(id) && !machine.joints.has(id)) return undefined;
  const rows = careAt(careOf(figures(machine)), id).flatMap(({ warmth, spare, grease }) => [warmth, ...(warmth.value === undefined ? [] : [spare]), ...(grease ? [grease] : [])]);
  return rows.length === 0 ? undefined : { label: 'Warmth and grease of its bearings', rows, note: careNotes.warmth };
}

function figuresOf(machine: Machine, id: string): StepFigureRows | undefined {
  const known = (rows: readonly (Figure | undefined)[]): readonly Figure[] => rows.filter((figure) => figure !== undefined);
  const stack = machine.stacks.get(id) ?? machine.stacks.get(machine.measurements.get(id)?.of ?? '');
  const play = stack && endPlays(machine).find((one) => one.stack.id === stack.id);
  if (play) return { label: 'End play of this stack', rows: play.least ? known([play.least, play.low, play.high, play.most, play.share]) : [play.nominal] };
  const screw = machine.joints.has(id) ? screwFigures(figures(machine)).find(({ joint }) => joint.id === id) : undefined;
  return screw && { label: 'Figures of this screw', rows: known([screw.torque, screw.preload, screw.utilisation, screw.threadMargin]) };
}
