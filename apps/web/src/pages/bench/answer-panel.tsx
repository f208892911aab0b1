import type { ReactNode } from 'react';
import type { Answer, Step } from '@rotorwright/build';

export interface AnswerPanelProps {
  readonly step: Step;
  readonly answers: readonly Answer[];
  readonly feel: Answer['feel'] | undefined;
  readonly onAnswer: (feel: Answer['feel']) => void;
}

/** A question of feel: no and yes, or four words of which the wanted ones say so and have a square before them. */
export function AnswerPanel({ step, answers, feel, onAnswer }: AnswerPanelProps): ReactNode {
  const question = step.measure?.ask ?? (step.measure?.wanted ? 'How does it move?' : 'Is it as wanted? The file gives no window for it.');
  return (
    <section className="bench-measure" aria-label={step.title}>
      <h2>{question}{step.measure?.with && <small> {step.measure.with}</small>}</h2>
      <div className="bench-feel">
        {answers.map(({ feel: each, word, meaning, wanted }) => (
          <button key={each} type="button" aria-pressed={feel === each} onClick={() => onAnswer(each)}>
            {meaning !== undefined && wanted && <span className="square" aria-hidden="true" />}
            <span>{word.charAt(0).toUpperCase() + word.slice(1)}{meaning !== undefined && <small>{meaning}{wanted && <b>, wanted</b>}</small>}</span>
          </button>
        ))}
      </div>
    </section>
  );
}
