import { endName, inService } from '../assess/ends.ts';
import { showLike } from '../assess/show.ts';
import type { EndFacts } from '../model/line-state.ts';
import { exactly } from '../units/amount.ts';
import { given } from '../assess/facts.ts';
import { defineRule } from './rule.ts';

const madeOn = (end: EndFacts): number => (end.supplied ? -Infinity : (end.day ?? Infinity));

export const overlappingSplices = defineRule({
  name: 'overlapping-splices',
  on: 'line',
  severity: 'error',
  summary: 'Two buried tails of a piece lie in the same stretch of line.',
  why: 'a hollow line holds one tail: two in one place leave neither of them the grip that it is counted for',
  source: 'common practice',
  bad: `line tail {
  material  HMPE
  diameter  10 mm
  length    1.6 m
  inboard   eye thimble tube bury 72 d taper 24 d
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  good: `line tail {
  material  HMPE
  diameter  10 mm
  length    4 m
  inboard   eye thimble tube bury 72 d taper 24 d
  outboard  eye thimble tube bury 72 d taper 24 d
}
`,
  check(line, judge) {
    for (const piece of inService(line)) {
      for (const { one, other, gap } of piece.splices.gaps) {
        // The one made last is the one that can still be made otherwise.
        const [last, first] = madeOn(one.facts) <= madeOn(other.facts) ? [other, one] : [one, other];
        const { place } = last.facts;
        judge.atLeast(gap, given(0, 'needed length', place), place, (between) => ({
          place,
          message: `buried tails of ${endName(piece, first)} and ${endName(piece, last)} overlap by ${showLike(exactly(-between.amount.low), between, 'up')}`,
          help: 'leave plain line between them: cut so that the piece is longer, or join a longer piece on',
        }));
      }
    }
  },
});
