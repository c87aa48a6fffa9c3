import type { AssessedLine } from '../assess/assess-line.ts';
import { positionUnit } from '../assess/damage-place.ts';
import { endName } from '../assess/ends.ts';
import { lineBefore } from '../assess/line-before.ts';
import { mayOverlap, type StretchFromEnds } from '../assess/stretch-from-ends.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { nameOf, type BoundEnd, type BoundStatement } from '../model/bound.ts';
import { between, exactly, type Amount } from '../units/amount.ts';
import { printAmount } from '../units/print.ts';
import type { Judge } from './judge.ts';
import { asWritten } from './side-by-side.ts';
import { defineRule } from './rule.ts';

/** A cut as it lies from both ends of its piece. */
function placeOfCut({ end, distance }: BoundEnd, length: Amount): StretchFromEnds {
  const own = { from: exactly(distance.value), to: exactly(distance.value) };
  const rest = between(length.low - distance.value, length.high - distance.value);
  const other = { from: rest, to: rest };
  return end === 'inboard' ? { inboard: own, outboard: other } : { inboard: other, outboard: own };
}

function checkCut(before: AssessedLine, cut: BoundStatement, judge: Judge): void {
  const station = cut.values.get('station');
  const piece = before.pieces.get(nameOf(cut.values, 'piece')?.name ?? before.facts.name);
  if (piece === undefined || station?.type !== 'station') return;
  for (const { end, cause } of piece.splices.unplaced) judge.cannot(cause, end.facts.place);
  if (isUnknown(piece.length)) {
    if (station.from.end === 'outboard') judge.cannot(piece.length.unknown, station.place);
    return;
  }
  const at = placeOfCut(station.from, piece.length.amount);
  const unit = positionUnit(station.from.distance.unit);
  const length = (amount: Amount): string => printAmount(amount, 'length', { unit });
  for (const { end, cover } of piece.splices.stretches) {
    const { from, to } = cover.inboard;
    judge.holds(!mayOverlap(at, cover), () => ({
      place: station.place,
      message: `cut at ${asWritten(station.from.distance)} from ${station.from.end} lies in the splice of ${endName(piece, end)}, which runs from ${length({ low: from.low, high: from.low })} to ${length({ low: to.high, high: to.high })} from inboard`,
      help: 'cut outside that stretch, or pull the rest of the old tail out before the next splice, and write above the cut `# allow cut-through-splice: old tail pulled out`',
      related: [{ place: end.facts.place, message: 'the splice' }],
    }));
  }
}

export const cutThroughSplice = defineRule({
  name: 'cut-through-splice',
  on: 'block',
  heads: ['line', 'repair'],
  severity: 'warning',
  summary: 'A cut goes through the stretch of a splice and leaves part of its tail in the line.',
  why: 'what is left of the tail fills the hollow that the next tail needs, and what is left of the splice no longer holds',
  source: 'common practice',
  bad: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}

repair new-eye on main {
  cut     at 50 cm from outboard
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  good: `line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
}

repair new-eye on main {
  cut     at 1.2 m from outboard
  splice  outboard eye thimble tube bury 72 d taper 24 d stitched
}
`,
  check(block, judge, assessing) {
    const cuts = block.statements.filter((s) => s.definition.head === 'cut' && s.broken.size === 0 && (s.day === undefined || s.day <= assessing.day));
    if (cuts.length === 0) return;
    if (block.definition.head === 'line') {
      const line = assessing.line(block);
      for (const cut of cuts) checkCut(lineBefore(line, cut), cut, judge);
    } else {
      const before = assessing.repaired(block)?.before;
      if (before !== undefined) for (const cut of cuts) checkCut(before, cut, judge);
    }
  },
});
