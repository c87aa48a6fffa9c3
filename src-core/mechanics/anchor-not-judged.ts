import { noFigure } from './table-value.ts';
import type { Unknown } from './derivation.ts';

/** Trees, rocks and ground anchors of no known kind: no source gives what they hold. */
export const anchorNotJudged = (name: string, kind: string): Unknown =>
  noFigure(`holding power of ${name}`, `holding power of \`${name}\` is not given, and no table gives it for a ${kind}`, 'write the holding power that somebody who knows the ground vouches for');
