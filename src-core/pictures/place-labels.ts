import { line, text, textSizes, widthOf, type TextClass } from './shapes.ts';
import type { Part } from './svg.ts';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Segment {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** A few words about a point of a drawing that may stand on any side of it. */
export interface Label {
  readonly x: number;
  readonly y: number;
  /** Half the size of what the words must keep clear of. */
  readonly clear: { readonly x: number; readonly y: number };
  readonly lines: readonly { readonly says: string; readonly look: TextClass }[];
  /** Where they are best put; the rest of the places are tried in their usual order. */
  readonly first?: readonly Side[];
}

export type Side = 'right' | 'left' | 'above' | 'below' | 'right-above' | 'right-below' | 'left-above' | 'left-below';

const sides: readonly Side[] = ['right', 'left', 'above', 'below', 'right-above', 'right-below', 'left-above', 'left-below'];
const rowHeight = 16;

export const boxAround = (x: number, y: number, halfWide: number, halfHigh: number): Box => ({ left: x - halfWide, top: y - halfHigh, right: x + halfWide, bottom: y + halfHigh });

const overlap = (a: Box, b: Box, gap: number): boolean => a.left < b.right + gap && b.left < a.right + gap && a.top < b.bottom + gap && b.top < a.bottom + gap;

/** Whether a straight line runs through a box: the line is cut down to what lies inside. */
export function runsThrough({ x1, y1, x2, y2 }: Segment, { left, top, right, bottom }: Box): boolean {
  let [from, to] = [0, 1];
  const [dx, dy] = [x2 - x1, y2 - y1];
  for (const [p, q] of [[-dx, x1 - left], [dx, right - x1], [-dy, y1 - top], [dy, bottom - y1]] as const) {
    if (p === 0) {
      if (q < 0) return false;
      continue;
    }
    const t = q / p;
    if (p < 0) from = Math.max(from, t);
    else to = Math.min(to, t);
  }
  return from < to;
}

const nearVertical = (normalX: number): boolean => Math.abs(normalX) > 0.95;

/** Puts words where they cover neither other words nor what is drawn, within the sides of the picture. */
export class LabelPlacer {
  readonly #left: number;
  readonly #right: number;
  readonly #taken: Box[] = [];
  readonly #lines: Segment[] = [];
  readonly parts: Part[] = [];
  top = Infinity;
  bottom = -Infinity;

  constructor(left: number, right: number) {
    this.#left = left;
    this.#right = right;
  }

  take(box: Box): void {
    this.#taken.push(box);
    this.#grow(box);
  }

  cross(segment: Segment): void {
    this.#lines.push(segment);
  }

  #grow(box: Box): void {
    this.top = Math.min(this.top, box.top);
    this.bottom = Math.max(this.bottom, box.bottom);
  }

  /** False when there is no room: then the words have to stand elsewhere. */
  place(label: Label): boolean {
    const wide = Math.max(...label.lines.map((l) => widthOf(l.says, l.look)));
    const high = label.lines.length * rowHeight;
    let best: { readonly box: Box; readonly side: Side; readonly price: number; readonly away: number } | undefined;
    const order = [...(label.first ?? []), ...sides.filter((s) => label.first?.includes(s) !== true)];
    for (const away of [0, 18, 44, 80]) {
      for (const [i, side] of order.entries()) {
        const box = this.#boxAt(label, side, wide, high, away);
        if (box.left < this.#left || box.right > this.#right || this.#taken.some((t) => overlap(t, box, 4))) continue;
        const price = i + away / 6 + 12 * this.#lines.filter((l) => runsThrough(l, box)).length;
        if (best === undefined || price < best.price) best = { box, side, price, away };
      }
    }
    if (best === undefined) return false;
    this.#put(label, best.box, best.side, best.away);
    return true;
  }

  #boxAt({ x, y, clear }: Label, side: Side, wide: number, high: number, away: number): Box {
    const [dx, dy] = [clear.x + 7 + away, clear.y + 5 + away];
    const left = side.startsWith('right') ? x + dx : side.startsWith('left') ? x - dx - wide : x - wide / 2;
    const top = side.endsWith('above') ? y - dy - high : side.endsWith('below') ? y + dy : y - high / 2;
    return { left, top, right: left + wide, bottom: top + high };
  }

  #put(label: Label, box: Box, side: Side, away: number): void {
    const anchor = side.startsWith('right') ? 'start' : side.startsWith('left') ? 'end' : 'middle';
    const x = anchor === 'start' ? box.left : anchor === 'end' ? box.right : label.x;
    if (away > 20) {
      const [ex, ey] = [x, side.endsWith('above') ? box.bottom : side.endsWith('below') ? box.top : (box.top + box.bottom) / 2];
      this.parts.push(line(label.x + Math.sign(Math.round(ex - label.x)) * label.clear.x, label.y + Math.sign(Math.round(ey - label.y)) * label.clear.y, ex, ey, 's-thin'));
    }
    for (const [i, { says, look }] of label.lines.entries()) this.parts.push(text(x, box.top + i * rowHeight + 12, says, look, { anchor, rim: 'paper' }));
    this.take(box);
  }

  /** A short text beside a straight line, as near to its middle as there is room. */
  along({ x1, y1, x2, y2 }: Segment, says: string, look: TextClass): boolean {
    const wide = widthOf(says, look);
    const length = Math.hypot(x2 - x1, y2 - y1);
    if (length < 1) return false;
    const [nx, ny] = [-(y2 - y1) / length, (x2 - x1) / length];
    const size = textSizes[look];
    for (const off of nearVertical(nx) ? [1, -1, 0] : [ny > 0 ? -1 : 1, ny > 0 ? 1 : -1, 0]) {
      for (const share of [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74]) {
        // Beside the line it stands off by as much as its own half size needs in that direction.
        const by = off * (Math.abs(nx) * (wide / 2 + 5) + Math.abs(ny) * (size / 2 + 5));
        const [x, y] = [x1 + (x2 - x1) * share + nx * by, y1 + (y2 - y1) * share + ny * by];
        const box = boxAround(x, y, wide / 2, size / 2 + 1);
        if (box.left < this.#left || box.right > this.#right || this.#taken.some((t) => overlap(t, box, 9))) continue;
        this.parts.push(text(x, y + 4.5, says, look, { anchor: 'middle', rim: 'paper' }));
        this.take(box);
        return true;
      }
    }
    return false;
  }
}
