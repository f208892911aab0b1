import { countMargins, frequencyMap, margins, prepareFigures, type LoadCaseId, type Margin } from '@rotorwright/figures';
import { moduleTitle } from '@rotorwright/build';
import { useCallback, useDeferredValue, useMemo, useRef, useState, type ReactNode } from 'react';
import { useSearchParams } from 'wouter';
import { useMachine, type ReadableMachine } from '../../data/index.ts';
import { Button, Empty, LinkButton, machineAt, Note, Sheet, StateWord, WorkingDrawer } from '../../sheet/index.ts';
import { FrequencyMapPicture } from './frequency-map.tsx';
import { ConditionFields, type Moved } from './condition-fields.tsx';
import { MarginBars } from './margin-bars.tsx';
import { Entries, MarginDetail } from './margin-detail.tsx';
import { marginWords, missingEntries, wordOrder } from './words.ts';
import './margins.css';

/** More rows than these are folded until they are asked for. */
const mostRows = 40;

/** Every margin, tightest first; one of them opened into its working; what is missing; what shakes. */
export function MarginsPage(): ReactNode {
  const open = useMachine();
  const { machine, id } = open;
  const [searched, setSearched] = useSearchParams();
  const asked = useMemo(() => Object.fromEntries(searched), [searched]) as Readonly<Partial<Record<'margin' | 'case' | 'state' | 'module' | 'figure', string>>>;
  const choose = useCallback((change: Readonly<Record<string, string | undefined>>): void => setSearched((before) => {
    const next = new URLSearchParams(before);
    for (const [key, value] of Object.entries(change)) if (value === undefined || value === '') next.delete(key);
    else next.set(key, value);
    return next;
  }, { replace: true }), [setSearched]);

  const reckon = useMemo(() => prepareFigures(machine), [machine]);
  const [conditions, setConditions] = useState<Moved>({});
  const reckoned = useDeferredValue(conditions);
  const set = useMemo(() => reckon(reckoned), [reckon, reckoned]);
  const { source } = set.drive;
  const filed = source?.speed;
  const last = useRef<ReturnType<typeof margins>>(undefined);
  const found = useMemo(() => (last.current = margins(set, asked.case as LoadCaseId | undefined, last.current)), [set, asked.case]);
  const counts = countMargins(found.all);
  const shown = found.all.filter(({ word, module }) => (asked.state === undefined || word === asked.state) && (asked.module === undefined || module?.split('.')[0] === asked.module));
  const margin = found.all.find(({ name }) => name === asked.margin) ?? shown[0];
  const [whole, setWhole] = useState(false);
  const detail = useRef<HTMLElement>(null);
  const show = useCallback((name: string): void => {
    choose({ margin: name });
    // On one column the answer lies below the list; from the map it lies above.
    const { top = 0, bottom = innerHeight } = detail.current?.getBoundingClientRect() ?? {};
    if (top >= innerHeight || bottom <= 0) requestAnimationFrame(() => detail.current?.scrollIntoView());
  }, [choose]);
  const rows = whole ? shown : withChosen(shown.slice(0, mostRows), margin, shown);
  const map = useMemo(() => frequencyMap(found), [found]);
  const missing = missingEntries(found.all);
  // The slider moves at once and what it moves follows: until then these are the pictures of before, and are not drawn again.
  const bars = useMemo(() => <MarginBars found={found} shown={rows} chosen={margin?.name} onChoose={show} />, [found, asked, whole, show]);
  const opened = useMemo(() => margin && <MarginDetail ref={detail} found={found} margin={margin} machine={id} />, [found, margin, id]);
  const shaking = useMemo(() => map && <FrequencyMapPicture map={map} onOpen={(figure) => choose({ figure })} onMargin={show} />, [map, choose, show]);
  const worst = wordOrder.find((word) => counts[word] > 0);

  if (found.all.length === 0) return <NoMargins id={id} />;
  return (
    <Sheet
      title="Margins"
      className="margins"
      answer={wordOrder.filter((word) => counts[word] > 0).map((word) => <StateWord key={word} state={word}>{counts[word]} {marginWords[word]}</StateWord>)}
      block={{ scale: 'log', units: 'ratio', ...(worst === undefined ? {} : { state: { mark: worst, words: `${counts[worst]} ${marginWords[worst]}` } }), caution: 'Estimates for an experienced builder. A margin says nothing about a part that is worn, bent or unlocked.' }}
      notes={(
        <>
          <Note title="Reading it">Below 1 it is exceeded, even 0.996. From 1 to 1.25 it is tight. A dashed square is not assessed: it never counts as a pass.</Note>
          {missing.length > 0 && <Note title="Missing entries"><Entries found={found} paths={missing.slice(0, 5).map(([path]) => path)} machine={id} />{missing.length > 5 && <span className="soft">and {missing.length - 5} more</span>}</Note>}
        </>
      )}
    >
      <div className="columns margin-columns">
        <section className="area" aria-label="Margins, tightest first">
          <div className="area-head"><h2>Tightest first</h2><span className="small soft">what it bears over what it sees; log scale around one</span></div>
          <div className="margin-controls">
            <Choice label="Load case" value={asked.case} all="the hardest for each" options={found.cases.map(({ id: value, title }) => [value, title])} onChange={(value) => choose({ case: value })} />
            <Choice label="State" value={asked.state} all="all" options={wordOrder.map((word) => [word, `${marginWords[word]}, ${counts[word]}`])} onChange={(value) => choose({ state: value })} />
            <Choice label="Module" value={asked.module} all="all" options={modulesOf(open, found.all)} onChange={(value) => choose({ module: value })} />
            <ConditionFields kind={source?.kind} filed={filed} conditions={conditions} onChange={setConditions} />
          </div>
          {shown.length === 0 ? <p className="soft">No margin of this kind.</p> : bars}
          {rows.length < shown.length && <p><Button onClick={() => setWhole(true)}>Show all {shown.length}</Button></p>}
        </section>
        {opened}
      </div>
      {shaking}
      {asked.figure !== undefined && <WorkingDrawer set={found.set} name={asked.figure} machine={id} onClose={() => choose({ figure: undefined })} />}
    </Sheet>
  );
}

