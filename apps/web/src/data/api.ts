import type { Entry, MachineOnBoard, NewEntry, WireError } from '@rotorwright/logbook';
import type { Photo } from './photo.ts';

/** An answer of the server that is no success. `code` is stable. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly status: number;
  readonly code: string;
  readonly details: readonly string[];
  readonly current: MachineOnBoard | undefined;
  /** Asking again will not help. Trouble of the server's own, and a server that is busy, may pass. */
  readonly final: boolean;
  constructor(status: number, body: WireError) {
    super(body.error.message);
    this.status = status;
    this.code = body.error.code;
    this.details = body.error.details ?? [];
    this.current = body.current;
    this.final = status < 500 && status !== 408 && status !== 429;
  }
}

/** The server could not be reached; nothing is known of what was sent. */
export class NetworkGone extends Error {
  override readonly name = 'NetworkGone';
}

/** How long an answer may take before the network counts as gone, ms. */
const patience = 20_000;

async function call<Answer>(path: string, method = 'GET', body?: Body): Promise<Answer> {
  let response: Response;
  try {
    response = await fetch(`/api${path}`, { method, signal: AbortSignal.timeout(patience), ...(body === undefined ? {} : { headers: { 'content-type': body.type }, body: body.content }) });
  } catch (error) {
    throw new NetworkGone(silence, { cause: error });
  }
  if (response.status === 204) return undefined as Answer;
  // An answer that breaks off, or is none of ours, says nothing of what was done: a gateway answers for the server when
  // it is away, and so does the page on which a network asks its guests to log in.
  const answer: unknown = await response.json().catch(() => undefined);
  if (isWireError(answer)) throw new Refused(response.status, answer);
  if (!response.ok || answer === undefined) throw new NetworkGone(silence);
  return answer as Answer;
}

interface Body {
  readonly type: string;
  readonly content: string | Blob;
}

const json = (value: unknown): Body => ({ type: 'application/json', content: JSON.stringify(value) });

const silence = 'The server does not answer. Is Rotorwright still running?';

const isWireError = (answer: unknown): answer is WireError =>
  typeof answer === 'object' && answer !== null && 'error' in answer && typeof answer.error === 'object' && answer.error !== null && 'message' in answer.error;

const at = (id: string): string => `/machines/${encodeURIComponent(id)}`;

export const api = {
  machines: () => call<readonly MachineOnBoard[]>('/machines'),
  create: (text: string) => call<MachineOnBoard>('/machines', 'POST', json({ text })),
  save: (id: string, text: string, revision: string) => call<MachineOnBoard>(at(id), 'PUT', json({ text, revision })),
  record: (id: string, entries: readonly NewEntry[]) => call<readonly Entry[]>(`${at(id)}/entries`, 'POST', json({ entries })),
  keepPhoto: ({ sha256, picture }: Photo) => call<unknown>(`/photos/${sha256}`, 'PUT', { type: picture.type, content: picture }),
  remove: (id: string) => call<void>(at(id), 'DELETE'),
};
