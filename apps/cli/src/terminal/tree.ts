import { wrap } from './table.ts';

/** Breaks a line of a tree so that its rest hangs under its text, and the trunk runs on. */
export function branch(line: string, width: number): string {
  const head = /^[\s│├└─]*/.exec(line)?.[0] ?? '';
  const trunk = `${head.replaceAll('├', '│').replaceAll(/[└─]/g, ' ')}  `;
  const [first = '', ...rest] = wrap(line.slice(head.length), Math.max(20, width - trunk.length));
  return [head + first, ...rest.map((each) => trunk + each)].map((each) => each.trimEnd()).join('\n');
}
