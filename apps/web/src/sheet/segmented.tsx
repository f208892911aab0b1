import { useId, type ReactNode } from 'react';
import './segmented.css';

export interface SegmentedProps<Value extends string> {
  /** What is chosen, for readers. */
  readonly label: string;
  readonly options: readonly { readonly value: Value; readonly title: string; readonly disabled?: boolean }[];
  readonly value: Value;
  readonly onChange: (value: Value) => void;
}

/** One of a few, side by side: native radio buttons, so arrows and readers work as everywhere. */
export function Segmented<Value extends string>({ label, options, value, onChange }: SegmentedProps<Value>): ReactNode {
  const name = useId();
  return (
    <fieldset className="segmented">
      <legend className="unseen">{label}</legend>
      {options.map((option) => (
        <label key={option.value} className={option.disabled ? 'disabled' : undefined}>
          <input type="radio" name={name} value={option.value} checked={option.value === value} disabled={option.disabled} onChange={() => onChange(option.value)} />
          <span>{option.title}</span>
        </label>
      ))}
    </fieldset>
  );
}
