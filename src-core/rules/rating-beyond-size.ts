import { maybeFact, statementOf } from '../assess/facts.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { show } from '../assess/show.ts';
import { limitText } from './force-text.ts';
import { shackleGradeSTable } from '../trade/shackle-grade-s-table.ts';
import { printSource } from '../trade/source.ts';
import { softShackleShares } from '../trade/soft-shackle-share.ts';
import { isAbove } from '../base/compare.ts';
import { defineRule } from './rule.ts';

/** Strongest for its size in the table (N/m²). */
const mostForSize = Math.max(...shackleGradeSTable.rows.map(({ wll_N, body_m }) => wll_N / body_m ** 2));
/** The most that a test left of the line. */
const bestKnot = Math.max(...softShackleShares.map(({ high }) => high));
/** Alloy shackles carry more than grade S; none was found that carries twice as much. */
const farAbove = 2;

const shackle = (wll: string): string => `shackle bow-22 {
  form  bow
  body  22 mm
  pin   25 mm
  wll   ${wll}
}
`;

export const ratingBeyondSize = defineRule({
  name: 'rating-beyond-size',
  on: 'gear',
  severity: 'warning',
  summary: 'A working limit is far above what any shackle of that size carries.',
  why: 'a slip of the point, or the breaking strength read as the limit, makes everything it is used for pass',
  source: 'AS 2741, grade S: the strongest for its size in the table, twice over; our own careful choice, because alloy shackles carry more than grade S and none was found with twice as much',
  bad: shackle('65 t'),
  good: shackle('6.5 t'),
  check({ block, head, name, limit, limitFrom, body, standard }, judge) {
    const [own, ofLine] = [maybeFact(block, 'breaking'), head === 'soft-shackle' ? maybeFact(block, 'line-breaking') : undefined];
    if (own !== undefined && ofLine !== undefined && !isUnknown(own) && !isUnknown(ofLine)) {
      const place = statementOf(block, 'breaking')!.place;
      judge.holds(!isAbove(own.amount.low, bestKnot * ofLine.amount.high), () => ({
        place,
        message: `breaking strength of \`${name}\` is ${show(own)}, above the ${show({ ...ofLine, amount: { low: bestKnot * ofLine.amount.low, high: bestKnot * ofLine.amount.high } }, { careful: 'down' })} that the strongest knot leaves of its line`,
        help: 'read both again: the figure, its unit, and whose strength it is',
        source: printSource(softShackleShares[0]!.sources[0]),
      }));
    }
    const wll = limitFrom === 'written' ? statementOf(block, 'wll') : undefined;
    if (head !== 'shackle' || standard !== undefined || wll === undefined || body === undefined || isUnknown(body) || isUnknown(limit)) return;
    const most = farAbove * mostForSize * body.amount.high ** 2;
    judge.holds(!isAbove(limit.amount.low, most), () => ({
      place: wll.place,
      message: `working limit of \`${name}\` is ${limitText(limit)}, far above what a shackle of ${show(body)} carries`,
      help: 'read the marking again: the figure, its unit, and the size of the body',
    }));
  },
});
