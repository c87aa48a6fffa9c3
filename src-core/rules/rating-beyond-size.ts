import { statementOf } from '../assess/facts.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { show } from '../assess/show.ts';
import { limitText } from './force-text.ts';
import { shackleGradeSTable } from '../trade/shackle-grade-s-table.ts';
import { isAbove } from '../base/compare.ts';
import { defineRule } from './rule.ts';

/** Strongest for its size in the table (N/m²). */
const mostForSize = Math.max(...shackleGradeSTable.rows.map(({ wll_N, body_m }) => wll_N / body_m ** 2));
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
