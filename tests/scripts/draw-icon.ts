// Draws client/media/linewright.png: node tests/scripts/draw-icon.ts
import { writeFile } from 'node:fs/promises';
import { deflateSync } from 'node:zlib';

type Colour = readonly [red: number, green: number, blue: number];

const size = 128;
const ground: Colour = [0x1f, 0x3a, 0x44];
const rope: Colour = [0xf2, 0xa5, 0x41];
const lay: Colour = [0xb8, 0x6a, 0x1a];

/** Distance from the middle of a hexagon that stands on a corner, measured so that its edge is at 1. */
const inHexagon = (x: number, y: number): number => {
  const across = Math.abs(x);
  const up = Math.abs(y);
  return Math.max(across, across / 2 + (up * Math.sqrt(3)) / 2);
};

/** A line coiled on a drum: three turns, the last of which leaves the coil to the right. */
function colourAt(x: number, y: number): { colour: Colour; alpha: number } {
  if (1 < inHexagon(x, y)) return { colour: ground, alpha: 0 };
  const radius = Math.hypot(x, y);
  const angle = (Math.atan2(y, x) + 2 * Math.PI) % (2 * Math.PI);
  const pitch = 0.19;
  const half = 0.068;
  const turn = Math.round((radius - 0.16) / pitch - angle / (2 * Math.PI));
  const middle = 0.16 + pitch * (turn + angle / (2 * Math.PI));
  const onCoil = 0 <= turn && turn <= 2 && Math.abs(radius - middle) < half;
  const tail = 0 < x && Math.abs(y) < half && 0.16 + pitch * 3 - half < radius && x < 0.96;
  if (!onCoil && !tail) return { colour: ground, alpha: 1 };
  const along = tail ? x * 9 : (angle * middle * 9) / 1.2;
  const across = tail ? y : radius - middle;
  const strand = (((along + across * 9) % 1) + 1) % 1;
  return { colour: strand < 0.2 ? lay : rope, alpha: 1 };
}

function crc(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc(body), body.length + 4);
  return out;
}

/** The extension's icon as PNG, with four by four samples a pixel: of three colours these make fewer mixtures than a palette holds. */
function drawIcon(): Buffer {
  const rows = Buffer.alloc(size * (1 + size));
  const palette = new Map<string, { readonly index: number; readonly mixed: readonly number[] }>();
  const samples = 4;
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      const sum = [0, 0, 0, 0];
      for (let sample = 0; sample < samples * samples; sample++) {
        const x = ((column + ((sample % samples) + 0.5) / samples) / size - 0.5) * 2.02;
        const y = ((row + (Math.floor(sample / samples) + 0.5) / samples) / size - 0.5) * 2.02;
        const { colour, alpha } = colourAt(x, -y);
        colour.forEach((value, at) => (sum[at]! += value * alpha));
        sum[3]! += alpha;
      }
      const mixed = sum.map((value, part) => (part === 3 ? Math.round((value / (samples * samples)) * 255) : sum[3]! === 0 ? 0 : Math.round(value / sum[3]!)));
      const known = palette.get(mixed.join()) ?? { index: palette.size, mixed };
      palette.set(mixed.join(), known);
      rows[row * (1 + size) + 1 + column] = known.index;
    }
  }
  if (palette.size > 256) throw new Error(`${palette.size} colours are more than a palette holds`);
  const colours = [...palette.values()].map(({ mixed }) => mixed);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('PLTE', Uint8Array.from(colours.flatMap((c) => c.slice(0, 3)))),
    chunk('tRNS', Uint8Array.from(colours.map((c) => c[3]!))),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

await writeFile(new URL('../../client/media/linewright.png', import.meta.url), drawIcon());
