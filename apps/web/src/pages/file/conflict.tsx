import { useMemo, type ReactNode } from 'react';
import { Button } from '../../sheet/index.ts';
import { compareLines, type LineChange } from './line-changes.ts';

export interface ConflictProps {
  /** What stands in the file now. */
  readonly theirs: string;
  /** What stands in the editor. */
  readonly mine: string;
  readonly busy: boolean;
  readonly onMine: () => void;
  readonly onTheirs: () => void;
}

const signs: Readonly<Record<LineChange['kind'], string>> = { same: ' ', theirs: '−', mine: '+' };
const around = 2;

/** The file was changed elsewhere while it was edited here: both are shown, and nothing is lost before somebody chooses. */
export function Conflict({ theirs, mine, busy, onMine, onTheirs }: ConflictProps): ReactNode {
  const hunks = useMemo(() => near(compareLines(theirs, mine)), [theirs, mine]);
  return (
    <section className="file-conflict" aria-label="Two versions">
      <h2>The file was changed elsewhere</h2>
      <p>Lines with − stand in the file now, lines with + in your text below. Edit your text until it holds what you want of both, then save it, or take what stands in the file.</p>
      <pre>{hunks.map((line, index) => (line === undefined ? <span key={index} className="gap">⋯{'\n'}</span> : <span key={index} className={line.kind}>{signs[line.kind]} {line.text}{'\n'}</span>))}</pre>
      <div className="choices"><Button kind="ink" disabled={busy} onClick={onMine}>Save my text over it</Button><Button disabled={busy} onClick={onTheirs}>Take the file, drop my text</Button></div>
    </section>
  );
}

/** Changed lines with two lines around them; undefined where something is left out. */
function near(lines: readonly LineChange[]): readonly (LineChange | undefined)[] {
  const shown = lines.map((_, index) => lines.slice(Math.max(0, index - around), index + around + 1).some((line) => line.kind !== 'same'));
  return lines.flatMap((line, index) => (shown[index] ? [line] : shown[index - 1] ? [undefined] : []));
}
