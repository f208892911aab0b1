import { useId, type ReactNode } from 'react';
import { wanted, type InputProblem, type InputSpec } from '@rotorwright/calculations';
import { Formula } from '../../sheet/index.ts';
import { fieldFor, nameOf, rowsClash, rowsOf, type FieldPath, type FieldRecord, type FieldValue } from './form.ts';

export interface InputFieldProps {
  readonly spec: InputSpec;
  readonly path: FieldPath;
  readonly value: FieldValue | undefined;
  readonly problems: ReadonlyMap<string, readonly InputProblem[]>;
  readonly onChange: (path: FieldPath, value: FieldValue) => void;
}

/** One input of a calculation, whatever its kind, with what is wrong with it in place. */
export function InputField(props: InputFieldProps): ReactNode {
  switch (props.spec.kind) {
    case 'number': return <NumberField {...props} spec={props.spec} />;
    case 'choice': return <ChoiceField {...props} spec={props.spec} />;
    case 'text': return <TextField {...props} spec={props.spec} />;
    case 'map': return <MapField {...props} spec={props.spec} />;
    case 'list': return <ListField {...props} spec={props.spec} />;
    case 'record': return <RecordField {...props} spec={props.spec} />;
  }
}

type Of<Kind extends InputSpec['kind']> = Omit<InputFieldProps, 'spec'> & { readonly spec: Extract<InputSpec, { kind: Kind }> };

function Problems({ id, problems }: { readonly id: string; readonly problems: readonly InputProblem[] | undefined }): ReactNode {
  if (!problems) return undefined;
  return <div id={id} className="field-problem">{problems.map((problem) => <p key={`${problem.given} ${problem.wanted}`}><b>{problem.given === 'nothing' ? 'Missing.' : `Not ${problem.given}.`}</b> Wanted: {problem.wanted}.</p>)}</div>;
}

function NumberField({ spec, path, value, problems, onChange }: Of<'number'>): ReactNode {
  const id = useId();
  const own = problems.get(nameOf(path));
  const unit = spec.unit === '-' ? (spec.whole ? 'whole number' : 'number') : `with its unit, such as ${spec.shown}; a bare number is ${spec.unit}`;
  const usual = spec.default !== undefined || spec.optional ? ', may stay empty' : '';
  return (
    <div className="field">
      <label htmlFor={id}>{spec.title} <Formula tex={spec.symbol} /></label>
      <input
        id={id} type="text" inputMode="text" autoComplete="off" spellCheck={false} value={typeof value === 'string' ? value : ''}
        aria-invalid={own ? true : undefined} aria-describedby={`${id}-hint${own ? ` ${id}-problem` : ''}`}
        onChange={(event) => onChange(path, event.target.value)}
      />
      <small id={`${id}-hint`}>{unit}{usual}</small>
      <Problems id={`${id}-problem`} problems={own} />
    </div>
  );
}

function ChoiceField({ spec, path, value, problems, onChange }: Of<'choice'>): ReactNode {
  const id = useId();
  const own = problems.get(nameOf(path));
  const known = typeof value === 'string' && (value === '' || spec.choices.includes(value));
  return (
    <div className="field">
      <label htmlFor={id}>{spec.title}</label>
      <select id={id} value={typeof value === 'string' ? value : ''} aria-invalid={own ? true : undefined} aria-describedby={own ? `${id}-problem` : undefined} onChange={(event) => onChange(path, event.target.value)}>
        {(spec.optional || value === '') && <option value="">not given</option>}
        {!known && typeof value === 'string' && <option value={value}>{value}</option>}
        {spec.choices.map((choice) => <option key={choice}>{choice}</option>)}
      </select>
      <Problems id={`${id}-problem`} problems={own} />
    </div>
  );
}

