import { formatFinding, newMachine, readMachine } from '@rotorwright/machine';
import { fromUnit, isProblem, readQuantity } from '@rotorwright/units';
import { useRef, useState, type DragEvent, type ReactNode } from 'react';
import { useLocation } from 'wouter';
import { useBoard } from '../../data/index.ts';
import { Button, Drawer, machineAt, Segmented } from '../../sheet/index.ts';

/** Two ways to a new machine: a few questions, or a file that exists. */
export function NewMachine({ way, onClose }: { readonly way: 'questions' | 'file'; readonly onClose: () => void }): ReactNode {
  return (
    <Drawer title={way === 'questions' ? 'A new machine from a few questions' : 'A new machine from a file'} onClose={onClose} wide={way === 'file'}>
      {way === 'questions' ? <Questions /> : <FromFile />}
    </Drawer>
  );
}

/** Puts a text on the board and opens its Drive sheet. */
function useCreate(): { readonly create: (text: string) => Promise<void>; readonly trouble: string | undefined } {
  const board = useBoard();
  const [, go] = useLocation();
  const [trouble, setTrouble] = useState<string>();
  const create = async (text: string): Promise<void> => {
    try {
      const made = await board.create(text);
      go(machineAt(made.id, 'drive'));
    } catch (error) {
      const details = error instanceof Error && 'details' in error && Array.isArray(error.details) ? ` ${error.details.join(' ')}` : '';
      setTrouble(`${error instanceof Error ? error.message : String(error)}${details}`);
    }
  };
  return { create, trouble };
}

interface Question {
  readonly key: string;
  readonly label: string;
  readonly unit?: 'rpm' | 'mm';
  readonly hint: string;
}

const first: readonly Question[] = [
  { key: 'speed', label: 'Governed speed of engine or motor', unit: 'rpm', hint: '14000' },
  { key: 'pinion', label: 'Teeth of the pinion', hint: '15' },
  { key: 'gear', label: 'Teeth of the main gear', hint: '120' },
  { key: 'blades', label: 'Main rotor blades', hint: '2' },
  { key: 'diameter', label: 'Main rotor diameter', unit: 'mm', hint: '1500' },
];

const tail: readonly Question[] = [
  { key: 'tailDriver', label: 'Tail drive, teeth on the mast', hint: '45' },
  { key: 'tailDriven', label: 'Tail drive, teeth at the tail', hint: '10' },
  { key: 'tailBlades', label: 'Tail rotor blades', hint: '2' },
  { key: 'tailDiameter', label: 'Tail rotor diameter', unit: 'mm', hint: '260' },
];

function Questions(): ReactNode {
  const { create, trouble } = useCreate();
  const [name, setName] = useState('');
  const [power, setPower] = useState<'engine' | 'motor'>('engine');
  const [tailKind, setTailKind] = useState<'bevel' | 'belt' | 'none'>('bevel');
  const [answers, setAnswers] = useState<Readonly<Record<string, string>>>({});
  const [asked, setAsked] = useState(false);
  const questions = tailKind === 'none' ? first : [...first, ...tail];
  const read = new Map(questions.map((question) => [question.key, readAnswer(question, answers[question.key] ?? '')]));
  const wrongName = name.trim() === '' ? 'Give it a name.' : undefined;
  const complete = wrongName === undefined && [...read.values()].every((value) => typeof value === 'number');

  const submit = async (): Promise<void> => {
    setAsked(true);
    if (!complete) return;
    const value = (key: string): number => read.get(key) as number;
    await create(newMachine({
      name: name.trim(), power, speed: value('speed'), turns: 'counter-clockwise from above', pinionTeeth: value('pinion'), mainGearTeeth: value('gear'),
      mainRotor: { blades: value('blades'), diameter: value('diameter') },
      ...(tailKind === 'none' ? {} : { tail: { kind: tailKind, driverTeeth: value('tailDriver'), drivenTeeth: value('tailDriven'), rotor: { blades: value('tailBlades'), diameter: value('tailDiameter') } } }),
    }));
  };

  return (
    <form
      className="questions"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        void submit();
      }}
    >
      <Field id="name" label="Name" problem={asked ? wrongName : undefined}>
        {(field) => <input {...field} type="text" autoComplete="off" value={name} onChange={(event) => setName(event.target.value)} />}
      </Field>
      <Segmented label="Power" options={[{ value: 'engine', title: 'Engine' }, { value: 'motor', title: 'Motor' }]} value={power} onChange={setPower} />
      {first.map((question) => <Answer key={question.key} question={question} value={answers[question.key] ?? ''} problem={asked ? problemOf(read.get(question.key)) : undefined} onChange={(value) => setAnswers({ ...answers, [question.key]: value })} />)}
      <Segmented label="Tail drive" options={[{ value: 'bevel', title: 'Gears and tube' }, { value: 'belt', title: 'Belt' }, { value: 'none', title: 'Later' }]} value={tailKind} onChange={setTailKind} />
      {tailKind !== 'none' && tail.map((question) => <Answer key={question.key} question={question} value={answers[question.key] ?? ''} problem={asked ? problemOf(read.get(question.key)) : undefined} onChange={(value) => setAnswers({ ...answers, [question.key]: value })} />)}
      {trouble && <p className="problem" role="alert">{trouble}</p>}
      <p className="soft small">The file starts with an engine that turns counter-clockwise seen from above. Change it there if yours does not.</p>
      <Button type="submit" kind="ink">Make the machine</Button>
    </form>
  );
}

