import type { AssessedPiece } from '../assess/assess-line.ts';
import type { Assessing } from '../assess/assessing.ts';
import { inService } from '../assess/ends.ts';
import { byCalendar, daysText, limitInDays, timeSince } from '../assess/time-since.ts';
import { isUnknown, type Cause } from '../mechanics/derivation.ts';
import type { BoundBlock } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import type { Judge } from './judge.ts';
import { sourceOfLimit } from './side-by-side.ts';

/** Something that is done to a line again and again: what its entry is called, and how long it may wait. */
export interface Upkeep {
  readonly entry: 'inspected' | 'washed';
  readonly interval: 'inspection-interval' | 'washing-interval';
  readonly help: string;
}

/** Why it cannot be told how long ago anything was. */
export const noDate = (piece: AssessedPiece): Cause => ({
  key: `fitted of ${piece.line.name}`,
  says: `when \`${piece.line.name}\` was fitted is not given`,
  help: 'write `fitted` with its date',
  place: piece.line.block.namePlace,
  ...(piece.incomplete === undefined ? {} : { reported: piece.incomplete.reported === true }),
});

/** Time since the last entry of its kind, or since the line was fitted, against the shop's interval. */
export function checkUpkeep(block: BoundBlock, judge: Judge, assessing: Assessing, { entry, interval, help }: Upkeep): void {
  const most = assessing.practice.value(interval);
  for (const piece of inService(assessing.line(block))) {
    const last = piece.long.log.filter(({ statement }) => statement.definition.head === entry || statement.definition.head === 'fitted').at(-1);
    if (last === undefined) {
      judge.cannot(noDate(piece), piece.named);
      continue;
    }
    const { statement, day } = last;
    const isNew = statement.definition.head === 'fitted';
    judge.atMost(timeSince(day, assessing.day, statement.dayPlace!), byCalendar(day, most), statement.place, (age, limit) => ({
      place: statement.place,
      message: `\`${piece.name}\` was ${isNew ? 'fitted' : `last ${entry}`} on ${printDay(day)}, ${daysText(age)} ago${isNew ? `, and not ${entry} since` : ''}; the limit is ${isUnknown(most) ? limitInDays(limit) : limitInDays(most, limit)}`,
      help,
      source: sourceOfLimit(limit),
    }));
  }
}
