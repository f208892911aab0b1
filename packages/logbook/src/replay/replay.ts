import { answersFor, answersTo, type Fall, type Plan, type Step } from '@rotorwright/build';
import type { Entry, EntryBody, SignatureState } from '../entry.ts';
import { inOrderOfWork, momentOf, takenBack } from './moments.ts';
import { namingIn } from './naming.ts';
import { foundBad, secondLookOf, type LookedEntry } from './second-look.ts';
import type { BuildState, StepCounts, StepEvent, StepState, UndoneReason } from './state.ts';

type Signed = Extract<EntryBody, { kind: 'signed' }>;
type SignedEntry = Entry & { readonly body: Signed };

/** What the book says of one step. */
interface StepRecord {
  readonly events: StepEvent[];
  signature?: SignedEntry;
  opened?: { readonly entry: Entry; readonly fallsWith?: string };
  /** Second looks at the signature that stands. */
  looks: readonly LookedEntry[];
  /** The last signature that was taken back, with what took it back. */
  taken?: { readonly signature: SignedEntry; readonly by: number };
}

/**
 * What has been done to a machine, from its plan and its book.
 *
 * A signature stands while the step's fingerprint is the one that was signed, nothing has opened it since, nobody has
 * taken it back, what was measured is within what is wanted, and no second look found it bad. The last signature counts; what it took the place of
 * stands again only when it is taken back. Things count in the order in which they were done, not in which they arrived.
 *
 * @param plan    of the machine as its file is now
 * @param entries of this machine, in any order; their chain is taken as checked
 * @param now     the moment at which curing is judged
 */
export function replay(plan: Plan, entries: readonly Entry[], now: Date): BuildState {
  const naming = namingIn(plan);
  const back = takenBack(entries);
  const byNumber = new Map(entries.map((entry) => [entry.number, entry]));
  const records = new Map<string, StepRecord>([...plan.steps.keys()].map((id) => [id, { events: [], looks: [] }]));
  const elsewhere: number[] = [];

  for (const entry of inOrderOfWork(entries)) {
    const concerned = stepsOf(entry, byNumber, naming);
    if (concerned === undefined) elsewhere.push(entry.number);
    for (const [id, fall] of concerned ?? []) {
      const record = records.get(id);
      if (record !== undefined) note(record, entry, back.get(entry.number), fall);
    }
  }

  const steps = new Map([...plan.steps].map(([id, step]) => [id, judge(plan, step, records.get(id) ?? { events: [], looks: [] }, byNumber, now)]));
  return {
    now: now.toISOString(),
    steps,
    modules: new Map(plan.modules.map((module) => [module.id, count(module.steps.map(({ id }) => steps.get(id)?.state ?? 'open'))])),
    total: count([...steps.values()].map(({ state }) => state)),
    elsewhere: elsewhere.toSorted((a, b) => a - b),
  };
}

/** Steps that an entry concerns; nothing when it names something that the plan does not have. */
function stepsOf({ body, number }: Entry, byNumber: ReadonlyMap<number, Entry>, naming: ReturnType<typeof namingIn>): ReadonlyMap<string, Fall | undefined> | undefined {
  switch (body.kind) {
    case 'signed':
    case 'looked':
      return known(naming.stepOf(body.step));
    case 'noted':
      return body.step === undefined ? new Map() : known(naming.stepOf(body.step));
    case 'counted':
    case 'balanced':
    case 'heard':
      return new Map();
    case 'opened': {
      const fallen = naming.openedBy(body.things);
      return fallen.size === 0 ? undefined : fallen;
    }
    case 'corrected': {
      const corrected = body.entry < number ? byNumber.get(body.entry) : undefined;
      // What a correction of a correction concerns is what the first one concerned.
      return corrected === undefined ? undefined : stepsOf(corrected, byNumber, naming);
    }
  }
}

function known(step: string | undefined): ReadonlyMap<string, undefined> | undefined {
  return step === undefined ? undefined : new Map([[step, undefined]]);
}

function note(record: StepRecord, entry: Entry, takenBackBy: number | undefined, fall: Fall | undefined): void {
  record.events.push(eventOf(entry, takenBackBy));
  if (entry.body.kind === 'signed') {
    const signature = entry as SignedEntry;
    if (takenBackBy !== undefined) record.taken = { signature, by: takenBackBy };
    else {
      record.signature = signature;
      record.looks = [];
      delete record.opened;
    }
  }
  if (entry.body.kind === 'looked' && takenBackBy === undefined) record.looks = [...record.looks, entry as LookedEntry];
  if (entry.body.kind === 'opened' && takenBackBy === undefined) record.opened ??= { entry, ...(fall?.why === 'falls' ? { fallsWith: fall.with } : {}) };
}

