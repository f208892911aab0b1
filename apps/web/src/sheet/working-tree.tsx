import { catalogue, type InputSpec } from '@rotorwright/calculations';
import { working, type FigureSet, type WorkingNode } from '@rotorwright/figures';
import { useState, type ReactNode } from 'react';
import { Link } from 'wouter';
import { Drawer } from './drawer.tsx';
import { Formula } from './formula.tsx';
import { lineAt, worksheetAt } from './sheets.ts';
import { StateMark, StateWord } from './state-mark.tsx';
import './working-tree.css';

export interface WorkingDrawerProps {
  readonly set: FigureSet;
  readonly name: string;
  /** Machine whose file the lines belong to. */
  readonly machine: string;
  readonly onClose: () => void;
}

/** A figure opened into its working: formula, inputs, down to lines of the file and published sources. */
export function WorkingDrawer({ set, name, machine, onClose }: WorkingDrawerProps): ReactNode {
  const tree = working(set, name);
  return (
    <Drawer title={tree?.title ?? name} wide onClose={onClose}>
      {tree ? <WorkingTree tree={tree} machine={machine} /> : <p>There is no figure “{name}” of this machine. Find (/) lists those that there are.</p>}
    </Drawer>
  );
}

/**
 * @param bare   the value stands beside it already
 * @param levels figures nested deeper than so many wait behind a fold
 */
export function WorkingTree({ tree, machine, bare = false, levels = Infinity }: { readonly tree: WorkingNode; readonly machine: string; readonly bare?: boolean; readonly levels?: number }): ReactNode {
  const calculation = tree.calculation === undefined ? undefined : catalogue.get(tree.calculation);
  return (
    <div className="working">
      {!bare && <p className="working-value">
        {tree.value === undefined ? <StateWord state="unknown" size={22}>not known</StateWord> : tree.text}
        {tree.exact !== undefined && <span className="working-exact">exactly {tree.exact} of the source</span>}
      </p>}
      {tree.formula !== undefined && <p className="working-formula"><Formula tex={tree.formula} display /></p>}
      <Warnings node={tree} />
      <Inputs node={tree} machine={machine} levels={levels} />
      <dl className="working-source">
        <dt>Source</dt><dd>{tree.source}</dd>
        {calculation && calculation.validity.length > 0 && <><dt>Holds for</dt><dd>{calculation.validity.join(' ')}</dd></>}
        {calculation && <><dt>Alone</dt><dd><Link href={worksheetAt(machine, calculation.id)}>{calculation.title}, on the worksheet</Link></dd></>}
      </dl>
    </div>
  );
}

const Warnings = ({ node }: { readonly node: WorkingNode }): ReactNode => node.warnings.map((warning) => <p key={warning} className="working-warning"><StateMark state="tight" size={13} label="Note:" /> {warning}</p>);

/** What the inputs of a calculation are called in it, by name. */
type Specs = Readonly<Record<string, InputSpec>>;

const specsOf = (node: WorkingNode): Specs => (node.calculation === undefined ? {} : (catalogue.get(node.calculation)?.inputs ?? {}));

function Inputs({ node, machine, levels, specs = specsOf(node) }: { readonly node: WorkingNode; readonly machine: string; readonly levels: number; readonly specs?: Specs }): ReactNode {
  if (node.children.length === 0) return null;
  return <ul className="working-tree">{node.children.map((child, index) => <Leaf key={`${index} ${child.label}`} node={child} specs={specs} machine={machine} levels={levels} />)}</ul>;
}

function Leaf({ node, specs, machine, levels }: { readonly node: WorkingNode; readonly specs: Specs; readonly machine: string; readonly levels: number }): ReactNode {
  const spec = specs[node.label];
  const symbol = spec?.kind === 'number' ? spec.symbol : undefined;
  const name = <span className="working-symbol">{symbol === undefined ? node.label : <Formula tex={symbol} />}</span>;
  switch (node.kind) {
    case 'entry':
      return <li>{name}<strong>{node.text}</strong><span>{node.as !== undefined && `${node.as} `}<FileLine node={node} machine={machine} /></span></li>;
    case 'constant':
      return <li>{name}<strong>{node.text}</strong><span className="soft">{node.source}</span></li>;
    case 'missing':
      return <li className="missing"><StateWord state="unknown" size={13}>missing</StateWord><span><FileLine node={node} machine={machine} /></span></li>;
    case 'group':
      return <li className="group"><span className="soft">{node.title}</span><Inputs node={node} machine={machine} levels={levels} specs={within(spec) ?? specs} /></li>;
    default: {
      const how = <>{node.formula !== undefined && <div className="working-inner-formula"><Formula tex={node.formula} display /></div>}<Inputs node={node} machine={machine} levels={levels - 1} /></>;
      return (
        <li className="group">
          <div className="working-row">{name}<strong>{node.text}</strong><span>{node.title}{node.again && <span className="soft">, as above</span>}</span></div>
          <Warnings node={node} />
          {levels > 0 || node.children.length === 0 ? how : <Fold>{how}</Fold>}
        </li>
      );
    }
  }
}

/** Drawn only while it is open: the folded working of one margin is longer than the rest of its page, and follows every move of a slider. */
function Fold({ children }: { readonly children: ReactNode }): ReactNode {
  const [open, setOpen] = useState(false);
  return <details className="working-fold" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}><summary>how</summary>{open && children}</details>;
}

function FileLine({ node, machine }: { readonly node: WorkingNode; readonly machine: string }): ReactNode {
  if (!node.place) return <code>{node.path}</code>;
  return <Link href={lineAt(machine, node.place.line)}>{node.kind === 'missing' ? `write it near line ${node.place.line}: ` : `line ${node.place.line}, `}{node.path}</Link>;
}

/** Specs of what a record, or each row of a list, holds. A row itself is called by its number, and keeps those of its list. */
function within(spec: InputSpec | undefined): Specs | undefined {
  if (spec?.kind === 'record') return spec.fields;
  return spec?.kind === 'list' ? within(spec.of) : undefined;
}
