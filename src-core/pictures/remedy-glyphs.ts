import type { Remedy } from '../assess/assess-line.ts';
import { polyline, circle, path, rect } from './shapes.ts';
import type { Part } from './svg.ts';

/** The worst first. */
export const remedies: readonly Remedy[] = ['retire', 'cut-out', 'derate', 'clean'];

export const remedyWords: Readonly<Record<Remedy, string>> = {
  retire: 'retire the line',
  'cut-out': 'cut out',
  derate: 'use at less load',
  clean: 'work back or clean',
};

/** Each remedy has a shape of its own: square with a cross, full diamond, triangle, open ring. */
export function remedyGlyph(remedy: Remedy, x: number, y: number): Part[] {
  switch (remedy) {
    case 'retire':
      return [rect(x - 6, y - 6, 12, 12, 'hollow'), path(`M${x - 4} ${y - 4}l8 8M${x - 4} ${y + 4}l8 -8`, 's-alarm')];
    case 'cut-out':
      return [path(polyline([[x, y - 7], [x + 7, y], [x, y + 7], [x - 7, y]], true), 'alarm')];
    case 'derate':
      return [path(polyline([[x - 6.5, y - 5.5], [x + 6.5, y - 5.5], [x, y + 6]], true), 'caution')];
    case 'clean':
      return [circle(x, y, 5, 'hollow')];
  }
}

/** Outline of a stretch of damage, as its remedy is drawn. */
export const remedyStroke: Readonly<Record<Remedy, string>> = { retire: 's-alarm', 'cut-out': 's-alarm', derate: 's-caution', clean: 's-ink' };
