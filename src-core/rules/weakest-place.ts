import type { AssessedPiece } from '../assess/assess-line.ts';
import { statementOf } from '../assess/facts.ts';
import { isBelow } from '../base/compare.ts';
import type { Place } from '../base/span.ts';
import { isUnknown, mostOf, type Cause, type Given, type Value } from '../mechanics/derivation.ts';

/** What a piece is known to hold, and why it may hold less. */
export function strengthKnown(piece: AssessedPiece): { strength: Value; unless: Cause | undefined } {
  // What is known of it may fail the check by itself, whatever the unknown place would hold.
  const { strength } = piece.hanging;
  if (isUnknown(strength)) return { strength: mostOf(strength) ?? strength, unless: strength.unknown };
  return { strength, unless: piece.incomplete };
}

/** Where the strength of a piece is written that falls below a limit: the tag, else the weakest place. */
export function placeOfStrength(piece: AssessedPiece, limit: Given): { place: Place; says: string } {
  const { line } = piece;
  const { weakest } = piece.hanging;
  const tag = statementOf(line.block, 'breaking')?.place ?? line.block.namePlace;
  if (!isUnknown(line.base) && isBelow(line.base.amount.low, limit.amount.high)) return { place: tag, says: '' };
  const damage = piece.damages.find((d) => d.strength === weakest?.strength);
  if (damage !== undefined && damage.strength !== line.base) return { place: damage.fact.place, says: ` at its ${weakest!.name}` };
  if (weakest?.strength === piece.outboard.strength) return { place: piece.outboard.facts.place, says: ' at its outboard end' };
  const joint = piece.joints.find((j) => j.strength === weakest?.strength);
  return joint === undefined ? { place: tag, says: '' } : { place: joint.facts.place, says: ' at its end-to-end splice' };
}
