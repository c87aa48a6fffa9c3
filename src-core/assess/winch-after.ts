import type { BoundBlock } from '../model/bound.ts';
import { assessWinch, carriedName, type AssessedWinch } from './assess-winch.ts';
import type { Assessing } from './assessing.ts';

/** A winch as it is when the chain is loaded: after a repair it carries what the repair leaves of its line. */
export function winchAfter(block: BoundBlock, repair: BoundBlock | undefined, assessing: Assessing): AssessedWinch {
  const winch = assessing.winch(block);
  const carried = carriedName(block);
  const repaired = repair === undefined ? undefined : assessing.repaired(repair);
  const left = carried === undefined ? undefined : repaired?.after.pieces.get(carried);
  if (left !== undefined) return left === winch.piece ? winch : assessWinch(block, left, assessing.practice);
  // A line that is joined to another one is not there any more by its name: what then stands on the drum nobody wrote.
  if (carried === undefined || repaired?.before.pieces.has(carried) !== true) return winch;
  const after = repair?.name ?? 'the repair';
  return assessWinch(block, undefined, assessing.practice, { key: `line of ${winch.name} after ${after}`, says: `which line \`${winch.name}\` carries after \`${after}\` is not known: \`${carried}\` is gone`, help: 'carry the piece that is left, in a winch block of its own', place: winch.carries?.place });
}
