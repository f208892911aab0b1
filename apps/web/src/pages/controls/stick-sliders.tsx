import { useId, type ReactNode } from 'react';
import { Button } from '../../sheet/index.ts';

export interface Stick {
  readonly key: string;
  readonly title: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly shown: string;
  readonly onChange: (value: number) => void;
}

/** The sticks as native sliders: arrows move them as everywhere. */
export function StickSliders({ sticks, onCentre }: { readonly sticks: readonly Stick[]; readonly onCentre: () => void }): ReactNode {
  const id = useId();
  return (
    <div className="sticks">
      {sticks.map(({ key, title, value, min, max, step, shown, onChange }) => (
        <div key={key} className="stick">
          <label htmlFor={`${id}${key}`}>{title}</label>
          <input id={`${id}${key}`} type="range" {...{ min, max, step, value }} aria-valuetext={shown} onChange={(event) => onChange(Number(event.target.value))} />
          <output htmlFor={`${id}${key}`}>{shown}</output>
        </div>
      ))}
      <Button onClick={onCentre}>Centre the sticks</Button>
    </div>
  );
}
