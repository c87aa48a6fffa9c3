import type { Assessing } from '../assess/assessing.ts';
import type { AssessedPiece } from '../assess/assess-line.ts';
import { assessWinch, type AssessedWinch } from '../assess/assess-winch.ts';
import type { Place } from '../base/span.ts';
import type { BoundBlock } from '../model/bound.ts';

export interface WinchInUse {
  readonly winch: AssessedWinch;
  readonly piece: AssessedPiece;
  /** The repair's name, when the winch is judged with what a repair would leave on it. */
  readonly repair: { readonly name: string; readonly place: Place } | undefined;
  /** Where something about it is said. */
  readonly place: Place;
  /** ` after \`field-fix\``, or nothing. */
  readonly after: string;
}

/** The winch of a winch block with the line it carries, or every winch whose line a repair block changes. */
export function* winchesInUse(block: BoundBlock, assessing: Assessing): Generator<WinchInUse> {
  const { head } = block.definition;
  if (head === 'winch') {
    const winch = assessing.winch(block);
    if (winch.piece !== undefined && winch.piece.retired === undefined) yield { winch, piece: winch.piece, repair: undefined, place: winch.carries?.place ?? block.namePlace, after: '' };
  }
  const repaired = head === 'repair' ? assessing.repaired(block) : undefined;
  if (repaired === undefined) return;
  for (const [name, piece] of repaired.after.pieces) {
    if (repaired.before.pieces.get(name)?.long === piece.long || piece.retired !== undefined) continue;
    for (const carrier of assessing.reader.winchesCarrying(name)) yield { winch: assessWinch(carrier, piece, assessing.practice), piece, repair: { name: repaired.name, place: block.namePlace }, place: block.namePlace, after: ` after \`${repaired.name}\`` };
  }
}
