import { randomBytes } from 'node:crypto';
import type { MiddlewareHandler } from 'hono';
import { AnswerError } from './answer-error.ts';

/** What each request carries along: the nonce of its page. */
export interface Surroundings {
  readonly Variables: { nonce: string };
}

const loopbackNames = ['127.0.0.1', 'localhost', '[::1]'];
const reads = new Set(['GET', 'HEAD']);

/**
 * Lets in only requests that a page of this server, or a program on this machine, can have made.
 * A foreign page can reach a loopback server in two ways: by a name of its own that it points at 127.0.0.1,
 * which the Host header betrays, and by a form or fetch across origins, which Origin and Content-Type betray.
 */
export const onlyOurOwn: MiddlewareHandler<Surroundings> = async (context, next) => {
  const { method } = context.req;
  const host = context.req.header('host') ?? '';
  if (!loopbackNames.includes(host.replace(/:\d+$/, '').toLowerCase())) {
    throw new AnswerError(421, 'host/foreign', `This server answers to ${loopbackNames.join(', ')} only, not to “${host.slice(0, 100)}”.`);
  }
  if (!reads.has(method)) {
    const origin = context.req.header('origin');
    if (origin !== undefined && origin !== `http://${host}`) throw new AnswerError(403, 'origin/foreign', `Changes are taken from this server's own pages only, not from ${origin.slice(0, 100)}.`);
    const site = context.req.header('sec-fetch-site');
    if (site !== undefined && site !== 'same-origin' && site !== 'none') throw new AnswerError(403, 'origin/foreign', 'Changes are taken from this server\'s own pages only.');
  }
  await next();
};

/** Stylesheets made by the page itself (the editor's) carry the nonce; nothing inline runs without. */
const policy = (nonce: string): string =>
  [
    `default-src 'self'`,
    `script-src 'self'`,
    `style-src 'self' 'nonce-${nonce}'`,
    `img-src 'self' data: blob:`,
    `font-src 'self'`,
    `connect-src 'self'`,
    `worker-src 'self'`,
    `object-src 'none'`,
    `base-uri 'none'`,
    `form-action 'self'`,
    `frame-ancestors 'none'`,
  ].join('; ');

export const securityHeaders: MiddlewareHandler<Surroundings> = async (context, next) => {
  const nonce = randomBytes(16).toString('base64');
  context.set('nonce', nonce);
  await next();
  context.header('Content-Security-Policy', policy(nonce));
  context.header('X-Content-Type-Options', 'nosniff');
  context.header('Referrer-Policy', 'no-referrer');
  context.header('Cross-Origin-Opener-Policy', 'same-origin');
  context.header('Cross-Origin-Resource-Policy', 'same-origin');
};