function eventOf({ number, at, by, body }: Entry, takenBackBy: number | undefined): StepEvent {
  const words = 'note' in body ? body.note : 'reason' in body ? body.reason : undefined;
  return {
    entry: number,
    kind: body.kind,
    at,
    by,
    ...(body.kind === 'signed' ? signedWith(body) : {}),
    ...(body.kind === 'looked' ? { found: body.found, fingerprint: body.fingerprint } : {}),
    ...(words === undefined ? {} : { words }),
    ...('photo' in body && body.photo !== undefined ? { photo: body.photo } : {}),
    ...(takenBackBy === undefined ? {} : { takenBack: takenBackBy }),
  };
}

function signedWith({ locks, torque, temperature, measured, fingerprint }: Signed): Partial<StepEvent> {
  return { fingerprint, ...(locks === undefined ? {} : { locks }), ...(torque === undefined ? {} : { torque }), ...(temperature === undefined ? {} : { temperature }), ...(measured === undefined ? {} : { measured }) };
}

function judge(plan: Plan, step: Step, record: StepRecord, byNumber: ReadonlyMap<number, Entry>, now: Date): StepState {
  const history = record.events;
  const { signature, taken } = record;
  if (signature === undefined) return taken === undefined ? { state: 'open', history } : { state: 'undone', reason: correctedReason(taken, byNumber), ...whoWhen(taken.signature), history };
  const reason = undoneReason(plan, step, record, signature);
  if (reason !== undefined) return { state: 'undone', reason, ...whoWhen(signature), history };
  const look = secondLookOf(step, signature, record.looks.filter(({ body }) => answersTo(plan, step, body.fingerprint)));
  const standing = { ...whoWhen(signature), ...(look === undefined ? {} : { secondLook: look }), history };
  const until = momentOf(signature) + signature.body.cure * 1000;
  if (signature.body.cure > 0 && until > now.getTime()) return { state: 'curing', until: new Date(until).toISOString(), ...standing };
  return { state: 'signed', ...standing };
}

function whoWhen({ by, at, number }: Entry): Pick<StepState, 'by' | 'at' | 'entry'> {
  return { by, at, entry: number };
}

function undoneReason(plan: Plan, step: Step, { opened, looks }: StepRecord, signature: SignedEntry): UndoneReason | undefined {
  if (opened?.entry.body.kind === 'opened') {
    const { number, by, at, body } = opened.entry;
    return { why: 'opened', entry: number, by, at, reason: body.reason, ...(opened.fallsWith === undefined ? {} : { fallsWith: opened.fallsWith }) };
  }
  const { fingerprint, measured } = signature.body;
  if (!answersTo(plan, step, fingerprint)) return { why: 'changed', entry: signature.number, signed: fingerprint, now: step.fingerprint };
  if (measured !== undefined && !isWanted(step, measured)) return { why: 'failed', entry: signature.number, measured };
  return foundBad(looks);
}

function correctedReason({ signature, by }: NonNullable<StepRecord['taken']>, byNumber: ReadonlyMap<number, Entry>): UndoneReason {
  const body = byNumber.get(by)?.body;
  return { why: 'corrected', entry: by, signature: signature.number, reason: body?.kind === 'corrected' ? body.reason : '' };
}

/** The window, or the word, is that of the file as it is now: a wider one makes an old reading good, a narrower one does not let it pass. A yes to a plain question stands. */
function isWanted({ measure }: Step, measured: NonNullable<Signed['measured']>): boolean {
  if ('feel' in measured) return measured.feel === 'yes' || (measure !== undefined && answersFor(measure).some(({ feel, wanted }) => wanted && feel === measured.feel));
  if (measure === undefined || (measure.min === undefined && measure.max === undefined)) return true;
  if (measure.unit !== undefined && measured.unit !== measure.unit) return false;
  // To 12 digits: 0.02 mm written in one unit and read in another is the same reading.
  const [value, min, max] = [measured.value, measure.min ?? -Infinity, measure.max ?? Infinity].map((each) => Number(each.toPrecision(12))) as [number, number, number];
  return value >= min && value <= max;
}

function count(states: readonly SignatureState[]): StepCounts {
  const of = (wanted: SignatureState) => states.filter((state) => state === wanted).length;
  return { open: of('open'), signed: of('signed'), undone: of('undone'), curing: of('curing'), total: states.length };
}
