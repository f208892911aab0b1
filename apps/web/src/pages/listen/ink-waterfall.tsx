import type { Waterfall } from '@rotorwright/signals';
import { useEffect, useRef, type ReactNode } from 'react';
import { useTheme } from '../../sheet/theme.ts';
import { left, right } from './spectrum-curve.tsx';

export interface InkWaterfallProps {
  readonly waterfall: Waterfall;
  /** Hz up to which it is drawn, and dB over noise at which the ink is full. */
  readonly highest: number;
  readonly most: number;
  /** Length of the recording, s. */
  readonly seconds: number;
  /** Upper edge, height, and width of the whole with the scales, px. */
  readonly top: number;
  readonly height: number;
  readonly width: number;
}

/** How loud each frequency was as time went on, downwards: the louder, the more ink. */
export function InkWaterfall({ waterfall, highest, most, seconds, top, height, width }: InkWaterfallProps): ReactNode {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [theme] = useTheme();
  useEffect(() => {
    if (canvas.current) draw(canvas.current, waterfall, highest, most, height);
  }, [waterfall, highest, most, height, theme]);
  const { binWidth, bins, step, first, rows } = waterfall;
  const perHz = Math.max(1, width - left - right) / highest;
  const perSecond = height / seconds;
  const drawn = Math.min(bins, Math.floor(highest / binWidth) + 1);
  return (
    <div className="waterfall" style={{ top, left, width: Math.max(1, width - left - right), height }} aria-hidden="true">
      <canvas ref={canvas} style={{ left: -(binWidth * perHz) / 2, top: (first - step / 2) * perSecond, width: drawn * binWidth * perHz, height: rows * step * perSecond }} />
    </div>
  );
}

function draw(canvas: HTMLCanvasElement, { binWidth, bins, rows, power }: Waterfall, highest: number, most: number, height: number): void {
  const columns = Math.min(bins, Math.floor(highest / binWidth) + 1);
  // Not more rows than the screen has: those that fall together give their mean.
  const together = Math.max(1, Math.floor(rows / (2 * height)));
  const lines = Math.ceil(rows / together);
  const picture = new ImageData(columns, lines);
  for (let line = 0; line < lines; line += 1) {
    const until = Math.min(rows, (line + 1) * together);
    for (let column = 0; column < columns; column += 1) {
      let sum = 0;
      for (let row = line * together; row < until; row += 1) sum += power[row * bins + column]!;
      const level = 10 * Math.log10(sum / (until - line * together));
      picture.data[4 * (line * columns + column) + 3] = Math.round(255 * Math.min(1, Math.max(0, level / most)));
    }
  }
  canvas.width = columns;
  canvas.height = lines;
  const pen = canvas.getContext('2d');
  if (pen === null) return;
  pen.putImageData(picture, 0, 0);
  // The ink of the theme, where there is any.
  pen.globalCompositeOperation = 'source-in';
  pen.fillStyle = getComputedStyle(canvas).color;
  pen.fillRect(0, 0, columns, lines);
}
