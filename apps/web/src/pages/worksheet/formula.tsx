import type { ReactNode } from 'react';
import { block, inline } from 'virtual:formulas';

/** A symbol of the catalogue, set as mathematics; as it is written where it was not set. */
export function Symbol({ tex }: { readonly tex: string }): ReactNode {
  const math = inline[tex];
  // The MathML was made from the catalogue's own TeX while the pages were built: nothing of it comes from outside.
  return math === undefined ? <i>{tex}</i> : <span className="symbol" dangerouslySetInnerHTML={{ __html: math }} />;
}

/** A formula on a line of its own. */
export function Formula({ tex }: { readonly tex: string }): ReactNode {
  const math = block[tex];
  return math === undefined ? <code>{tex}</code> : <div className="formula" dangerouslySetInnerHTML={{ __html: math }} />;
}