function TextField({ spec, path, value, problems, onChange }: Of<'text'>): ReactNode {
  const id = useId();
  const own = problems.get(nameOf(path));
  return (
    <div className="field">
      <label htmlFor={id}>{spec.title}</label>
      <input
        id={id} type="text" autoComplete="off" spellCheck={false} value={typeof value === 'string' ? value : ''}
        aria-invalid={own ? true : undefined} aria-describedby={own ? `${id}-problem` : undefined} onChange={(event) => onChange(path, event.target.value)}
      />
      <Problems id={`${id}-problem`} problems={own} />
    </div>
  );
}

function MapField({ spec, path, value, problems, onChange }: Of<'map'>): ReactNode {
  const rows = rowsOf(value);
  const clash = rowsClash(rows);
  const own = problems.get(nameOf(path));
  const id = useId();
  const store = (changed: readonly { readonly name: string; readonly value: FieldValue | undefined }[]): void => onChange(path, changed.map((row) => ({ name: row.name, value: row.value ?? '' })));
  return (
    <fieldset className="field-list" aria-describedby={own ? `${id}-problem` : undefined}>
      <legend>{spec.title}</legend>
      <ol>
        {rows.map((row, index) => (
          // A name is still being typed: rows are told apart by their place.
          <li key={index}>
            <div className="field">
              <label htmlFor={`${id}-${index}`}>Name</label>
              <input id={`${id}-${index}`} type="text" autoComplete="off" spellCheck={false} value={row.name} onChange={(event) => store(rows.map((one, at) => (at === index ? { ...one, name: event.target.value } : one)))} />
            </div>
            <InputField spec={spec.of} path={[...path, { row: index, name: row.name }]} value={row.value} problems={problems} onChange={onChange} />
            <button type="button" aria-label={`Remove ${row.name || `row ${index + 1}`} of ${spec.title}`} onClick={() => store(rows.filter((_, at) => at !== index))}>Remove</button>
          </li>
        ))}
      </ol>
      <button type="button" onClick={() => store([...rows, { name: '', value: fieldFor(spec.of) }])}>Add a name</button>
      {clash ? <div className="field-problem" id={`${id}-problem`}><p>Two rows have the same name, or one has none. Give each its own.</p></div> : <Problems id={`${id}-problem`} problems={own} />}
      <small className="unseen">{wanted(spec)}</small>
    </fieldset>
  );
}

function ListField({ spec, path, value, problems, onChange }: Of<'list'>): ReactNode {
  const rows = Array.isArray(value) ? (value as readonly FieldValue[]) : [];
  const own = problems.get(nameOf(path));
  const id = useId();
  return (
    <fieldset className="field-list" aria-describedby={own ? `${id}-problem` : undefined}>
      <legend>{spec.title}</legend>
      <ol>
        {rows.map((row, index) => (
          // Rows have no name but their place.
          <li key={index}>
            <InputField spec={spec.of} path={[...path, index]} value={row} problems={problems} onChange={onChange} />
            <button type="button" aria-label={`Remove row ${index + 1} of ${spec.title}`} onClick={() => onChange(path, rows.filter((_, at) => at !== index))}>Remove</button>
          </li>
        ))}
      </ol>
      <button type="button" onClick={() => onChange(path, [...rows, fieldFor(spec.of)])}>Add a row</button>
      <Problems id={`${id}-problem`} problems={own} />
      <small className="unseen">{wanted(spec)}</small>
    </fieldset>
  );
}

function RecordField({ spec, path, value, problems, onChange }: Of<'record'>): ReactNode {
  const fields = typeof value === 'object' && !Array.isArray(value) ? (value as FieldRecord) : {};
  const step = path.at(-1);
  const id = useId();
  const own = problems.get(nameOf(path));
  return (
    <fieldset className="field-record">
      <legend>{typeof step === 'number' ? `${spec.title} ${step + 1}` : typeof step === 'object' ? `${spec.title} ${step.name}` : spec.title}</legend>
      {Object.entries(spec.fields).map(([name, one]) => <InputField key={name} spec={one} path={[...path, name]} value={fields[name]} problems={problems} onChange={onChange} />)}
      <Problems id={`${id}-problem`} problems={own} />
    </fieldset>
  );
}