/** SI value of an answer, or what is wrong with it. A bare number takes the unit that is asked for. */
function readAnswer({ unit }: Question, text: string): number | { readonly problem: string } {
  const given = text.trim();
  if (given === '') return { problem: unit ? `Give a number of ${unit}.` : 'Give a whole number.' };
  if (unit === undefined) {
    const count = Number(given);
    return Number.isInteger(count) && count >= 1 ? count : { problem: `“${given}” is no whole number above zero.` };
  }
  const bare = Number(given);
  if (Number.isFinite(bare)) return bare > 0 ? fromUnit(bare, unit) : { problem: `“${given}” must be above zero.` };
  const quantity = readQuantity(given);
  if (isProblem(quantity)) return { problem: `“${given}” is not understood. Write a number, such as 1500, or with its unit, ${unit}.` };
  const fits = unit === 'rpm' ? quantity.dimension[5] === 1 && quantity.dimension[2] === -1 : quantity.dimension[0] === 1 && quantity.dimension[2] === 0;
  return fits && quantity.value > 0 ? quantity.value : { problem: `“${given}” is no ${unit === 'rpm' ? 'speed of rotation' : 'length'} above zero.` };
}

const problemOf = (read: ReturnType<typeof readAnswer> | undefined): string | undefined => (typeof read === 'object' ? read.problem : undefined);

function Answer({ question, value, problem, onChange }: { readonly question: Question; readonly value: string; readonly problem: string | undefined; readonly onChange: (value: string) => void }): ReactNode {
  return (
    <Field id={question.key} label={question.unit ? `${question.label}, ${question.unit}` : question.label} problem={problem}>
      {(field) => <input {...field} type="text" inputMode="decimal" autoComplete="off" placeholder={question.hint} value={value} onChange={(event) => onChange(event.target.value)} />}
    </Field>
  );
}

interface FieldAttributes {
  readonly id: string;
  readonly 'aria-invalid': boolean;
  readonly 'aria-describedby'?: string;
}

function Field({ id, label, problem, children }: { readonly id: string; readonly label: string; readonly problem: string | undefined; readonly children: (field: FieldAttributes) => ReactNode }): ReactNode {
  const field = { id: `new-${id}`, 'aria-invalid': problem !== undefined, ...(problem === undefined ? {} : { 'aria-describedby': `new-${id}-problem` }) };
  return (
    <div className="question">
      <label htmlFor={field.id}>{label}</label>
      {children(field)}
      {problem && <p id={`${field.id}-problem`} className="problem">{problem}</p>}
    </div>
  );
}

/** As many findings as a reader takes in at once; the File sheet shows them all. */
const mostShown = 12;

function FromFile(): ReactNode {
  const { create, trouble } = useCreate();
  const [text, setText] = useState('');
  const [name, setName] = useState('machine.yaml');
  const [over, setOver] = useState(false);
  const picker = useRef<HTMLInputElement>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    setName(file.name);
    setText(file.size > 2_000_000 ? '' : await file.text());
    if (file.size > 2_000_000) setName(`${file.name} is larger than 2 MB; a machine file is text of a few hundred lines`);
  };
  const drop = (event: DragEvent): void => {
    event.preventDefault();
    setOver(false);
    void take(event.dataTransfer.files[0]);
  };
  const read = text.trim() === '' ? undefined : readMachine(text, { file: name });
  return (
    <div className={over ? 'from-file over' : 'from-file'} onDragOver={(event) => { event.preventDefault(); setOver(true); }} onDragLeave={() => setOver(false)} onDrop={drop}>
      <p>Drop a machine file here, choose one, or paste its text.</p>
      <div className="from-file-acts">
        <Button onClick={() => picker.current?.click()}>Choose a file</Button>
        <span className="soft small">{name}</span>
        <input ref={picker} type="file" accept=".yaml,.yml,text/plain" hidden onChange={(event) => void take(event.target.files?.[0])} />
      </div>
      <label htmlFor="new-text">Text of the file</label>
      <textarea id="new-text" rows={14} spellCheck={false} value={text} onChange={(event) => setText(event.target.value)} />
      {read && (
        <div role="status">
          <p>{read.findings.length === 0 ? 'Reads without a finding.' : `${read.findings.length} findings:`}</p>
          <ul className="from-file-findings">{read.findings.slice(0, mostShown).map((finding) => <li key={`${finding.code} ${finding.path} ${finding.place?.line}`} className={finding.severity}>{formatFinding(finding, name)}</li>)}</ul>
          {read.findings.length > mostShown && <p className="soft small">and {read.findings.length - mostShown} more; the File sheet shows them all.</p>}
        </div>
      )}
      {trouble && <p className="problem" role="alert">{trouble}</p>}
      <Button kind="ink" disabled={!read?.machine} onClick={() => void create(text)}>Put it on the board</Button>
    </div>
  );
}
