import type { Terminal } from '../terminal/index.ts';
import type { Status } from '../wrong-input.ts';

export type Arguments = readonly (string | undefined)[];

/** What a command does, and the status that it ends with. */
export type Action<Options> = (terminal: Terminal, args: Arguments, options: Options) => Promise<Status>;

/** Makes of an action what commander calls: arguments one by one, then the options, then the command. */
export type Act = <Options>(action: Action<Options>) => (...given: unknown[]) => Promise<void>;
