import { differences, type Machine } from '@rotorwright/machine';
import { useId, useMemo, useState, type ReactNode } from 'react';
import { Button, Drawer, Segmented } from '../../sheet/index.ts';
import type { Idea } from './ideas.ts';
import type { Edit } from '@rotorwright/machine';

export interface ComposeProps {
  readonly machine: Machine;
  readonly text: string;
  readonly onIdea: (idea: Idea) => void;
  readonly onEdit: (edit: Edit) => void;
  /** Whether an entry may be added to the idea on the sheet. */
  readonly adds: boolean;
  readonly onClose: () => void;
}

/** Three ways to an idea: another gear that can be bought, a variant of the file, any entry. */
export function Compose({ machine, text, onIdea, onEdit, adds, onClose }: ComposeProps): ReactNode {
  const sides = [...machine.couplings.values()].flatMap((coupling) => (['driver', 'driven'] as const).flatMap((name) => {
    const side = coupling[name];
    const part = side.part === undefined ? undefined : machine.parts.get(machine.thingOf.get(side.part) ?? side.part)?.title;
    return side.choices.length > 1 ? [{ side, title: part ?? `${coupling.title}, ${name === 'driver' ? 'driving' : 'driven'}` }] : [];
  }));
  const variants = [...machine.variants];
  const ways = [...(sides.length > 0 ? [{ value: 'gear' as const, title: 'Another gear' }] : []), ...(variants.length > 0 ? [{ value: 'variant' as const, title: 'A variant' }] : []), { value: 'entry' as const, title: 'Any entry' }];
  const [way, setWay] = useState<'gear' | 'variant' | 'entry'>(ways[0]!.value);
  const [to, setTo] = useState<'new' | 'same'>(adds ? 'same' : 'new');
  const take = (edit: Edit): void => (to === 'same' && adds ? onEdit(edit) : onIdea({ edits: [edit] }));
  return (
    <Drawer title="Try a change" onClose={onClose}>
      <p>Nothing is changed before you turn an idea into work.</p>
      {ways.length > 1 && <Segmented label="What to change" options={ways} value={way} onChange={setWay} />}
      {way !== 'variant' && adds && <Segmented label="Where it goes" options={[{ value: 'same', title: 'Into this idea' }, { value: 'new', title: 'A new idea' }]} value={to} onChange={setTo} />}
      {way === 'gear' && sides.map(({ side, title }) => (
        <fieldset key={side.path} className="gear-choices">
          <legend>{title}, {side.teeth ?? 'unknown'} teeth today</legend>
          {side.choices.filter(({ teeth }) => teeth !== side.teeth).map(({ teeth, code, price }) => <Button key={teeth} onClick={() => take({ path: `${side.path}.teeth`, value: String(teeth) })}>{teeth}<span className="soft small"> {[code, price].filter(Boolean).join(', ')}</span></Button>)}
        </fieldset>
      ))}
      {way === 'variant' && <ul className="variants">{variants.map(([name, title]) => <li key={name}><Button onClick={() => onIdea({ variant: name })}>{title}</Button></li>)}</ul>}
      {way === 'entry' && <AnyEntry text={text} onTake={take} />}
    </Drawer>
  );
}

/** Any entry that stands in the file, or a new one, by its path. */
function AnyEntry({ text, onTake }: { readonly text: string; readonly onTake: (edit: Edit) => void }): ReactNode {
  const list = useId();
  // Against an empty file, every entry is a difference.
  const entries = useMemo(() => new Map(differences({ text: '' }, { text }).map(({ path, after }) => [path, after ?? ''])), [text]);
  const [path, setPath] = useState('');
  const [value, setValue] = useState('');
  const known = entries.get(path.trim());
  return (
    <form className="any-entry" onSubmit={(event) => { event.preventDefault(); onTake({ path: path.trim(), value: value.trim() }); }}>
      <label>Entry<input type="text" list={list} value={path} spellCheck={false} autoComplete="off" placeholder="rotors.main.diameter" onChange={(event) => { setPath(event.target.value); setValue(entries.get(event.target.value.trim()) ?? value); }} /></label>
      <datalist id={list}>{[...entries].map(([name, now]) => <option key={name} value={name}>{now}</option>)}</datalist>
      <label>Value<input type="text" value={value} spellCheck={false} autoComplete="off" onChange={(event) => setValue(event.target.value)} /></label>
      <p className="soft small" role="status">{path.trim() === '' ? 'The path of an entry as in the file, its parts joined by dots.' : known === undefined ? 'The file has no such entry yet: it would be new.' : `The file says ${known}.`}</p>
      <span className="choices">
        <Button kind="ink" type="submit" disabled={path.trim() === '' || value.trim() === '' || value.trim() === known}>Try it</Button>
        {known !== undefined && <Button onClick={() => onTake({ path: path.trim() })}>Try without it</Button>}
      </span>
    </form>
  );
}
