import type { Balance, BallastPlace, Movable, Spun } from '../model/balance.ts';
import { joinPath } from '../read/tree.ts';
import type { ReadsAs } from '../schema/field.ts';
import type { balanceField } from '../schema/sections/balance.ts';
import { windowOf } from './drive.ts';
import { listPath } from './joint.ts';
import type { Expansion } from './names.ts';
import { resolve, resolveOne } from './resolve.ts';
import { compact, titleFrom } from './words.ts';

type Written = ReadsAs<typeof balanceField>;

export function expandBalance(written: Written | undefined, expansion: Expansion): Balance {
  const movable = new Map<string, Movable>();
  const ballast = new Map<string, BallastPlace>();
  const spun = new Map<string, Spun>();
  for (const [id, one] of Object.entries(written?.movable ?? {})) {
    const path = joinPath('balance.movable', id);
    const part = one.part === undefined ? undefined : resolveOne(expansion, one.part, ['part'], joinPath(path, 'part'));
    const along = windowOf(one.along);
    if (part !== undefined && along) movable.set(id, { id, path, part, along });
  }
  for (const [id, { title, at }] of Object.entries(written?.ballast ?? {})) {
    if (at) ballast.set(id, { id, path: joinPath('balance.ballast', id), title: title ?? titleFrom(id), at });
  }
  for (const [id, one] of Object.entries(written?.spun ?? {})) {
    const path = joinPath('balance.spun', id);
    const on = one.on === undefined ? undefined : resolveOne(expansion, one.on, ['shaft'], joinPath(path, 'on'));
    const parts = (one.parts ?? []).flatMap((ref, index) => resolve(expansion, ref, ['part'], 'each', listPath(joinPath(path, 'parts'), index, expansion))?.ids ?? []);
    if (on !== undefined && parts.length > 0) spun.set(id, compact({ id, path, title: one.title ?? titleFrom(id), on, parts, grade: one.grade, radius: one.radius, places: one.places }));
  }
  return { movable, ballast, spun };
}
