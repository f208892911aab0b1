import { Hono, type Context } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { streamSSE } from 'hono/streaming';
import { planBuild } from '@rotorwright/build';
import { entriesUpTo, readiness, replay, type MachineChange, type MachineOnBoard } from '@rotorwright/logbook';
import { machineSchema, readMachine } from '@rotorwright/machine';
import { acceptEntries } from '../accept-entries.ts';
import { isMachineId, largestPhoto, type Home } from '../home/index.ts';
import type { Live } from '../live.ts';
import { AnswerError } from './answer-error.ts';
import type { Surroundings } from './guard.ts';
import { sendPhoto, takePhoto } from './photos.ts';
import { largestMachineFile, readable } from './readable.ts';

/** In JSON a byte of the file takes two where it is a line break or a quote, and six where it is a control character, which YAML forbids. */
const largestMachineBody = 2 * largestMachineFile + 1024;
const largestEntriesBody = 64 * 1024;
/** A line that says nothing, so that neither end takes the other for dead, ms. */
const heartbeat = 15_000;

const limit = (bytes: number, what: string) =>
  bodyLimit({
    maxSize: bytes,
    onError: () => {
      throw new AnswerError(413, 'body/too-large', `${what} may have ${bytes.toLocaleString('en')} bytes at most.`);
    },
  });

export function api(home: Home, live: Live): Hono<Surroundings> {
  const routes = new Hono<Surroundings>();

  routes.use(async (context, next) => {
    await next();
    if (!context.res.headers.has('Cache-Control')) context.header('Cache-Control', 'no-store');
  });

  routes.get('/machines', (context) => context.json(home.machines.ids().map((id) => home.board(id)).filter((board) => board !== undefined)));

  routes.post('/machines', limit(largestMachineBody, 'A machine file'), async (context) => {
    const { text } = await machineBody(context, ['text']);
    const { id } = readable(text);
    if (!isMachineId(id)) throw new AnswerError(422, 'machine/id', `The file names the machine “${id.slice(0, 80)}”, which is no id: at most 64 letters, digits, - and _. Write one under machine: id.`);
    if (!home.machines.create(id, text)) throw new AnswerError(409, 'machine/exists', `There is a machine ${id} already. Give this one another id under machine: id.`, { current: present(home, id) });
    live.look();
    return context.json(present(home, id), 201);
  });

  routes.get('/machines/:id', (context) => context.json(present(home, context.req.param('id'))));

  // What stands signed, undone or curing, now or at a moment that has passed, and what speaks against flying.
  routes.get('/machines/:id/state', (context) => {
    const { id, text, entries } = present(home, context.req.param('id'));
    const given = context.req.query('at');
    const at = given === undefined ? new Date() : new Date(given);
    if (Number.isNaN(at.getTime())) throw new AnswerError(400, 'query/at', `at is no moment: ${String(given).slice(0, 80)}. Right would be 2026-03-01T18:30:00Z.`);
    const { machine } = readMachine(text, { file: id });
    if (machine === undefined) throw new AnswerError(422, 'machine/unreadable', `The file of ${id} cannot be read, so nothing can be said of its steps.`);
    const plan = planBuild(machine);
    const state = replay(plan, entriesUpTo(entries, at), at);
    return context.json({ id, at: state.now, states: Object.fromEntries(state.steps), total: state.total, readiness: readiness(plan, state) });
  });

  routes.put('/machines/:id', limit(largestMachineBody, 'A machine file'), async (context) => {
    const current = present(home, context.req.param('id'));
    const { text, revision } = await machineBody(context, ['text', 'revision']);
    // Nothing is awaited from here to the writing: no other request of this server comes between.
    const now = present(home, current.id);
    if (revision !== now.revision) throw new AnswerError(409, 'machine/changed', `The file of ${now.id} was changed by somebody else since this revision. Nothing was written.`, { current: now });
    readable(text);
    home.machines.replace(now.id, text);
    live.look();
    return context.json(present(home, now.id));
  });

  routes.delete('/machines/:id', (context) => {
    const { id } = present(home, context.req.param('id'));
    home.machines.remove(id, new Date());
    live.look();
    return context.body(null, 204);
  });

  routes.post('/machines/:id/entries', limit(largestEntriesBody, 'Entries sent together'), async (context) => {
    const { id } = present(home, context.req.param('id'));
    const body = await jsonBody(context);
    const recorded = acceptEntries(home, present(home, id), body['entries']);
    live.look();
    return context.json(recorded, 201);
  });

  routes.get('/photos/:sha256', (context) => sendPhoto(context, home));
  routes.put('/photos/:sha256', limit(largestPhoto, 'A photo'), (context) => takePhoto(context, home));

  routes.get('/schema', (context) => context.json(machineSchema()));

  routes.get('/events', (context) =>
    streamSSE(context, async (stream) => {
      const send = (change: MachineChange) => void stream.writeSSE({ event: 'machine', data: JSON.stringify(change) });
      const end = live.listen(send);
      const beat = setInterval(() => void stream.write(': still here\n\n'), heartbeat);
      await new Promise<void>((resolve) => {
        stream.onAbort(() => {
          clearInterval(beat);
          end();
          resolve();
        });
      });
    }),
  );

  routes.all('*', (context) => {
    throw new AnswerError(404, 'api/unknown', `There is no ${context.req.method} ${context.req.path.slice(0, 200)}.`);
  });
  return routes;
}

function present(home: Home, id: string): MachineOnBoard {
  const board = isMachineId(id) ? home.board(id) : undefined;
  if (board === undefined) throw new AnswerError(404, 'machine/unknown', `There is no machine “${id.slice(0, 80)}” here.`, { details: home.machines.ids() });
  return board;
}

async function jsonBody(context: Context): Promise<Readonly<Record<string, unknown>>> {
  if (!/^application\/json\s*(;|$)/i.test(context.req.header('content-type') ?? '')) throw new AnswerError(415, 'body/type', 'The body must be JSON, sent as application/json.');
  let body: unknown;
  try {
    body = await context.req.json();
  } catch (error) {
    if (error instanceof AnswerError) throw error;
    throw new AnswerError(400, 'body/malformed', `The body is no JSON: ${error instanceof Error ? error.message : String(error)}.`);
  }
  if (typeof body !== 'object' || body === null || Array.isArray(body)) throw new AnswerError(400, 'body/shape', 'The body must be a JSON object.');
  return body as Readonly<Record<string, unknown>>;
}

async function machineBody<Name extends string>(context: Context, names: readonly Name[]): Promise<Readonly<Record<Name, string>>> {
  const body = await jsonBody(context);
  const wrong = names.filter((name) => typeof body[name] !== 'string');
  const unknown = Object.keys(body).filter((name) => !(names as readonly string[]).includes(name));
  if (wrong.length > 0 || unknown.length > 0) {
    throw new AnswerError(400, 'body/shape', `The body must be {${names.map((name) => `"${name}": "…"`).join(', ')}}.`, {
      details: [...wrong.map((name) => `${name} must be a text`), ...unknown.slice(0, 5).map((name) => `${name.slice(0, 80)} is not known here`)],
    });
  }
  return body as Readonly<Record<Name, string>>;
}
