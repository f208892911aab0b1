import { useLayoutEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import type { Machine } from '@rotorwright/machine';
import type { Step } from '@rotorwright/build';
import { dimensionRow } from './dimension-lines.ts';
import { DrawingView } from './drawing-view.tsx';
import type { Section } from './half-section.ts';
import { placeDrawing, scaleText } from './place-drawing.ts';
import { drawingFor } from './step-drawing.ts';

export interface DrawingPaneProps {
  readonly machine: Machine;
  readonly step: Step;
  /** Where room is short: folded away together with the list and notes, so that the answer stays in view. */
  readonly folded?: ReactNode;
}

/** The drawing of a step with its list of parts: the list is the drawing's text twin, and picks parts out of it. */
export function DrawingPane({ machine, step, folded }: DrawingPaneProps): ReactNode {
  const [chosen, setChosen] = useState<string>();
  const pane = useRef<HTMLDivElement>(null);
  const [paper, setPaper] = useState({ width: 0, height: 0 });
  const drawing = useMemo(() => drawingFor(machine, step, chosen), [machine, step, chosen]);
  useLayoutEffect(() => {
    const element = pane.current;
    if (!element) return undefined;
    const measure = (): void => setPaper({ width: element.clientWidth, height: element.clientHeight });
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, []);
  const phone = paper.width < 520;
  const placed = drawing && paper.width > 40 ? placeDrawing(drawing.section, { width: paper.width, height: phone ? phoneHeight(drawing.section) : Math.max(paper.height, 190), lettering: 17, upperOnly: phone }, drawing.active) : undefined;
  const list = drawing && (
    <ol className="bench-parts" aria-label="Parts of the drawing">
      {drawing.section.numbered.map((one) => (
        <li key={one.number}>
          <button type="button" aria-pressed={chosen === one.id} className={drawing.active.has(one.id) ? 'active' : undefined} onClick={() => setChosen(chosen === one.id ? undefined : one.id)}>
            <b>{one.number}</b> <span>{one.title}{one.remark && <small>{one.remark}</small>}</span>
          </button>
        </li>
      ))}
    </ol>
  );
  const plain = !drawing && step.parts.length > 0 && (
    <ul className="bench-parts" aria-label="Parts">
      {step.parts.map((part) => <li key={part.id}><span className="plain">{part.count > 1 && <b>{part.count} ×</b>} {part.title}</span></li>)}
    </ul>
  );
  return (
    <section className="bench-drawing" aria-label="Drawing">
      <div className={drawing ? 'bench-paper' : 'bench-paper none'} ref={pane}>
        {drawing ? placed && <DrawingView drawing={placed} label={drawing.label} /> : <p className="dashed">No drawing. The file names no stack and no joint for this step.</p>}
      </div>
      {folded === undefined ? <>{list}{notes(drawing, placed?.scale)}{plain}</> : <details className="bench-how"><summary>Parts, how, and with what</summary>{list}{notes(drawing, placed?.scale)}{plain}{folded}</details>}
    </section>
  );
}

/** Dimensions under a stack take height of their own, so that they do not press the drawing. */
const phoneHeight = ({ ends, dimensions }: Section): number => 232 + (ends ? dimensions.length * dimensionRow : 0);

function notes(drawing: ReturnType<typeof drawingFor>, scale: number | undefined): ReactNode {
  if (!drawing) return undefined;
  return <p className="bench-scale">{scale !== undefined && <>Scale {scaleText(scale)}. </>}{drawing.section.notes.join(' ')}</p>;
}
