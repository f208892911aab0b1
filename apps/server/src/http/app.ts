import { Hono } from 'hono';
import { LogStoreError } from '@rotorwright/logbook/store';
import type { WireError } from '@rotorwright/logbook';
import type { Home } from '../home/index.ts';
import type { Live } from '../live.ts';
import { AnswerError } from './answer-error.ts';
import { api } from './api.ts';
import { onlyOurOwn, securityHeaders, type Surroundings } from './guard.ts';
import { pages } from './pages.ts';

/** Everything that the server answers. */
export function createApp(home: Home, live: Live, web: string): Hono<Surroundings> {
  const app = new Hono<Surroundings>();
  app.use(securityHeaders, onlyOurOwn);
  app.route('/api', api(home, live));
  app.get('*', pages(web));
  app.notFound((context) => context.json({ error: { code: 'method/unknown', message: `${context.req.method} is not answered here.` } } satisfies WireError, 405));
  app.onError((error, context) => {
    if (error instanceof AnswerError) return context.json(error.wire, error.status);
    // What follows is trouble of ours, not of the request: the log has it whole, the answer says no more than helps.
    process.stderr.write(`${context.req.method} ${context.req.path}: ${error.stack ?? error.message}\n`);
    const message = error instanceof LogStoreError ? error.message : 'The server ran into trouble of its own; its output says more. Nothing that was acknowledged is lost.';
    return context.json({ error: { code: error instanceof LogStoreError ? `logbook/${error.problem}` : 'server/trouble', message } } satisfies WireError, 500);
  });
  return app;
}
