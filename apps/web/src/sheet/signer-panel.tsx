import { useId, useState, type ReactNode } from 'react';
import type { Signers } from '../data/signers.ts';
import { Button } from './button.tsx';
import './panel.css';

export interface SignerPanelProps {
  readonly signers: Signers;
  readonly onChoose: (name: string) => void;
}

/** Who signs: one button for each name known on this device; typing only for a new one. */
export function SignerPanel({ signers, onChoose }: SignerPanelProps): ReactNode {
  const [name, setName] = useState('');
  const id = useId();
  return (
    <section className="panel" aria-label="Who signs?">
      <header><h2>Who signs?</h2></header>
      {signers.names.length > 0 && <div className="choices">{signers.names.map((one) => <Button key={one} aria-pressed={one === signers.now} onClick={() => onChoose(one)}>{one}</Button>)}</div>}
      <form onSubmit={(event) => { event.preventDefault(); if (name.trim() !== '') onChoose(name); }}>
        <label htmlFor={id}>{signers.names.length > 0 ? 'Somebody else' : 'Your name, once for this device'}</label>
        <input id={id} value={name} maxLength={80} autoComplete="name" onChange={(event) => setName(event.target.value)} />
        <Button type="submit" disabled={name.trim() === ''}>Sign as this</Button>
      </form>
    </section>
  );
}
