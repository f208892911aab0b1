import type { Step } from '@rotorwright/build';
import { bearingWords, careAt, careNotes, careOf, figures, type BearingCare } from '@rotorwright/figures';
import type { Machine } from '@rotorwright/machine';
import { showQuantity } from '@rotorwright/units';
import { useMemo, type ReactNode } from 'react';

interface WarmAndGreaseProps {
  readonly machine: Machine;
  readonly step: Step;
}

/** How warm the housing must be for the bearings of a step to drop in, and how much grease goes in; the caution first. */
export function WarmAndGrease({ machine, step }: WarmAndGreaseProps): ReactNode {
  const seats = machine.stacks.has(step.id) || machine.joints.get(step.id)?.kind === 'press';
  const bearings = useMemo(() => (seats ? careAt(careOf(figures(machine)), step.id).filter(isKnown) : []), [machine, step.id, seats]);
  if (bearings.length === 0) return undefined;
  return (
    <section className="bench-expected" aria-label="Warm and grease">
      <h2>Warm and grease</h2>
      <p>{careNotes.warmth}</p>
      <ul className="wide">{alike(bearings).map((same) => <li key={same[0].instance}><Care same={same} /></li>)}</ul>
    </section>
  );
}

/** At the bench nothing is said of what is not known: Build says which entry is missing. */
const isKnown = ({ warmth, grease }: BearingCare): boolean => warmth.value !== undefined || grease?.value !== undefined;

type Alike = readonly [BearingCare, ...BearingCare[]];

/** What is said of one bearing, without its name. */
const said = (bearing: BearingCare): string => [bearing.warmth, bearing.grease].map((figure) => figure?.value).join() + bearingWords(bearing);

/** Bearings of which the same is said, together. */
function alike(bearings: readonly BearingCare[]): readonly Alike[] {
  const groups = new Map<string, Alike>();
  for (const bearing of bearings) {
    const before = groups.get(said(bearing));
    groups.set(said(bearing), before ? [...before, bearing] : [bearing]);
  }
  return [...groups.values()];
}

function Care({ same }: { readonly same: Alike }): ReactNode {
  const [{ warmth, spare, grease }] = same;
  const names = same.map(({ part }) => part.title).join(' and ');
  const each = same.length > 1 ? ' each' : '';
  return (
    <>
      <Warmth warmth={warmth} spare={spare} names={names} />
      {' '}{bearingWords(same[0])}
      {grease?.value !== undefined && <> Grease: <b>{showQuantity(grease.value, grease.shown, { significant: 2 })}</b>{each}.</>}
    </>
  );
}

/** What would pass a limit is no temperature to set. */
function Warmth({ warmth, spare, names }: Pick<BearingCare, 'warmth' | 'spare'> & { readonly names: string }): ReactNode {
  if (warmth.value === undefined) return `${names}:`;
  const housing = showQuantity(warmth.value, warmth.shown, { significant: 2 });
  if ((spare.value ?? 0) < 0) return <><b>Do not warm</b> for {names}: it would take a housing at {housing}.</>;
  return <>Housing at <b>{housing}</b> for {names}.</>;
}
