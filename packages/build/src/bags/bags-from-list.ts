import { formatFinding, readMachine } from '@rotorwright/machine';

/** The file with the bags in it, or what is wrong with the list, by line. */
export type ReadList = { readonly ok: true; readonly text: string; readonly bags: number; readonly lines: number } | { readonly ok: false; readonly problems: readonly string[] };

const columns = ['part', 'count', 'bag'] as const;
const most = 10_000;

/**
 * Puts a list of parts into a machine file as its bags; the rest of the file stays as it is.
 *
 * @param text  the machine file; it must have no `bags:` yet
 * @param list  comma-separated values (RFC 4180): a first line `part,count,bag`, in any order, then one line for each part
 */
export function bagsFromList(text: string, list: string): ReadList {
  const before = readMachine(text);
  if (before.machine === undefined) return { ok: false, problems: ['The machine file cannot be read. Mend it first.'] };
  if (before.machine.bags.size > 0 || /^bags\s*:/mu.test(text)) return { ok: false, problems: ['The file has bags: already. Take that section out first, or write the new lines into it.'] };
  const rows = readRows(list);
  const header = (rows[0]?.fields ?? []).map((name) => name.trim().toLowerCase());
  if (columns.some((name) => !header.includes(name))) return { ok: false, problems: [`Line 1 must name the columns ${columns.join(', ')}; it is: ${header.join(', ') || 'empty'}.`] };

  const problems: string[] = [];
  const bags = new Map<string, { readonly title: string; readonly holds: Map<string, number> }>();
  const { parts, joints, thingOf } = before.machine;
  for (const { line, fields } of rows.slice(1)) {
    const [part, count, bag] = columns.map((name) => (fields[header.indexOf(name)] ?? '').trim()) as [string, string, string];
    const id = thingOf.get(part) ?? part;
    if (!parts.has(id) && !joints.has(id)) problems.push(`Line ${line}: the file has no part or joint “${part.slice(0, 80)}”. Write its id, such as ${parts.keys().next().value ?? 'tail-case/post'}.`);
    if (!/^\d{1,5}$/u.test(count) || Number(count) < 1 || Number(count) > most) problems.push(`Line ${line}: the count must be a whole number from 1 to ${most}, got “${count.slice(0, 40)}”.`);
    const key = keyOf(bag);
    if (key === '') problems.push(`Line ${line}: the bag has no name.`);
    const known = bags.get(key) ?? { title: bag, holds: new Map<string, number>() };
    bags.set(key, known);
    if (known.holds.has(part)) problems.push(`Line ${line}: ${part} stands in bag ${bag} twice. Add the two counts up.`);
    known.holds.set(part, Number(count));
  }
  if (rows.length < 2) problems.push('The list has no line after its first.');
  if (problems.length > 0) return { ok: false, problems };

  const section = [...bags].map(([key, { title, holds }]) => `  ${key}:\n    title: ${JSON.stringify(title)}\n    holds:\n${[...holds].map(([part, count]) => `      ${part}: ${count}\n`).join('')}`).join('');
  const after = `${text}${text === '' || text.endsWith('\n') ? '' : '\n'}bags:\n${section}`;
  const read = readMachine(after);
  // What cannot be read back as written is not written: a file in one line of braces takes no section at its end.
  const made = [...(read.machine?.bags.values() ?? [])].reduce((sum, { holds }) => sum + holds.length, 0);
  if (made !== rows.length - 1) return { ok: false, problems: ['The bags cannot be put at the end of this file.', ...read.findings.filter(({ severity }) => severity === 'error').slice(0, 5).map((finding) => formatFinding(finding, 'machine file'))] };
  return { ok: true, text: after, bags: bags.size, lines: made };
}

/** "Bag 3: tail" becomes `bag-3-tail`. */
const keyOf = (name: string): string => name.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-').replaceAll(/^-|-$/gu, '');

/** Records with the line on which each begins; quotes as RFC 4180 has them; empty lines are passed over. */
function readRows(list: string): readonly { readonly line: number; readonly fields: readonly string[] }[] {
  const rows: { line: number; fields: string[] }[] = [];
  let line = 1;
  let row = { line, fields: [''] };
  let quoted = false;
  const end = (): void => {
    if (row.fields.some((field) => field.trim() !== '')) rows.push(row);
    row = { line, fields: [''] };
  };
  for (const [sign] of list.replace(/^\uFEFF/u, '').matchAll(/""|\r\n|[^]/gu)) {
    const last = row.fields.length - 1;
    if (quoted) {
      if (sign === '"') quoted = false;
      else row.fields[last] += sign === '""' ? '"' : sign;
      if (sign.includes('\n')) line += 1;
    } else if (sign === '"') quoted = true;
    else if (sign === ',' || sign === ';' || sign === '\t') row.fields.push('');
    else if (sign === '\n' || sign === '\r\n') {
      line += 1;
      end();
    } else if (sign !== '""') row.fields[last] += sign;
  }
  end();
  return rows;
}
