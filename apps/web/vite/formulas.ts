import path from 'node:path';
import temml from 'temml';
import { runnerImport, type Plugin } from 'vite';

interface Catalogue {
  readonly catalogue: ReadonlyMap<string, { readonly formulas: readonly { readonly tex: string }[]; readonly inputs: Readonly<Record<string, unknown>>; readonly outputs: Readonly<Record<string, unknown>> }>;
}

const resolved = '\0virtual:formulas';
const sources = path.resolve(import.meta.dirname, '../../../packages/calculations/src/index.ts');

/** Sets the formulas and symbols of the catalogue as MathML while the pages are built: `virtual:formulas` maps TeX to MathML. */
export function formulas(): Plugin {
  return {
    name: 'formulas',
    resolveId: { filter: { id: /^virtual:formulas$/ }, handler: () => resolved },
    load: {
      filter: { id: /^\0virtual:formulas$/ },
      async handler() {
        const { module, dependencies } = await runnerImport<Catalogue>(sources, { resolve: { conditions: ['source'] } });
        for (const dependency of dependencies) this.addWatchFile(dependency);
        const block: Record<string, string> = {};
        const inline: Record<string, string> = {};
        for (const calculation of module.catalogue.values()) {
          for (const { tex } of calculation.formulas) block[tex] = set(tex, true);
          for (const symbol of symbolsIn([calculation.inputs, calculation.outputs])) inline[symbol] = set(symbol, false);
        }
        return `export const block = ${JSON.stringify(block)};\nexport const inline = ${JSON.stringify(inline)};\n`;
      },
    },
  };
}

/**
 * Inline styles are dropped: the content policy of the pages refuses them, and what they say stands in the style sheet.
 *
 * @throws ParseError of temml when the TeX is wrong: the build stops rather than show it
 */
const set = (tex: string, displayMode: boolean): string => temml.renderToString(tex, { displayMode, throwOnError: true, annotate: false }).replaceAll(/ style="[^"]*"/g, '');

function symbolsIn(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => (key === 'symbol' && typeof inner === 'string' ? [inner] : symbolsIn(inner)));
}
