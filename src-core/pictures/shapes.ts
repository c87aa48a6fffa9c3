import { coordinate, part, type Part } from './svg.ts';
import { fitText, textWidth } from './text-width.ts';

/** Font sizes for measuring: heavy letters are wider than light ones of the same size. */
export const textSizes = { 't-title': 20 * 1.13, 't-lead': 14 * 1.13, 't-body': 13, 't-strong': 13 * 1.13, 't-quiet': 12 } as const;
export type TextClass = keyof typeof textSizes;

/** Width that a text of this look needs at most. */
export const widthOf = (says: string, look: TextClass): number => textWidth(says, textSizes[look]);

export interface TextOptions {
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Cut off with an ellipsis when it would be wider. */
  readonly width?: number;
  /** Lies over guide lines, on this ground. */
  readonly rim?: 'paper' | 'panel';
}

export function text(x: number, y: number, says: string, look: TextClass, options: TextOptions = {}): Part {
  const shown = options.width === undefined ? says : fitText(says, options.width, textSizes[look]);
  const anchor = options.anchor === undefined || options.anchor === 'start' ? {} : { 'text-anchor': options.anchor };
  return part('text', { class: options.rim === undefined ? look : `${look} on-${options.rim}`, x, y, ...anchor }, shown);
}

export const line = (x1: number, y1: number, x2: number, y2: number, look: string): Part => part('path', { class: look, d: `M${coordinate(x1)} ${coordinate(y1)}L${coordinate(x2)} ${coordinate(y2)}` });
export const rect = (x: number, y: number, width: number, height: number, look: string, rx = 0): Part => part('rect', { class: look, x, y, width: Math.max(0, width), height: Math.max(0, height), ...(rx === 0 ? {} : { rx }) });
export const path = (d: string, look: string): Part => part('path', { class: look, d });
export const circle = (cx: number, cy: number, r: number, look: string): Part => part('circle', { class: look, cx, cy, r });
export const group = (x: number, y: number, children: readonly Part[]): Part => part('g', { transform: `translate(${coordinate(x)} ${coordinate(y)})` }, ...children);

/** Filled with a pattern of the picture; `fillOf` gives its address. */
export const filled = (x: number, y: number, width: number, height: number, fill: string): Part => part('rect', { fill, x, y, width: Math.max(0, width), height: Math.max(0, height) });

/** A path from pairs of coordinates. */
export const polyline = (points: readonly (readonly [number, number])[], closed = false): string => points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${coordinate(x)} ${coordinate(y)}`).join('') + (closed ? 'Z' : '');

/** A measure between two points of one height, with a stroke at each end. */
export function measureAcross(x1: number, x2: number, y: number): Part {
  const [a, b, up, down] = [coordinate(x1), coordinate(x2), coordinate(y - 5), coordinate(y + 5)];
  return path(`M${a} ${up}L${a} ${down}M${b} ${up}L${b} ${down}M${a} ${coordinate(y)}L${b} ${coordinate(y)}`, 's-thin');
}

export function measureDown(x: number, y1: number, y2: number): Part {
  const [a, b, left, right] = [coordinate(y1), coordinate(y2), coordinate(x - 5), coordinate(x + 5)];
  return path(`M${left} ${a}L${right} ${a}M${left} ${b}L${right} ${b}M${coordinate(x)} ${a}L${coordinate(x)} ${b}`, 's-thin');
}

/** The mark of what is not known: a question mark in a ring. */
export const unknownMark = (x: number, y: number): Part => part('g', {}, part('circle', { class: 'hollow', cx: x, cy: y, r: 8 }), text(x, y + 4.5, '?', 't-strong', { anchor: 'middle' }));
