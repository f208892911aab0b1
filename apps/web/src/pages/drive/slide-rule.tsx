import type { Window } from '@rotorwright/machine';
import { fromUnit, inUnit, showNumber } from '@rotorwright/units';
import { useId, useMemo, useState, type KeyboardEvent, type PointerEvent, type ReactNode } from 'react';
import { Button } from '../../sheet/index.ts';
import { LiveText } from './live-text.tsx';
import { useLive, type Live } from './live.ts';
import { ticksOf } from './rule-scale.ts';
import './slide-rule.css';

export interface RuleScale {
  readonly title: string;
  /** Under the title: "rpm, wanted hatched". */
  readonly note: string;
  /** Value in `unit` for each rad/s of the source. */
  readonly factor: number;
  readonly unit: string;
  readonly decimals: number;
  /** Hatched, in the scale's unit. */
  readonly band?: Window;
  /** Opens the working. */
  readonly figure: string;
}

export interface SlideRuleProps {
  readonly scales: readonly RuleScale[];
  /** Speed of the source, rad/s. */
  readonly speed: Live;
  /** rad/s */
  readonly min: number;
  readonly max: number;
  readonly width: number;
  /** Names and values stand below the scales. */
  readonly compact: boolean;
  /** "Engine speed". */
  readonly label: string;
  /** What is kept in the file, rad/s, to go back to. */
  readonly filed?: number;
  /** A hand has let go. */
  readonly onSettled: () => void;
  /** A hand holds the hairline. */
  readonly onHeld: (held: boolean) => void;
  readonly onOpen: (figure: string) => void;
}

const row = 42;
/** Steps of the arrow and page keys, rpm. */
const arrow = 10;
const page = 250;

/** Scales of one speed under one hairline. */
export function SlideRule({ scales, speed, min, max, width, compact, label, filed, onSettled, onHeld, onOpen }: SlideRuleProps): ReactNode {
  const id = useId().replaceAll(':', '');
  const height = scales.length * row;
  const place = (value: number): number => ((Math.min(Math.max(value, min), max) - min) / (max - min)) * width;
  const hair = useLive<SVGGElement>(speed, (element, value) => element.setAttribute('transform', `translate(${place(value).toFixed(2)} 0)`));
  const slider = useLive<HTMLDivElement>(speed, (element, value) => {
    element.setAttribute('aria-valuenow', inUnit(value, 'rpm').toFixed(0));
    element.setAttribute('aria-valuetext', `${showNumber(inUnit(value, 'rpm'), { decimals: 0 })} rpm`);
  });
  const thumb = useLive<HTMLDivElement>(speed, (element, value) => {
    element.style.left = `${Math.min(Math.max(place(value), 46), width - 46)}px`;
  });
  const change = (rpm: number): void => {
    speed.set(Math.min(Math.max(fromUnit(rpm, 'rpm'), min), max));
  };
  const step = (by: number): void => {
    change(Math.round(inUnit(speed.get(), 'rpm')) + by);
    onSettled();
  };
  const press = (event: KeyboardEvent): void => {
    const by = { ArrowRight: arrow, ArrowUp: arrow, ArrowLeft: -arrow, ArrowDown: -arrow, PageUp: page, PageDown: -page }[event.key];
    if (by !== undefined) step(by);
    else if (event.key === 'Home' || event.key === 'End') {
      speed.set(event.key === 'Home' ? min : max);
      onSettled();
    } else return;
    event.preventDefault();
  };
  const drag = (event: PointerEvent<HTMLDivElement>): void => {
    if (event.button !== 0) return;
    const target = event.currentTarget;
    const { left } = target.getBoundingClientRect();
    const follow = (x: number): void => change(Math.round(inUnit(min + ((x - left) / width) * (max - min), 'rpm')));
    target.setPointerCapture(event.pointerId);
    target.focus({ preventScroll: true });
    follow(event.clientX);
    onHeld(true);
    const move = (next: globalThis.PointerEvent): void => follow(next.clientX);
    const end = (): void => {
      target.removeEventListener('pointermove', move);
      target.removeEventListener('pointerup', end);
      target.removeEventListener('pointercancel', end);
      onHeld(false);
      onSettled();
    };
    target.addEventListener('pointermove', move);
    target.addEventListener('pointerup', end);
    target.addEventListener('pointercancel', end);
  };
  return (
    <div className="rule">
      <div className="rule-body" {...(compact ? {} : { style: { gridTemplateColumns: `126px ${width}px minmax(84px, 1fr)` } })}>
        {!compact && <ul className="rule-names">{scales.map((scale) => <li key={scale.title}><b>{scale.title}</b><span className="soft">{scale.note}</span></li>)}</ul>}
        <div className="rule-slide" ref={slider} role="slider" tabIndex={0} aria-label={label} aria-valuemin={Math.ceil(inUnit(min, 'rpm'))} aria-valuemax={Math.floor(inUnit(max, 'rpm'))} onKeyDown={press} onPointerDown={drag}>
          <div className="rule-thumb" ref={thumb} aria-hidden="true">◂ <LiveText live={speed} text={(value) => showNumber(inUnit(value, 'rpm'), { decimals: 0 })} /> ▸</div>
          <svg width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
            <defs><pattern id={`${id}-band`} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line x1="0" y1="0" x2="0" y2="7" /></pattern></defs>
            <rect className="rule-paper" width={width} height={height} />
            {scales.map((scale, index) => <ScaleRow key={scale.title} scale={scale} y={index * row} min={min} max={max} width={width} hatch={`url(#${id}-band)`} />)}
            <rect className="rule-frame" x="1" y="1" width={Math.max(0, width - 2)} height={height - 2} />
            <g ref={hair}><line className="hairline" x1="0" y1="-6" x2="0" y2={height + 6} /></g>
          </svg>
        </div>
        <ul className={compact ? 'rule-values compact' : 'rule-values'}>
          {scales.map((scale) => (
            <li key={scale.title}>{compact && <b>{scale.title}</b>}<button type="button" className="figure-link" onClick={() => onOpen(scale.figure)}><LiveText live={speed} text={(value) => showNumber(value * scale.factor, { decimals: scale.decimals })} /><span className="unit"> {scale.unit}</span></button></li>
          ))}
        </ul>
      </div>
      <div className="rule-set">
        <SpeedField speed={speed} min={min} max={max} label={label} onSettled={onSettled} />
        <Button aria-label={`${label}: ${arrow} rpm less`} onClick={() => step(-arrow)}>−</Button>
        <Button aria-label={`${label}: ${arrow} rpm more`} onClick={() => step(arrow)}>+</Button>
        {filed !== undefined && <Button onClick={() => { speed.set(filed); onSettled(); }}>As in the file</Button>}
      </div>
    </div>
  );
}

