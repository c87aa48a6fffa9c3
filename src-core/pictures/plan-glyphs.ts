import { circle, path, polyline } from './shapes.ts';
import { part, type Part } from './svg.ts';

/** Something drawn about a point and turned: `turn` in degrees clockwise, zero where it looks to the right. */
const turned = (x: number, y: number, turn: number, parts: readonly Part[]): Part => part('g', { transform: `translate(${x.toFixed(1)} ${y.toFixed(1)}) rotate(${turn.toFixed(0)})` }, ...parts);

const rounded = (x: number, y: number, w: number, h: number, look: string, rx: number): Part => part('rect', { class: look, x, y, width: w, height: h, rx });

/** Half the length and half the width of a vehicle as it is drawn. */
export const vehicleHalf = { long: 46, wide: 23 } as const;

/** A vehicle from above, looking to the right; `goes` puts the arrow of the load on its roof. */
export function vehicleGlyph(x: number, y: number, turn: number, goes: boolean): Part {
  const wheels = [-29, 27].flatMap((wx) => [-23, 17].map((wy) => rounded(wx - 8, wy, 16, 6, 'ink', 2)));
  const body = [rounded(-46, -19, 92, 38, 'hollow', 7), path('M46 -13L51 -13L51 13L46 13', 's-ink'), path('M20 -15L12 -12L12 12L20 15', 's-ink'), path('M-34 -14L-34 14', 's-thin')];
  const arrow = goes ? [path(polyline([[-28, -3], [-8, -3], [-8, -9], [6, 0], [-8, 9], [-8, 3], [-28, 3]], true), 'ink')] : [];
  return turned(x, y, turn, [...wheels, ...body, ...arrow]);
}

/** A load that is given by its weight alone. */
export const bareLoadGlyph = (x: number, y: number): Part =>
  turned(x, y, 0, [rounded(-34, -22, 68, 44, 'hollow', 2), path('M-34 -22L34 22M-34 22L34 -22', 's-grid'), path(polyline([[-20, -3], [2, -3], [2, -9], [16, 0], [2, 9], [2, 3], [-20, 3]], true), 'ink')]);

/** The drum of a winch from above, its line leaving to the right. */
export const winchGlyph = (x: number, y: number, turn: number): Part => turned(x, y, turn, [rounded(-7, -11, 12, 22, 'rope', 2), path('M-7 -7L5 -5M-7 -2L5 0M-7 3L5 5', 's-inlay'), path('M-9 -14L-9 14', 's-ink')]);

export const blockGlyph = (x: number, y: number): Part[] => [circle(x, y, 11, 'hollow'), circle(x, y, 7, 's-rope'), circle(x, y, 2.5, 'ink')];

/** The end of the line, where gear takes over. */
export const endGlyphInPlan = (x: number, y: number): Part => circle(x, y, 5, 'rope');

/** Where gear forks behind the end of the line or behind a block. */
export const forkGlyph = (x: number, y: number): Part => circle(x, y, 4, 'hollow');

/** What holds, by the word of its kind; each has a shape of its own. */
export function anchorGlyph(form: string | undefined, x: number, y: number, turn: number): Part {
  switch (form) {
    case 'tree':
      return turned(x, y, 0, [path('M0 -20C8 -24 14 -17 14 -14C22 -14 22 -4 19 0C24 6 18 15 12 14C10 22 -2 22 -4 17C-12 21 -20 14 -17 8C-25 4 -22 -8 -15 -9C-16 -18 -6 -23 0 -20Z', 's-ink'), circle(0, 0, 9, 'hollow'), circle(0, 0, 4.5, 's-thin')]);
    case 'rock':
      return turned(x, y, 0, [path(polyline([[-19, 4], [-13, -13], [3, -19], [18, -8], [19, 8], [5, 18], [-12, 15]], true), 'hollow'), path('M-13 -13L-3 -4L18 -8M-3 -4L5 18', 's-thin')]);
    case 'buried-log':
      return turned(x, y, turn, [part('rect', { class: 's-dashed', x: -9, y: -27, width: 18, height: 54, rx: 4 }), path('M0 -20V20', 's-thin')]);
    case 'pickets':
      return turned(x, y, turn, [path('M-14 0H14', 's-thin'), circle(-14, 0, 4.5, 'ink'), circle(0, 0, 4.5, 'ink'), circle(14, 0, 4.5, 'ink')]);
    case 'ground-anchor':
      return turned(x, y, 0, [circle(0, 0, 14, 'hollow'), path('M-10 -10L10 10M-10 10L10 -10', 's-ink')]);
    default:
      return turned(x, y, 0, [circle(0, 0, 16, 'paper'), circle(0, 0, 16, 's-dots'), path('M-5 -4C-5 -11 6 -11 5 -4C5 0 0 -1 0 4M0 8L0 9', 's-ink')]);
  }
}
