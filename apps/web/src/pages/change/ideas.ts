import type { Edit } from '@rotorwright/machine';

/** A change that is thought over: entries to write (or to take out), or one of the file's variants. */
export type Idea = { readonly variant: string } | { readonly edits: readonly Edit[] };

/** As many as fit beside today's machine. */
export const mostIdeas = 4;

/** Ideas stand in the address, so that a link carries them and Back takes the last one away. */
export interface Ideas {
  readonly ideas: readonly Idea[];
  /** Which of them the sheet shows. */
  readonly at: number;
}

export function readIdeas(search: string): Ideas {
  const query = new URLSearchParams(search);
  const ideas = query.getAll('idea').slice(0, mostIdeas).flatMap((text) => readIdea(text) ?? []);
  const at = Number(query.get('at') ?? '1') - 1;
  return { ideas, at: Number.isInteger(at) && at >= 0 && at < ideas.length ? at : 0 };
}

export function writeIdeas({ ideas, at }: Ideas): string {
  const query = new URLSearchParams(ideas.map((idea) => ['idea', keyOf(idea)]));
  if (at > 0) query.set('at', String(at + 1));
  return query.size === 0 ? '' : `?${query.toString()}`;
}

/** The same text for the same idea. */
export function keyOf(idea: Idea): string {
  if ('variant' in idea) return `variant:${idea.variant}`;
  return idea.edits.map(({ path, value }) => (value === undefined ? path : `${path}=${value.replaceAll('%', '%25').replaceAll(';', '%3B')}`)).join(';');
}

function readIdea(text: string): Idea | undefined {
  if (text.startsWith('variant:')) return { variant: text.slice('variant:'.length) };
  const edits = text.split(';').filter((each) => each.trim() !== '').map((each): Edit => {
    const [, path = each, value] = /^([^=]*)=(.*)$/su.exec(each) ?? [];
    return { path: path.trim(), ...(value === undefined ? {} : { value: value.replaceAll('%3B', ';').replaceAll('%25', '%') }) };
  });
  return edits.length === 0 ? undefined : { edits };
}

/** The idea with one more entry; a second word on the same entry replaces the first. */
export const withEdit = (idea: Idea | undefined, edit: Edit): Idea => ({ edits: [...(idea !== undefined && 'edits' in idea ? idea.edits.filter(({ path }) => path !== edit.path) : []), edit] });