function ScaleRow({ scale, y, min, max, width, hatch }: { readonly scale: RuleScale; readonly y: number; readonly min: number; readonly max: number; readonly width: number; readonly hatch: string }): ReactNode {
  const [from, to] = [min * scale.factor, max * scale.factor];
  const ticks = useMemo(() => ticksOf(from, to, width, 84), [from, to, width]);
  const at = (value: number): number => ((value - from) / (to - from)) * width;
  const { band } = scale;
  const left = band ? Math.max(0, at(band.min ?? from)) : 0;
  const right = band ? Math.min(width, at(band.max ?? to)) : 0;
  return (
    <g transform={`translate(0 ${y})`}>
      {band && right > left && (
        <>
          <rect x={left} y="0" width={right - left} height={row} fill={hatch} />
          {band.min !== undefined && left > 0 && <line className="band" x1={left} y1="0" x2={left} y2={row} />}
          {band.max !== undefined && right < width && <line className="band" x1={right} y1="0" x2={right} y2={row} />}
        </>
      )}
      {y > 0 && <line x1="0" y1="0" x2={width} y2="0" />}
      {ticks.map(({ value, at: x, size }) => (
        <g key={value}>
          <line x1={x} y1={row} x2={x} y2={row - { small: 7, middle: 11, labelled: 16 }[size]} />
          {size === 'labelled' && x > 24 && x < width - 24 && <text x={x} y="17" textAnchor="middle">{showNumber(value, { significant: 6 })}</text>}
        </g>
      ))}
    </g>
  );
}

/** The same speed as a number to type. */
function SpeedField({ speed, min, max, label, onSettled }: Pick<SlideRuleProps, 'speed' | 'min' | 'max' | 'label' | 'onSettled'>): ReactNode {
  const id = useId();
  const [typed, setTyped] = useState<string>();
  const ref = useLive<HTMLInputElement>(speed, (element, value) => {
    if (typed === undefined) element.value = inUnit(value, 'rpm').toFixed(0);
  });
  const rpm = Number(typed);
  const [least, most] = [Math.ceil(inUnit(min, 'rpm')), Math.floor(inUnit(max, 'rpm'))];
  const wrong = typed !== undefined && !(rpm >= least && rpm <= most);
  const take = (): void => {
    if (typed !== undefined && !wrong) {
      speed.set(fromUnit(rpm, 'rpm'));
      onSettled();
    }
    setTyped(undefined);
  };
  return (
    <span className="rule-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id} ref={ref} type="text" inputMode="numeric" size={7} aria-invalid={wrong} aria-describedby={wrong ? `${id}-wrong` : undefined}
        onChange={(event) => setTyped(event.target.value.replaceAll(',', ''))} onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
        }}
      />
      <span className="soft">rpm</span>
      {wrong && <span id={`${id}-wrong`} className="rule-wrong" role="alert">{least.toLocaleString('en')} to {most.toLocaleString('en')}</span>}
    </span>
  );
}
