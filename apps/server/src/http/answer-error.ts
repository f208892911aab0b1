import type { MachineOnBoard, WireError } from '@rotorwright/logbook';

/** A request that cannot be answered as asked. Becomes a `WireError`. */
export class AnswerError extends Error {
  readonly status: 400 | 403 | 404 | 405 | 409 | 413 | 415 | 421 | 422;
  readonly code: string;
  readonly details: readonly string[] | undefined;
  readonly current: MachineOnBoard | undefined;

  constructor(status: AnswerError['status'], code: string, message: string, more: { readonly details?: readonly string[]; readonly current?: MachineOnBoard } = {}) {
    super(message);
    this.status = status;
    this.code = code;
    this.details = more.details;
    this.current = more.current;
  }

  get wire(): WireError {
    return {
      error: { code: this.code, message: this.message, ...(this.details !== undefined && { details: this.details }) },
      ...(this.current !== undefined && { current: this.current }),
    };
  }
}
