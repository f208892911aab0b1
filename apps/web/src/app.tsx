import { formatFinding } from '@rotorwright/machine';
import { lazy, Suspense, useEffect, type ReactNode } from 'react';
import { Route, Switch, useLocation } from 'wouter';
import { MachineContext, useBoard, useMachineOnBoard, type MachineView } from './data/index.ts';
import { keepLastOpened } from './data/last-opened.ts';
import { Button, Empty, LinkButton, machineAt, Sheet, sheets } from './sheet/index.ts';
import { PhoneTabs, Register } from './sheet/register.tsx';
import { placeOf } from './sheet/sheets.ts';
import { Trouble } from './sheet/trouble.tsx';

const MachinesPage = lazy(async () => ({ default: (await import('./pages/machines/index.ts')).MachinesPage }));
const DrivePage = lazy(async () => ({ default: (await import('./pages/drive/index.ts')).DrivePage }));
const RotorPage = lazy(async () => ({ default: (await import('./pages/rotor/index.ts')).RotorPage }));
const MarginsPage = lazy(async () => ({ default: (await import('./pages/margins/index.ts')).MarginsPage }));
const BuildPage = lazy(async () => ({ default: (await import('./pages/build/index.ts')).BuildPage }));
const BenchPage = lazy(async () => ({ default: (await import('./pages/bench/index.ts')).BenchPage }));
const HoldsPage = lazy(async () => ({ default: (await import('./pages/holds/index.ts')).HoldsPage }));
const ChangePage = lazy(async () => ({ default: (await import('./pages/change/index.ts')).ChangePage }));
const ControlsPage = lazy(async () => ({ default: (await import('./pages/controls/index.ts')).ControlsPage }));
const BalancePage = lazy(async () => ({ default: (await import('./pages/balance/index.ts')).BalancePage }));
const ListenPage = lazy(async () => ({ default: (await import('./pages/listen/index.ts')).ListenPage }));
const FilePage = lazy(async () => ({ default: (await import('./pages/file/index.ts')).FilePage }));
const WorksheetPage = lazy(async () => ({ default: (await import('./pages/worksheet/index.ts')).WorksheetPage }));

export function App(): ReactNode {
  const [address] = useLocation();
  const { machine, sheet } = placeOf(address);
  return <MachineContext value={machine}><Board address={address} named={machine} sheet={sheet} /></MachineContext>;
}

interface BoardProps {
  readonly address: string;
  /** The machine that the address names. */
  readonly named: string | undefined;
  readonly sheet: ReturnType<typeof placeOf>['sheet'];
}

/** The register, and the sheet beside it. */
function Board({ address, named, sheet }: BoardProps): ReactNode {
  const { status } = useBoard();
  const onBoard = useMachineOnBoard();
  useEffect(() => {
    if (named !== undefined && status === 'ready') keepLastOpened(localStorage, named);
  }, [named, status]);
  const bench = sheet === 'bench' && onBoard?.machine !== undefined;
  const title = sheet === 'machines' ? 'Machines' : (sheets.find(({ key }) => key === sheet)?.title ?? 'No such sheet');
  const place = { ...(onBoard ? { machine: onBoard } : {}), sheet };
  return (
    <>
      <a className="skip" href="#sheet">Skip to the sheet</a>
      <div className={bench ? 'board bare' : 'board'}>
        {!bench && <Register {...place} />}
        <Trouble title={title} at={address}>
          <Suspense fallback={<Sheet title={title}><Empty title="Unrolling the sheet"><p className="soft">One moment.</p></Empty></Sheet>}>
            <Pages title={title} machine={named === undefined ? undefined : onBoard} />
          </Suspense>
        </Trouble>
        {!bench && <PhoneTabs {...place} />}
      </div>
    </>
  );
}

function Pages({ title, machine }: { readonly title: string; readonly machine: MachineView | undefined }): ReactNode {
  const { status, trouble, retry } = useBoard();
  if (status === 'failed') {
    return (
      <Sheet title={title}>
        <Empty title="The server does not answer" next={<Button kind="ink" onClick={retry}>Try again</Button>}>
          <p>{trouble} Start it with <code>npm start</code> in the folder of Rotorwright. Entries that you made here are kept on this device.</p>
        </Empty>
      </Sheet>
    );
  }
  return (
    <Switch>
      <Route path="/">{status === 'loading' ? <Loading title={title} /> : <MachinesPage />}</Route>
      <Route path="/worksheet/:calc?"><WorksheetPage /></Route>
      <Route path="/m/:id/drive">{forMachine(title, status, machine, true, () => <DrivePage />)}</Route>
      <Route path="/m/:id/rotor">{forMachine(title, status, machine, true, () => <RotorPage />)}</Route>
      <Route path="/m/:id/margins">{forMachine(title, status, machine, true, () => <MarginsPage />)}</Route>
      <Route path="/m/:id/build">{forMachine(title, status, machine, true, () => <BuildPage />)}</Route>
      <Route path="/m/:id/bench/:step?">{forMachine(title, status, machine, true, () => <BenchPage />)}</Route>
      <Route path="/m/:id/holds">{forMachine(title, status, machine, true, () => <HoldsPage />)}</Route>
      <Route path="/m/:id/change">{forMachine(title, status, machine, true, () => <ChangePage />)}</Route>
      <Route path="/m/:id/controls">{forMachine(title, status, machine, true, () => <ControlsPage />)}</Route>
      <Route path="/m/:id/balance">{forMachine(title, status, machine, true, () => <BalancePage />)}</Route>
      <Route path="/m/:id/listen">{forMachine(title, status, machine, true, () => <ListenPage />)}</Route>
      <Route path="/m/:id/file">{forMachine(title, status, machine, false, () => <FilePage />)}</Route>
      <Route path="/m/:id/worksheet/:calc?">{forMachine(title, status, machine, false, () => <WorksheetPage />)}</Route>
      <Route>
        <Sheet title="No such sheet">
          <Empty title="There is no sheet at this address" next={<LinkButton to="/" kind="ink">Machines</LinkButton>}>
            <p><code>{location.pathname}</code> leads nowhere. A link may be cut short, or the sheet has moved.</p>
          </Empty>
        </Sheet>
      </Route>
    </Switch>
  );
}

const Loading = ({ title }: { readonly title: string }): ReactNode => <Sheet title={title}><Empty title="Fetching the machines"><p className="soft">One moment.</p></Empty></Sheet>;

/** A sheet of one machine: only once the machine is there, and, where it needs it, its file can be read. */
function forMachine(title: string, status: string, machine: MachineView | undefined, readable: boolean, page: () => ReactNode): ReactNode {
  if (status === 'loading') return <Loading title={title} />;
  if (!machine) {
    return (
      <Sheet title={title}>
        <Empty title="There is no such machine here" next={<LinkButton to="/" kind="ink">Machines</LinkButton>}>
          <p>The machine that this address names is not on this board. It may have been removed, or it lies in another home folder.</p>
        </Empty>
      </Sheet>
    );
  }
  if (readable && !machine.machine) {
    return (
      <Sheet title={title}>
        <Empty title="The machine file cannot be read" next={<LinkButton to={machineAt(machine.id, 'file')} kind="ink">Open the file</LinkButton>}>
          <p>This sheet is computed from the file. Mend this first:</p>
          <ul>{machine.findings.slice(0, 6).map((finding) => <li key={`${finding.code} ${finding.path} ${finding.place?.line}`}>{formatFinding(finding, 'machine.yaml')}</li>)}</ul>
        </Empty>
      </Sheet>
    );
  }
  return page();
}
