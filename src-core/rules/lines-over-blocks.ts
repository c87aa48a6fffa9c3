import type { AssessedGear } from '../assess/assess-gear.ts';
import type { AssessedPiece } from '../assess/assess-line.ts';
import type { Assessing } from '../assess/assessing.ts';
import type { Place } from '../base/span.ts';
import { nameOf, type BoundBlock } from '../model/bound.ts';

/** A line that runs over a block, and where the file says so. */
export interface LineOverBlock {
  readonly gear: AssessedGear;
  readonly piece: AssessedPiece;
  readonly place: Place;
}

/** The lines over blocks that a pull or a chain speaks of. */
export function linesOverBlocks(block: BoundBlock, assessing: Assessing): LineOverBlock[] {
  const { head } = block.definition;
  if (head === 'chain') {
    return assessing.chain(block).joints.flatMap(({ first, second }) => {
      const [line, pulley] = first.gear === 'block' ? [second, first] : [first, second];
      return line.piece === undefined || pulley.gearFacts?.head !== 'block' ? [] : [{ gear: pulley.gearFacts, piece: line.piece, place: pulley.place }];
    });
  }
  const winch = head === 'pull' ? nameOf(block.header, 'winch') : undefined;
  const found = winch === undefined ? undefined : assessing.reader.find(winch.name, ['winch']);
  const piece = found === undefined ? undefined : assessing.winch(found.block).piece;
  if (piece === undefined) return [];
  return block.statements.flatMap((statement) => {
    const named = statement.definition.head === 'via' ? nameOf(statement.values, 'block') : undefined;
    const pulley = named === undefined ? undefined : assessing.reader.find(named.name, ['block']);
    return pulley === undefined ? [] : [{ gear: assessing.gear(pulley.block), piece, place: named!.place }];
  });
}
