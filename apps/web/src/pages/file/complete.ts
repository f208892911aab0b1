import { completions } from '@rotorwright/machine';
import type { Offered } from './editor.ts';

/** What fits at a place of the text, in the editor's terms. */
export function offered(text: string, offset: number): Offered | undefined {
  const { from, to, options } = completions(text, offset);
  if (options.length === 0) return undefined;
  return { from, to, options: options.map((one) => ({ label: one.label, detail: one.about, type: one.kind, apply: one.insert })) };
}
