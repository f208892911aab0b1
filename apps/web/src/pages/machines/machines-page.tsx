import { figures, rotorsOf } from '@rotorwright/figures';
import { showQuantity } from '@rotorwright/units';
import { useMemo, useState, type ReactNode } from 'react';
import { useBoard, type MachineView } from '../../data/index.ts';
import { Button, Empty, Note, Sheet, StateWord, stateOf, type MarkState } from '../../sheet/index.ts';
import { MachineRow } from './machine-row.tsx';
import { NewMachine } from './new-machine.tsx';
import { outlineOf } from './outline.ts';
import './machines.css';

/** Width of the widest machine on a desk sheet, px. */
const widest = 470;
/** Millimetres on a screen that shows 96 px an inch. */
const millimetresAPixel = 25.4 / 96;

/** Every machine in one line: what speaks against flying, what is next. */
export function MachinesPage(): ReactNode {
  const { machines } = useBoard();
  const [way, setWay] = useState<'questions' | 'file'>();
  const outlines = useMemo(() => new Map(machines.map(({ id, machine }) => [id, machine && outlineOf(machine)])), [machines]);
  const longest = Math.max(1, ...[...outlines.values()].map((outline) => outline?.width ?? 0));
  const scale = widest / longest;
  const energy = useMemo(() => mostEnergy(machines), [machines]);
  return (
    <Sheet
      title="Machines"
      answer={<Answer machines={machines} />}
      actions={<><Button onClick={() => setWay('file')}>From a file</Button><Button kind="ink" onClick={() => setWay('questions')}>New machine</Button></>}
      notes={<Note title="One scale for all">Outlines are computed from the rotors and the kind of power in each file; they show size, not shape. The tail rotor stands just clear of the main disc.</Note>}
      block={{
        machine: machines.length === 1 ? '1 machine' : `${machines.length} machines`,
        scale: `1 : ${Math.round(1 / (scale * millimetresAPixel))}`,
        units: 'mm',
        caution: energy ?? 'A turning rotor holds hundreds of joules. Keep people away from its plane.',
      }}
    >
      {machines.length === 0
        ? (
            <Empty title="No machine on the board yet" next={<><Button kind="ink" onClick={() => setWay('questions')}>Answer a few questions</Button><Button onClick={() => setWay('file')}>Take a file</Button></>}>
              <p>Engine speed, two meshes and two rotors give every speed. The rest can be added later.</p>
            </Empty>
          )
        : <div className="machine-rows">{machines.map((view) => <MachineRow key={view.id} view={view} outline={outlines.get(view.id)} scale={scale} />)}</div>}
      {way && <NewMachine way={way} onClose={() => setWay(undefined)} />}
    </Sheet>
  );
}

/** How many machines are in which state, in the order of what wants attention. */
function Answer({ machines }: { readonly machines: readonly MachineView[] }): ReactNode {
  const words: readonly (readonly [MarkState, string])[] = [['exceeded', 'with errors'], ['undone', 'with undone work'], ['open', 'not closed'], ['curing', 'curing'], ['signed', 'all signed'], ['unknown', 'not described']];
  const marks = machines.map((view) => stateOf(view).mark);
  return words.map(([mark, word]) => {
    const count = marks.filter((each) => each === mark).length;
    return count > 0 && <StateWord key={mark} state={mark}>{count} {word}</StateWord>;
  });
}

/** The machine whose rotor holds most energy leads the caution. */
function mostEnergy(machines: readonly MachineView[]): string | undefined {
  const known = machines.flatMap(({ title, machine }) => {
    const main = machine && rotorsOf(machine).main;
    const figure = machine && main ? figures(machine).get(`stored-energy ${main.id}`) : undefined;
    return figure?.value === undefined ? [] : [{ title, value: figure.value }];
  });
  if (known.length === 0) return undefined;
  const most = known.reduce((a, b) => (b.value > a.value ? b : a));
  return `${most.title}’s rotor holds ${showQuantity(most.value, 'J', { decimals: 0 })} in flight. Keep people out of its plane. Law and field rules come first.`;
}
