import type { BoundBlock } from '../model/bound.ts';
import { textOf } from '../model/bound.ts';
import { showValue } from '../assess/show.ts';
import { isUnknown } from '../mechanics/derivation.ts';
import { lineSummary } from './hover-line.ts';
import { chainSummary } from './hover-chain.ts';
import { anchorSummary, kitSummary, pullSummary, vehicleSummary } from './hover-pull.ts';
import { winchSummary } from './hover-winch.ts';
import { assessedOf, type Viewing } from './viewing.ts';

/** One line on what a block comes to: the number that somebody would ask for first. */
export function blockSummary(view: Viewing, block: BoundBlock): string {
  const assessed = assessedOf(view, block);
  switch (assessed.kind) {
    case 'line': {
      const piece = assessed.pieces.get(assessed.facts.name);
      return piece === undefined ? 'nothing of it is left' : lineSummary(piece).replace(`${piece.name}: `, '');
    }
    case 'winch':
      return winchSummary(assessed);
    case 'gear':
      return isUnknown(assessed.workingLimit) ? 'limit not known' : `limit ${showValue(assessed.workingLimit)}`;
    case 'chain':
      return chainSummary(assessed);
    case 'repair':
      return `leaves ${[...assessed.after.pieces.values()].map((p) => `${p.name} ${showValue(p.length)}`).join(', ')}`;
    case 'pull':
      return pullSummary(assessed);
    case 'anchor':
      return anchorSummary(assessed);
    case 'vehicle':
      return vehicleSummary(assessed);
    case 'kit':
      return kitSummary(assessed);
    case 'other':
      return textOf(block.header, 'label') ?? block.definition.summary;
  }
}