/** A row that somebody has chosen stays in sight, wherever it lies. */
function withChosen(rows: readonly Margin[], chosen: Margin | undefined, all: readonly Margin[]): readonly Margin[] {
  return chosen === undefined || rows.includes(chosen) || !all.includes(chosen) ? rows : [...rows, chosen];
}

/** Modules that have margins, copies as one. */
function modulesOf({ machine }: ReadableMachine, all: readonly Margin[]): readonly (readonly [value: string, title: string])[] {
  const keys = new Set(all.flatMap(({ module }) => (module === undefined ? [] : [module.split('.')[0]!])));
  return [...machine.modules.values()].filter(({ key }) => keys.delete(key)).map((module) => [module.key, module.copy === undefined ? moduleTitle(module) : module.title]);
}

function Choice({ label, value, all, options, onChange }: { readonly label: string; readonly value: string | undefined; readonly all: string; readonly options: readonly (readonly [value: string, title: string])[]; readonly onChange: (value: string) => void }): ReactNode {
  return (
    <label className="margin-choice"><span>{label}</span>
      <select value={value ?? ''} onChange={({ target }) => onChange(target.value)}>
        <option value="">{all}</option>
        {options.map(([each, title]) => <option key={each} value={each}>{title}</option>)}
      </select>
    </label>
  );
}

function NoMargins({ id }: { readonly id: string }): ReactNode {
  return (
    <Sheet title="Margins" answer={<StateWord state="unknown">nothing to hold against a load yet</StateWord>}>
      <Empty title="The file names nothing that carries a load yet" next={<LinkButton to={machineAt(id, 'file')} kind="ink">Open the file</LinkButton>}>
        <p>A blade’s mass gives the pull on its bolt; a bearing’s ratings and its place give its life; a limit gives what is left of it:</p>
        <pre className="example">{`limits:
  main-speed: {of: speed mast, at-most: 1980 rpm, source: "maker's sheet"}`}</pre>
      </Empty>
    </Sheet>
  );
}

