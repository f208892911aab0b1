import { useId, useState, type ReactNode } from 'react';
import { Button } from '../../sheet/index.ts';
import { shownOf, withSetting, type Setting, type Settings } from './settings.ts';

export interface SlidersProps {
  readonly known: readonly Setting[];
  readonly settings: Settings;
  readonly onMove: (settings: Settings) => void;
  /** The hand has let go. */
  readonly onSettled: () => void;
  /** What the air comes to: "at 1,500 m, 24 °C". */
  readonly air: string;
}

/** What it is flown with and in: a slider and a field for each. */
export function Sliders({ known, settings, onMove, onSettled, air }: SlidersProps): ReactNode {
  const moved = Object.keys(settings).length > 0;
  return (
    <section className="area rotor-sliders" aria-label="Conditions">
      <div className="area-head"><h2>Conditions</h2><Button disabled={!moved} onClick={() => { onMove({}); onSettled(); }}>As in the file</Button></div>
      <div className="rotor-slider-row">
        {known.map((setting) => <Slider key={`${setting.key} ${setting.filed}`} setting={setting} value={shownOf(setting, settings)} onValue={(value) => onMove(withSetting(settings, setting, value))} onSettled={onSettled} />)}
      </div>
      <p className="small soft">{air}</p>
    </section>
  );
}

interface SliderProps {
  readonly setting: Setting;
  readonly value: number;
  readonly onValue: (value: number) => void;
  readonly onSettled: () => void;
}

function Slider({ setting: { title, unit, filed, min, max, step }, value, onValue, onSettled }: SliderProps): ReactNode {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const read = typed === undefined ? value : numberIn(typed);
  const wrong = !(read >= min && read <= max);
  return (
    <div className="rotor-slider">
      <label htmlFor={id}>{title}, {unit}</label>
      <input
        id={id} type="text" inputMode="decimal" value={typed ?? String(value)} aria-invalid={wrong} {...(wrong ? { 'aria-describedby': `${id}-wrong` } : {})}
        onChange={({ target }) => {
          setTyped(target.value);
          const number = numberIn(target.value);
          if (number >= min && number <= max) onValue(number);
        }}
        onBlur={() => { setTyped(undefined); onSettled(); }}
      />
      <input type="range" aria-label={`${title}, ${unit}: slider`} min={min} max={max} step={step} value={value} list={`${id}-filed`} onChange={({ target }) => { setTyped(undefined); onValue(Number(target.value)); }} onPointerUp={onSettled} onKeyUp={onSettled} />
      <datalist id={`${id}-filed`}><option value={filed} /></datalist>
      {wrong && <span id={`${id}-wrong`} className="rotor-wrong">{min} to {max}</span>}
    </div>
  );
}

/** Not a number where it is none. */
const numberIn = (text: string): number => (/^[-−]?\d+([.]\d+)?$/.test(text.trim()) ? Number(text.trim().replace('−', '-')) : Number.NaN);
