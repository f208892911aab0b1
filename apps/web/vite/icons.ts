import { deflateSync } from 'node:zlib';

interface Icon {
  readonly file: string;
  /** px */
  readonly size: number;
  /** Width of the mark over that of the icon: a system that cuts icons to a circle leaves the inner 80 %. */
  readonly share: number;
}

/** What systems ask for when a page is put on the home screen. */
export const icons = {
  small: { file: 'icon-192.png', size: 192, share: 1 },
  large: { file: 'icon-512.png', size: 512, share: 1 },
  cut: { file: 'icon-cut-512.png', size: 512, share: 0.76 },
  touch: { file: 'icon-180.png', size: 180, share: 0.86 },
} as const satisfies Readonly<Record<string, Icon>>;

const paper = [0xfa, 0xf6, 0xea] as const;
const ink = [0x1e, 0x23, 0x28] as const;

/** The mark of `public/mark.svg` as a PNG: a ring, four spokes across it and a hub, in a square of 24 units. */
export function iconPng({ size, share }: Icon): Uint8Array {
  const unit = 24 / (size * share);
  const rows = Array.from({ length: size }, (_, row) => [
    0, // PNG: this row is not filtered
    ...Array.from({ length: size }, (__, column) => {
      const covered = clamp(0.5 - distance((column + 0.5 - size / 2) * unit, (row + 0.5 - size / 2) * unit) / unit);
      return paper.map((light, channel) => Math.round(light + covered * ((ink[channel] ?? 0) - light)));
    }).flat(),
  ]);
  return png(size, Uint8Array.from(rows.flat()));
}

/** From the edge of the mark, negative inside; from its centre, in units of the mark. */
function distance(x: number, y: number): number {
  const radius = Math.hypot(x, y);
  const [along, across] = Math.abs(x) > Math.abs(y) ? [Math.abs(x), Math.abs(y)] : [Math.abs(y), Math.abs(x)];
  const ring = Math.abs(radius - 7.5) - 1;
  const spoke = Math.max(across - 1, 5 - along, along - 10.5);
  return Math.min(ring, spoke, radius - 2.6);
}

const clamp = (value: number): number => Math.min(1, Math.max(0, value));

/** RGB, 8 bits a channel. Source: PNG specification, W3C, third edition, clauses 5 and 11. */
function png(size: number, rows: Uint8Array): Uint8Array {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), chunk('IHDR', header), chunk('IDAT', deflateSync(rows, { level: 9 })), chunk('IEND', Buffer.alloc(0))]);
}

function chunk(name: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  framed.set(body, 4);
  framed.writeUInt32BE(crc(body), body.length + 4);
  return framed;
}

/** CRC-32 of the PNG specification, annex D. */
function crc(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) {
    rest ^= byte;
    for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return (rest ^ 0xffffffff) >>> 0;
}
