import { inService } from '../assess/ends.ts';
import type { AssessedPiece } from '../assess/assess-line.ts';
import { writtenValue } from '../assess/facts.ts';
import type { Cause } from '../mechanics/derivation.ts';
import { show } from '../assess/show.ts';
import { quantityOf, wordOf, type BoundStatement } from '../model/bound.ts';
import type { DayNumber } from '../model/day.ts';
import type { LogEntry } from '../model/line-state.ts';
import { sourceOfLimit } from './side-by-side.ts';
import { defineRule } from './rule.ts';

const howWound = (piece: AssessedPiece, again: boolean): Cause => ({
  key: `spooled of ${piece.line.name}`,
  says: `how \`${piece.name}\` was wound onto the drum${again ? ' again, since it came off for a later entry,' : ''} is not given`,
  help: 'write `spooled  tight under` with the load, or `spooled  slack`, and its date',
  place: piece.line.block.namePlace,
  ...(piece.incomplete === undefined ? {} : { reported: piece.incomplete.reported === true }),
});

/** True when the line came off its drum since: turned, made new at its inboard end, or longer than it was wound on. */
function cameOffAfter({ day, statement }: LogEntry, { long }: AssessedPiece): boolean {
  const isAfter = (other: { readonly day: DayNumber | undefined; readonly statement: BoundStatement | undefined }): boolean =>
    other.day !== undefined && (day < other.day || (day === other.day && other.statement !== undefined && statement.place.start < other.statement.place.start));
  return [...long.log.filter((entry) => entry.statement.definition.head === 'reversed'), long.inboard, ...long.joints.map(({ end }) => end)].some(isAfter);
}

export const spooledSlack = defineRule({
  name: 'spooled-slack',
  on: 'block',
  heads: ['line'],
  severity: 'warning',
  summary: 'The line was last wound onto the drum without load, or with too little.',
  why: 'under the next pull the outer wraps dive between slack inner ones, where they are cut and crushed',
  source: 'US Army TM 9-2320-280-10, p. 2-134, re-spool under at least 500 lbf',
  bad: `winch bow-winch {
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-14  fitted
  2026-06-14  spooled  slack
}
`,
  good: `winch bow-winch {
  carries  main
}

line main {
  material  HMPE
  diameter  10 mm
  length    30 m
  outboard  eye thimble tube bury 72 d taper 24 d
  2026-06-14  fitted
  2026-06-14  spooled  tight under 250 kgf
}
`,
  check(block, judge, assessing) {
    const needed = assessing.practice.value('spooling-tension');
    for (const piece of inService(assessing.line(block))) {
      if (assessing.reader.winchesCarrying(piece.name).length === 0) continue;
      const last = piece.long.log.filter((entry) => entry.statement.definition.head === 'spooled').at(-1);
      if (last === undefined || cameOffAfter(last, piece)) {
        judge.cannot(howWound(piece, last !== undefined), piece.named);
        continue;
      }
      const { statement } = last;
      const help = 'run it out and wind it on again under load, layer by layer, before the next pull; write `spooled tight under ...`';
      const tight = judge.holds(wordOf(statement.values, 'tightness') !== 'slack', () => ({
        place: statement.place,
        message: `\`${piece.name}\` was last wound onto the drum slack; it goes on under at least ${'amount' in needed ? show(needed, { careful: 'up' }) : 'load'}`,
        help,
        source: sourceOfLimit(needed),
      }));
      const under = quantityOf(statement.values, 'load');
      if (!tight || under === undefined) continue;
      judge.atLeast(writtenValue(under), needed, under.place, (load, least) => ({
        place: under.place,
        message: `\`${piece.name}\` was wound onto the drum under ${show(load)}, below the ${show(least, { unit: under.unit, careful: 'up' })} of practice`,
        help,
        source: sourceOfLimit(least),
      }));
    }
  },
});
