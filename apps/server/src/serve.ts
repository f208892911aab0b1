import type { Server } from 'node:http';
import { createAdaptorServer } from '@hono/node-server';
import { Home } from './home/index.ts';
import { createApp } from './http/app.ts';
import { Live } from './live.ts';

export interface ServeOptions {
  /** 0 for any free port. Not given: 8420, or the next free one. */
  readonly port?: number | undefined;
  /** Folder of machines and logbook; made where there is none. */
  readonly home: string;
  /** Folder of the built pages. */
  readonly web: string;
  /** Folder of demo machines for a fresh home; the project's own when not given. */
  readonly demos?: string;
}

export interface Serving {
  readonly url: string;
  readonly close: () => Promise<void>;
}

/** The server cannot start. The message is a sentence for the user. */
export class ServeError extends Error {
  override readonly name = 'ServeError';
}

/** Nobody is asked who he is yet, so nobody but this machine is let in. */
const loopback = '127.0.0.1';
const firstPort = 8420;
const portsTried = 20;

/**
 * Serves the pages and the API of one home on this machine.
 *
 * @throws ServeError when no port is to be had
 * @throws HomeError, LogStoreError when the home cannot be used
 */
export async function serve(options: ServeOptions): Promise<Serving> {
  const home = new Home(options.home, options.demos === undefined ? {} : { demos: options.demos });
  const live = new Live(home);
  const server = createAdaptorServer({ fetch: createApp(home, live, options.web).fetch }) as Server;
  try {
    const port = await listenOn(server, options.port);
    return {
      url: `http://${loopback}:${port}/`,
      close: async () => {
        live.close();
        await new Promise<void>((resolve) => {
          server.close(() => resolve());
          server.closeAllConnections();
        });
        home.close();
      },
    };
  } catch (error) {
    home.close();
    throw error;
  }
}

async function listenOn(server: Server, wanted: number | undefined): Promise<number> {
  if (wanted !== undefined) {
    if (await listens(server, wanted)) return portOf(server);
    throw new ServeError(`Port ${wanted} is in use by another program. Choose another with --port N, or leave it out.`);
  }
  for (let port = firstPort; port < firstPort + portsTried; port += 1) if (await listens(server, port)) return port;
  throw new ServeError(`Ports ${firstPort} to ${firstPort + portsTried - 1} are all in use. Choose another with --port N.`);
}

function portOf(server: Server): number {
  const address = server.address();
  if (address === null || typeof address === 'string') throw new ServeError('The server has no port.');
  return address.port;
}

/** @returns false when the port is taken */
function listens(server: Server, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException) => {
      server.off('listening', listening);
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(new ServeError(`Cannot listen on port ${port}: ${error.code === 'EACCES' ? 'the system does not allow it; choose one above 1023' : error.message}.`, { cause: error }));
    };
    const listening = () => {
      server.off('error', failed);
      resolve(true);
    };
    server.once('error', failed);
    server.once('listening', listening);
    server.listen(port, loopback);
  });
}
