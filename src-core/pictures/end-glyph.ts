import type { AssessedEnd } from '../assess/splice-end.ts';
import { circle, path, rect, unknownMark } from './shapes.ts';
import { coordinate as c, part, type Part } from './svg.ts';

/** The end of a line beside its last point; `way` is 1 where the end lies to the right. */
export function endGlyph(end: AssessedEnd, x: number, y: number, way: 1 | -1): Part[] {
  const at = (dx: number): number => x + dx * way;
  switch (end.facts.form) {
    case 'eye': {
      const loop = part('path', { class: 's-rope', d: `M${c(x)} ${c(y)}C${c(at(6))} ${c(y - 13)} ${c(at(26))} ${c(y - 11)} ${c(at(26))} ${c(y)}C${c(at(26))} ${c(y + 11)} ${c(at(6))} ${c(y + 13)} ${c(x)} ${c(y)}` });
      const { thimble } = end.facts;
      return thimble === undefined ? [loop] : [loop, circle(at(17), y, thimble === 'sleeve' ? 3 : 5, 'hollow')];
    }
    case 'lug':
      return [rect(Math.min(x, at(14)), y - 6, 14, 12, 'ink', 2), circle(at(9), y, 2.5, 'paper')];
    case 'hook':
      return [path(`M${c(x)} ${c(y)}L${c(at(8))} ${c(y)}C${c(at(26))} ${c(y)} ${c(at(24))} ${c(y + 16)} ${c(at(12))} ${c(y + 12)}`, 's-ink')];
    case 'knot':
      return [circle(at(5), y, 6, 'rope'), circle(at(13), y, 6, 'rope')];
    case 'bare':
      return [path(`M${c(x)} ${c(y - 7)}L${c(x)} ${c(y + 7)}M${c(at(4))} ${c(y - 7)}L${c(at(4))} ${c(y + 7)}`, 's-ink')];
    default:
      return [unknownMark(at(10), y)];
  }
}
