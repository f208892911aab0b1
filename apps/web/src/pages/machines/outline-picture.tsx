import { showQuantity } from '@rotorwright/units';
import type { ReactNode } from 'react';
import type { Outline } from './outline.ts';

/** @param scale  px a mm, the same for all machines of the sheet */
export function OutlinePicture({ outline, name, scale }: { readonly outline: Outline | undefined; readonly name: string; readonly scale: number }): ReactNode {
  if (!outline) return <p className="soft small outline-none">No outline: the file gives no main rotor diameter.</p>;
  const width = outline.width * scale;
  const top = 24;
  const height = outline.height * scale + top;
  const disc = outline.mainDiameter! * scale;
  const words = `Ø ${showQuantity(outline.mainDiameter! / 1000, 'mm', { decimals: 0 })}`;
  return (
    <svg className="outline" viewBox={`-8 0 ${(width + 12).toFixed(1)} ${height.toFixed(1)}`} style={{ maxWidth: width + 12 }} role="img" aria-label={`Outline of ${name} from the left, main rotor ${words.slice(2)}${outline.tailDiameter === undefined ? '' : `, tail rotor ${showQuantity(outline.tailDiameter / 1000, 'mm', { decimals: 0 })}`}`}>
      <g transform={`translate(0 ${height.toFixed(1)}) scale(${scale.toFixed(5)} ${(-scale).toFixed(5)})`}>
        {outline.paths.map(({ d, line }) => <path key={d} className={line} d={d} vectorEffect="non-scaling-stroke" />)}
      </g>
      <g className="dimension" aria-hidden="true">
        <path d={`M0 20V${top + 22}M${disc.toFixed(1)} 20V${top + 22}M0 14H${disc.toFixed(1)}`} />
        <path className="arrow" d={`M0 14l10 -2.5v5zM${disc.toFixed(1)} 14l-10 -2.5v5z`} />
        <text x={disc / 2} y={10} textAnchor="middle">{words}</text>
      </g>
    </svg>
  );
}
