import { catalogue, isCalcProblem } from '@rotorwright/calculations';
import type { BalanceSummary, FigureSet } from '@rotorwright/figures';
import type { BuildState } from '@rotorwright/logbook';
import { useState, type ComponentType, type ReactNode } from 'react';
import { Link } from 'wouter';
import { Button, StateWord, Warning, worksheetAt } from '../../sheet/index.ts';
import { CalculationFields, CalculationResults, useCalculation } from '../worksheet/index.ts';
import { filledBlades, filledRuns, filledTracking, type Filled } from './filled.ts';
import { TrialBook } from './trial-book.tsx';
import { BladeOrder, Blades, Holes, OnePlane, TwoPlanes, WithoutPhase, type PictureProps } from './pictures.tsx';

export interface Work {
  readonly title: string;
  readonly calculation: string;
  readonly picture?: ComponentType<PictureProps>;
  /** In the order of the work. */
  readonly steps: readonly string[];
}

const running = 'Stand behind cover, out of the plane of every rotor. Stop, and disarm, before you touch anything.';
const standing = 'Disarm the motor, or take the plug off, before you put a hand to a blade.';

/** What is balanced by hand, each by one calculation, in the order in which a builder meets it. */
export const works: Readonly<Record<string, Work>> = {
  blades: {
    title: 'Blades', calculation: 'blade-match', picture: Blades,
    steps: ['Bolt both blades and stretch a thread from tip to tip: their edges lie in one line.', 'Weigh both. Even the masses first.', 'Balance each on an edge: measure its centre from the bolt, then across from the feathering axis.', 'Put tape where the place is named, and weigh again.', 'Then track, and last trial masses on the turning rotor.'],
  },
  'one-plane': {
    title: 'One plane', calculation: 'balance-single-plane', picture: OnePlane,
    steps: ['Run up as it is; read amplitude and phase.', 'Stop. Fix the trial mass, and run at the same speed.', 'Take it off, fix the correction, and read again.'],
  },
  'two-planes': {
    title: 'Two planes', calculation: 'balance-two-plane', picture: TwoPlanes,
    steps: ['Run up as it is; read both sensors.', 'Stop. Trial mass in plane 1 alone, then in plane 2 alone.', 'Fix both corrections, and read again.'],
  },
  'without-phase': {
    title: 'Without phase', calculation: 'balance-four-run', picture: WithoutPhase,
    steps: ['Mark three places 120° apart, in the sense of rotation.', 'Run up as it is, then with the trial mass at each of them.', 'Fix the correction, and read again: the closure says whether the runs agree.'],
  },
  holes: {
    title: 'Holes', calculation: 'balance-split', picture: Holes,
    steps: ['Give the correction and the angles of the holes.', 'Fix what each hole gets, with a lock of its own.'],
  },
  tracking: {
    title: 'Tracking', calculation: 'blade-tracking',
    steps: ['Mark the tips, and see which flies higher from the side.', 'Stop the rotor. Turn the link of one blade by the turns that are named.', 'Look again before you change anything else.'],
  },
};

export interface WorkViewProps {
  readonly id: string;
  readonly view: string;
  readonly work: Work;
  readonly set: FigureSet;
  readonly summary: BalanceSummary;
  readonly state: BuildState;
}

/** One piece of balancing: its steps, its fields, its vectors, what follows. */
export function WorkView({ id, view, work, set, summary, state }: WorkViewProps): ReactNode {
  const [group, setGroup] = useState(summary.spun[0]?.spun.id);
  const chosen = summary.spun.find(({ spun }) => spun.id === group);
  const filled: Filled = work.calculation === 'blade-match' ? filledBlades(set, state) : work.calculation === 'blade-tracking' ? filledTracking(set) : filledRuns(work.calculation, chosen?.spun);
  const calculation = catalogue.get(work.calculation)!;
  const open = useCalculation(calculation, filled.inputs, `view=${view}`);
  const choose = (next: string): void => {
    setGroup(next);
    // Holes are those of the group.
    if (open.untouched) open.fill(filledRuns(work.calculation, summary.spun.find(({ spun }) => spun.id === next)?.spun).inputs);
  };
  const spinning = view !== 'blades' && view !== 'tracking';
  const Picture = work.picture;
  const { inputs, answered } = open;
  const permissible = spinning ? chosen?.atRadius.value : undefined;
  const places = spinning ? chosen?.spun.places : undefined;
  return (
    <div className="columns balance-work">
      <section className="area worksheet-inputs" aria-label="Inputs">
        <h2>{calculation.title}</h2>
        <p className="caution"><Warning />{view === 'blades' ? standing : running}</p>
        <ol className="balance-steps">{work.steps.map((step) => <li key={step}>{step}</li>)}</ol>
        {spinning && summary.spun.length > 0 && (
          <label className="balance-group">For <select value={group} onChange={(event) => choose(event.target.value)}>{summary.spun.map(({ spun }) => <option key={spun.id} value={spun.id}>{spun.title}</option>)}</select></label>
        )}
        {open.untouched && <p role="status">{filled.example.length === 0 ? 'All of it from the file and the book; type what you measure.' : <><StateWord state="unknown" size={13}>example</StateWord> Until you type yours: {filled.example.join('; ')}.</>}</p>}
        <CalculationFields open={open} />
        <Button onClick={() => open.fill(filled.inputs)}>Start again</Button>
        <TrialBook open={open} {...(spinning && chosen ? { of: chosen.spun.id } : {})} />
      </section>
      <section className="area worksheet-results" aria-label="Results">
        {Picture && !isCalcProblem(answered) && <div className="polar-row"><Picture inputs={inputs} answered={answered} {...(permissible === undefined ? {} : { permissible })} {...(places ? { places } : {})} /></div>}
        {view === 'blades' && !isCalcProblem(answered) && <BladeOrder inputs={inputs} answered={answered} />}
        <CalculationResults open={open} />
        <p className="small soft">{calculation.validity.join(' ')} Source: {calculation.source} <Link href={worksheetAt(id, calculation.id)}>Formula and checks on the worksheet</Link></p>
      </section>
    </div>
  );
}
