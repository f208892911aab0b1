import { useId, type ReactNode } from 'react';
import type { PlacedDrawing } from './place-drawing.ts';
import type { Point, Primitive } from './primitives.ts';

export interface DrawingViewProps {
  readonly drawing: PlacedDrawing;
  /** What the drawing shows, for readers who do not see it; the parts list beside it is its text twin. */
  readonly label: string;
}

const path = (points: readonly Point[]): string => points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/** A placed drawing as SVG: two line weights, hatching as patterns, balloons with figures. */
export function DrawingView({ drawing, label }: DrawingViewProps): ReactNode {
  const id = useId().replaceAll(':', '');
  return (
    <svg className="drawing" role="img" aria-label={label} viewBox={`0 0 ${drawing.width.toFixed(0)} ${drawing.height.toFixed(0)}`} width={drawing.width} height={drawing.height}>
      <defs>
        {hatchKinds.map(({ name, turn, gap }) => (
          <pattern key={name} id={`${id}-${name}`} width={gap} height={gap} patternUnits="userSpaceOnUse" patternTransform={`rotate(${turn === 1 ? 45 : -45})`}>
            <line className="hatch" x1="0" y1="0" x2="0" y2={gap} />
          </pattern>
        ))}
        <marker id={`${id}-tip`} viewBox="0 0 10 6" refX="9.5" refY="3" markerWidth="10" markerHeight="6" markerUnits="userSpaceOnUse" orient="auto"><path className="tip" d="M0 0.5L10 3L0 5.5Z" /></marker>
        <marker id={`${id}-load`} viewBox="0 0 16 10" refX="15" refY="5" markerWidth="16" markerHeight="10" markerUnits="userSpaceOnUse" orient="auto"><path className="tip act" d="M0 0L16 5L0 10Z" /></marker>
      </defs>
      {drawing.marks.map((mark, index) => <Mark key={index} mark={mark} id={id} />)}
    </svg>
  );
}

const hatchKinds = [
  { name: 'rise', turn: 1, gap: 8 }, { name: 'fall', turn: -1, gap: 8 },
  { name: 'rise-close', turn: 1, gap: 5 }, { name: 'fall-close', turn: -1, gap: 5 },
] as const;

function Mark({ mark, id }: { readonly mark: Primitive; readonly id: string }): ReactNode {
  switch (mark.shape) {
    case 'area': {
      const outline = `${path(mark.points)}Z`;
      const hatch = mark.hatch && `url(#${id}-${mark.hatch.turn === 1 ? 'rise' : 'fall'}${mark.hatch.close ? '-close' : ''})`;
      return (
        <g>
          <path className={`fill-${mark.fill} ${hatch ? 'bare' : mark.weight}`} d={outline} />
          {hatch && <path className={mark.weight} d={outline} fill={hatch} />}
        </g>
      );
    }
    case 'line': {
      const marker = mark.arrow && `url(#${id}-${mark.act ? 'load' : 'tip'})`;
      return <path className={`fill-none ${mark.weight} ${mark.dash ?? ''} ${mark.act ? 'act' : ''}`} d={path(mark.points)} markerEnd={marker} markerStart={mark.arrow === 'both' ? marker : undefined} />;
    }
    case 'circle':
      return <circle className={`fill-${mark.fill} ${mark.weight}`} cx={mark.centre[0]} cy={mark.centre[1]} r={mark.radius} />;
    case 'text':
      return <text className={mark.act ? 'act' : undefined} x={mark.at[0]} y={mark.at[1]} fontSize={mark.size} textAnchor={mark.anchor}>{mark.text}</text>;
    case 'balloon':
      return (
        <g className={mark.active ? 'balloon active' : 'balloon'}>
          <circle cx={mark.centre[0]} cy={mark.centre[1]} r={mark.radius} />
          <text x={mark.centre[0]} y={mark.centre[1] + mark.radius * 0.37} fontSize={mark.radius * 1.05} textAnchor="middle">{mark.number}</text>
        </g>
      );
  }
}
