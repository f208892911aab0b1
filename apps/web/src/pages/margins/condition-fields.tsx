import type { Conditions } from '@rotorwright/figures';
import { inUnit, showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import { Button } from '../../sheet/index.ts';

/** What a hand may move on this sheet. */
export type Moved = Pick<Conditions, 'sourceSpeed' | 'altitude' | 'temperatureOffset'>;

interface Field {
  readonly key: keyof Moved;
  readonly title: string;
  readonly filed: number;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly words: (value: number) => string;
}

const rpm = Math.PI / 30;

const air: readonly Field[] = [
  { key: 'altitude', title: 'Altitude', filed: 0, min: -400, max: 4000, step: 50, words: (value) => showQuantity(value, 'm', { significant: 4 }) },
  { key: 'temperatureOffset', title: 'Warmer', filed: 0, min: -40, max: 40, step: 1, words: (value) => `${value < 0 ? '−' : value > 0 ? '+' : ''}${Math.abs(value)} K` },
];

export interface ConditionFieldsProps {
  readonly kind: 'engine' | 'motor' | undefined;
  /** Speed of engine or motor in the file, rad/s. */
  readonly filed: number | undefined;
  readonly conditions: Moved;
  readonly onChange: (conditions: Moved) => void;
}

/** Speed of engine or motor, and the air, by hand: everything follows while one is dragged. */
export function ConditionFields({ kind, filed, conditions, onChange }: ConditionFieldsProps): ReactNode {
  const speed: readonly Field[] = filed === undefined ? [] : [{ key: 'sourceSpeed', title: kind === 'motor' ? 'Motor' : 'Engine', filed, min: filed * 0.8, max: filed * 1.2, step: 10 * rpm, words: (value) => `${Math.round(inUnit(value, 'rpm')).toLocaleString('en-GB')} rpm` }];
  return (
    <div className="margin-conditions" role="group" aria-label="Conditions">
      {[...speed, ...air].map(({ key, title, filed: usual, min, max, step, words }) => {
        const now = conditions[key] ?? usual;
        return (
          <label key={key} className="margin-choice"><span>{title}</span>
            <input type="range" min={min} max={max} step={step} value={now} aria-valuetext={words(now)} onChange={({ target }) => onChange({ ...conditions, [key]: Number(target.value) })} />
            <output>{words(now)}</output>
          </label>
        );
      })}
      {Object.keys(conditions).length > 0 && <Button onClick={() => onChange({})}>As in the file</Button>}
    </div>
  );
}
