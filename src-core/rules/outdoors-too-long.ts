import type { AssessedPiece } from '../assess/assess-line.ts';
import { missingFact, statementOf } from '../assess/facts.ts';
import { isWire } from '../model/line-make.ts';
import { inService } from '../assess/ends.ts';
import { byCalendar, daysText, limitInDays, timeSince } from '../assess/time-since.ts';
import type { Cause } from '../mechanics/derivation.ts';
import { wordOf } from '../model/bound.ts';
import { noDate } from './upkeep.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

/** Why nobody can say what sun and weather have taken. */
function whereKept({ line: { block, name } }: AssessedPiece): Cause {
  const cause = missingFact(block, 'stored');
  return cause.reported === true ? cause : { ...cause, says: `where \`${name}\` lives between pulls is not given`, help: 'write `stored` with outdoors, covered or indoors' };
}

export const outdoorsTooLong = defineRule({
  name: 'outdoors-too-long',
  on: 'block',
  heads: ['line'],
  severity: 'warning',
  summary: 'A line has lived outdoors for longer than anybody has published what that costs.',
  why: 'sun and weather take strength year by year; beyond the time that was observed the loss is only guessed',
  source: 'NAVEDTRA 14160 (after NSTM ch. 613), line left outdoors loses about 30 % in two years',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  stored    outdoors
  2023-04-02  fitted
  2026-06-01  washed
  2026-06-21  inspected
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  stored    covered
  2023-04-02  fitted
  2026-06-01  washed
  2026-06-21  inspected
}
`,
  check(block, judge, assessing) {
    const piece = inService(assessing.line(block))[0];
    if (piece === undefined || isWire(block)) return;
    const fitted = piece.long.log.find((entry) => entry.statement.definition.head === 'fitted');
    const stored = statementOf(block, 'stored');
    const where = stored === undefined ? undefined : wordOf(stored.values, 'stored');
    // Of a line that is not in use yet other things are asked first.
    if (stored === undefined || where === undefined) return fitted === undefined ? undefined : judge.cannot(whereKept(piece), piece.named);
    if (where !== 'outdoors') return;
    if (fitted === undefined) return judge.cannot(noDate(piece), stored.place);
    judge.atMost(timeSince(fitted.day, assessing.day, fitted.statement.dayPlace!), byCalendar(fitted.day, assessing.practice.value('outdoor-time')), stored.place, (time, limit) => ({
      place: stored.place,
      message: `\`${block.name ?? 'line'}\` has been outdoors for ${daysText(time)}, above the ${limitInDays(limit)} over which the loss was observed`,
      help: 'fit a new line, or have a piece of this one broken in a test; keep the next one covered',
      source: sourceOfLimit(limit),
    }));
  },
});
