import { noFigure } from './table-value.ts';
import type { Unknown } from './derivation.ts';

/** Rope on rope, eye through eye: no source gives what is left, so nothing is computed from it. */
export const eyeOnEye = (one: string, other: string): Unknown =>
  noFigure(
    `eye on eye ${one} ${other}`,
    `${one} bears on ${other}, rope on rope (D/d = 1), for which no strength is published`,
    'join them with something round and smooth, such as a shackle, or give the bend a figure of the maker',
  );
