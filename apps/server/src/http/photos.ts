import type { Context } from 'hono';
import { isPhotoName, photoProblem, type Home } from '../home/index.ts';
import { AnswerError } from './answer-error.ts';
import type { Surroundings } from './guard.ts';

type Asked = Context<Surroundings, '/photos/:sha256'>;

/** A photo never changes under its name: whoever has it need not ask again. */
export function sendPhoto(context: Asked, home: Home): Response {
  const sha256 = nameIn(context);
  const bytes = home.photos.read(sha256);
  if (bytes === undefined) throw new AnswerError(404, 'photo/unknown', `There is no photo ${sha256} here.`);
  return context.body(bytes, 200, { 'Content-Type': 'image/jpeg', 'Cache-Control': 'private, max-age=31536000, immutable' });
}

/** Sending the same photo twice keeps it once. */
export async function takePhoto(context: Asked, home: Home): Promise<Response> {
  const sha256 = nameIn(context);
  if (!/^image\/jpeg\s*(;|$)/i.test(context.req.header('content-type') ?? '')) throw new AnswerError(415, 'body/type', 'A photo must be a JPEG picture, sent as image/jpeg.');
  const bytes = new Uint8Array(await context.req.arrayBuffer());
  const problem = photoProblem(sha256, bytes);
  if (problem !== undefined) throw new AnswerError(422, 'photo/refused', `The photo was not kept. ${problem}`);
  return context.json({ photo: sha256 }, home.photos.keep(sha256, bytes) ? 201 : 200);
}

function nameIn(context: Asked): string {
  const name = context.req.param('sha256');
  if (!isPhotoName(name)) throw new AnswerError(400, 'photo/name', `A photo is named by its SHA-256, 64 hex digits in lower case, not by “${name.slice(0, 80)}”.`);
  return name;
}
