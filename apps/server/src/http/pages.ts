import { createHash } from 'node:crypto';
import { readFileSync, statSync } from 'node:fs';
import path from 'node:path';
import type { Context } from 'hono';
import { AnswerError } from './answer-error.ts';
import type { Surroundings } from './guard.ts';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.map': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.txt': 'text/plain; charset=utf-8',
};

/** Stands in index.html where the page's nonce belongs. */
const noncePlaceholder = 'csp-nonce-placeholder';

/** Answers with files of the built pages; every path that is no file is a page, and the pages find their own way from index.html. */
export function pages(web: string) {
  const root = path.resolve(web);

  /** @returns the file's path, or undefined when the request leads to none, or out of the folder */
  const fileFor = (requested: string): string | undefined => {
    if (requested.includes('\0') || requested.includes('\\')) return undefined;
    const file = path.join(root, requested);
    if (!file.startsWith(root + path.sep)) return undefined;
    return statSync(file, { throwIfNoEntry: false })?.isFile() === true ? file : undefined;
  };

  return (context: Context<Surroundings>): Response => {
    const requested = decoded(context.req.path);
    const file = fileFor(requested);
    if (file !== undefined && file !== path.join(root, 'index.html')) return sendFile(context, file, requested.startsWith('/assets/'));
    const wantsPage = requested === '/' || (context.req.header('accept') ?? '').includes('text/html') || !path.posix.basename(requested).includes('.');
    if (requested.startsWith('/assets/') || !wantsPage) throw new AnswerError(404, 'file/unknown', `There is no file ${requested.slice(0, 200)}.`);
    const page = fileFor('/index.html');
    if (page === undefined) throw new AnswerError(404, 'pages/unbuilt', 'The pages have not been built. npm start builds them.');
    context.header('Cache-Control', 'no-cache');
    return context.html(readFileSync(page, 'utf8').replaceAll(noncePlaceholder, context.get('nonce')));
  };
}

function decoded(requested: string): string {
  try {
    return decodeURIComponent(requested);
  } catch {
    throw new AnswerError(400, 'path/malformed', 'The path holds a percent sign that starts no character.');
  }
}

/** Files whose name holds the hash of their content never change; the rest is asked for again by its tag. */
function sendFile(context: Context<Surroundings>, file: string, immutable: boolean): Response {
  const bytes = readFileSync(file);
  const tag = `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 27)}"`;
  context.header('ETag', tag);
  context.header('Cache-Control', immutable ? 'public, max-age=31536000, immutable' : 'no-cache');
  if (context.req.header('if-none-match') === tag) return context.body(null, 304);
  return context.body(bytes, 200, { 'Content-Type': types[path.extname(file)] ?? 'application/octet-stream' });
}
