import type { ReactNode } from 'react';
import { StateMark } from '../../sheet/index.ts';
import { timeLeft } from './cure-clock.ts';
import type { Seal } from './seal.ts';

export interface SignBarProps {
  readonly seal: Seal;
  readonly number: number;
  /** Why it cannot be signed now, in words. */
  readonly hindrance: string | undefined;
  /** Why the last try was not recorded. */
  readonly trouble: string | undefined;
  readonly busy: boolean;
  readonly now: number;
  /** Whole length of the cure, s. */
  readonly cure: number;
  readonly onSign: () => void;
  readonly onNext: (() => void) | undefined;
}

/** Always at the same place: what keeps from signing, then the button, or the seal that the book has acknowledged. */
export function SignBar({ seal, number, hindrance, trouble, busy, now, cure, onSign, onNext }: SignBarProps): ReactNode {
  const done = (seal.state === 'signed' || seal.state === 'curing') && trouble === undefined;
  return (
    <div className="bench-sign">
      {trouble && <p className="bench-trouble" role="alert">{trouble}</p>}
      <div className="bench-sign-row">
        {done ? <Sealed seal={seal} now={now} cure={cure} /> : (
          <button type="button" className="bench-sign-button" disabled={busy || hindrance !== undefined} onClick={onSign}>
            <StateMark state="signed" size={30} />
            <span>{busy ? 'Recording …' : trouble ? `Try again: sign step ${number}` : `Sign step ${number}`}{hindrance && <small>{hindrance}</small>}</span>
          </button>
        )}
        <button type="button" className={done ? 'bench-next ink' : 'bench-next'} aria-label="Next step" disabled={!onNext} onClick={onNext}>›</button>
      </div>
    </div>
  );
}

function Sealed({ seal, now, cure }: Pick<SignBarProps, 'seal' | 'now' | 'cure'>): ReactNode {
  if (seal.waiting) return <p className="bench-sealed waiting" role="status"><StateMark state="open" size={30} /><span><b>Kept on this device, not in the book yet.</b> Sent when the network is back.</span></p>;
  const left = seal.until === undefined ? 0 : Math.min(seal.until - now, cure * 1000);
  const words = seal.state === 'curing' ? `Signed, cures ${timeLeft(left)}` : 'Signed';
  return <p className="bench-sealed" role="status"><StateMark state={seal.state === 'curing' ? 'curing' : 'signed'} passed={1 - left / Math.max(cure * 1000, 1)} size={30} /><span><b>{words}</b>{seal.by && ` by ${seal.by}`}{seal.when && `, ${seal.when}`}</span></p>;
}
