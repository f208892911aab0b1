import { useQuery } from '@tanstack/react-query';
import { memo, type ReactNode } from 'react';

/** A formula or symbol of the catalogue, set as MathML when the pages were built. The TeX must be the catalogue's own text. */
export const Formula = memo(function Formula({ tex, display = false }: { readonly tex: string; readonly display?: boolean }): ReactNode {
  const { data } = useQuery({ queryKey: ['formulas'], queryFn: () => import('virtual:formulas'), staleTime: Infinity });
  const markup = data && (display ? data.block : data.inline)[tex];
  if (markup === undefined) return <span className="formula">{data ? <code>{tex}</code> : null}</span>;
  // The markup was made by our own build from our own catalogue.
  return <span className="formula" dangerouslySetInnerHTML={{ __html: markup }} />;
});
