import type { AssessedLink } from '../assess/assess-chain.ts';
import { circle, path, rect } from './shapes.ts';
import { coordinate as c, type Part } from './svg.ts';

/** What a link is, drawn small around a point of the load path. */
export function gearGlyph(link: AssessedLink, x: number, y: number): Part[] {
  const ground = circle(x, y, 15, 'paper');
  if (link.sort === 'line') return [rect(x - 5, y - 15, 10, 30, 'rope'), path(`M${c(x - 3)} ${c(y - 5)}l6 -6M${c(x - 3)} ${c(y + 4)}l6 -6M${c(x - 3)} ${c(y + 13)}l6 -6`, 's-inlay')];
  if (link.sort === 'anchor') return [ground, path(`M${c(x - 13)} ${c(y + 10)}H${c(x + 13)}M${c(x)} ${c(y + 10)}V${c(y - 13)}M${c(x - 7)} ${c(y + 4)}L${c(x)} ${c(y - 5)}L${c(x + 7)} ${c(y + 4)}`, 's-ink')];
  if (link.sort === 'vehicle') return [ground, rect(x - 12, y - 8, 24, 11, 'hollow', 2), circle(x - 6, y + 6, 4, 'hollow'), circle(x + 6, y + 6, 4, 'hollow')];
  switch (link.gear) {
    case 'shackle':
      return [ground, path(`M${c(x - 7)} ${c(y - 8)}C${c(x - 13)} ${c(y + 14)} ${c(x + 13)} ${c(y + 14)} ${c(x + 7)} ${c(y - 8)}M${c(x - 12)} ${c(y - 8)}H${c(x + 12)}`, 's-ink')];
    case 'soft-shackle':
      return [ground, path(`M${c(x)} ${c(y - 9)}C${c(x - 14)} ${c(y + 2)} ${c(x - 8)} ${c(y + 12)} ${c(x)} ${c(y + 11)}C${c(x + 8)} ${c(y + 12)} ${c(x + 14)} ${c(y + 2)} ${c(x)} ${c(y - 9)}`, 's-ink'), circle(x, y - 10, 4, 'ink')];
    case 'strap':
      return [ground, path(`M${c(x - 4)} ${c(y - 13)}V${c(y + 13)}M${c(x + 4)} ${c(y - 13)}V${c(y + 13)}M${c(x - 4)} ${c(y - 6)}H${c(x + 4)}M${c(x - 4)} ${c(y)}H${c(x + 4)}M${c(x - 4)} ${c(y + 6)}H${c(x + 4)}`, 's-ink')];
    case 'block':
      return [ground, circle(x, y, 12, 'hollow'), circle(x, y, 4, 'ink')];
    case 'ring':
      return [ground, circle(x, y, 11, 'hollow'), circle(x, y, 6, 'hollow')];
    case 'hook':
      return [ground, path(`M${c(x)} ${c(y - 13)}V${c(y - 2)}C${c(x + 11)} ${c(y - 2)} ${c(x + 10)} ${c(y + 13)} ${c(x)} ${c(y + 12)}C${c(x - 7)} ${c(y + 11)} ${c(x - 8)} ${c(y + 5)} ${c(x - 7)} ${c(y + 3)}`, 's-ink')];
    default:
      return [ground, circle(x, y, 9, 'hollow')];
  }
}
