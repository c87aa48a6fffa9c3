import { maybeFact, statementOf } from '../assess/facts.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { show } from '../assess/show.ts';
import { limitText } from './force-text.ts';
import { shackleGradeSTable } from '../trade/shackle-grade-s-table.ts';
import { printSource } from '../trade/source.ts';
import { softShackleShares } from '../trade/soft-shackle-share.ts';
import { wordOf } from '../model/bound.ts';
import { fibreStrength_Pa } from '../trade/fibre-strength-table.ts';
import type { GearHead } from '../assess/assess-gear.ts';
import { toSI, unitNamed } from '../units/unit-table.ts';
import { isAbove } from '../base/compare.ts';
import { defineRule } from './rule.ts';

const [lbf, inch] = [unitNamed('lbf')!, unitNamed('in')!];
const ofRing = toSI(26_000, lbf) / toSI(0.98, inch) ** 2;
/** Strongest for the size: N for each m² of a body squared, for each m of webbing. */
const mostForSize: { readonly [head in GearHead]?: number } = {
  shackle: Math.max(...shackleGradeSTable.rows.map(({ wll_N, body_m }) => wll_N / body_m ** 2)),
  ring: ofRing,
  // It bears with one bar where a ring bears with two.
  hook: ofRing,
  strap: toSI(4 * 9800, lbf) / toSI(5, inch),
};
/** The most that a test left of the line. */
const bestKnot = Math.max(...softShackleShares.map(({ high }) => high));
/** Alloy shackles carry more than grade S, and endless straps more than their plies; none was found that carries twice as much. */
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
  summary: 'A working limit is far above what any shackle, ring, hook or strap of that size carries.',
  why: 'a slip of the point, or the breaking strength read as the limit, makes everything it is used for pass',
  source: 'the strongest for its size, twice over, our own careful choice, because none was found with that: shackles of AS 2741, grade S; master links of EN 1677-4, grade 80, in a lifting hardware catalogue (26,000 lb on 0.98 in), for rings and hooks; four plies of sling webbing of 9,800 lbf an inch, over 5 (WSTDA-WB-1, class 7, from memory), by the fibre',
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
    const per = mostForSize[head];
    const size = head === 'strap' ? maybeFact(block, 'width') : body;
    const said = statementOf(block, limitFrom === 'written' ? 'wll' : 'breaking');
    if (per === undefined || standard !== undefined || said === undefined || size === undefined || isUnknown(size) || isUnknown(limit)) return;
    const m = statementOf(block, 'material');
    const polyester = fibreStrength_Pa('polyester')!;
    const most = farAbove * per * (head === 'strap' ? (size.amount.high * (fibreStrength_Pa(m && wordOf(m.values, 'material')) ?? polyester)) / polyester : size.amount.high ** 2);
    judge.holds(!isAbove(limit.amount.low, most), () => ({
      place: said.place,
      message: `working limit of \`${name}\` is ${limitText(limit)}, far above what a ${head} of ${show(size)} carries`,
      help: 'read the marking again: the figure, its unit, and the size',
    }));
  },
});
