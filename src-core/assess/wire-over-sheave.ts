import { bendRatio } from '../mechanics/bend-ratio.ts';
import { asGiven, isUnknown, mostOf, unknown, type Given, type Value } from '../mechanics/derivation.ts';
import { wireBendShare } from '../mechanics/wire-bend-share.ts';
import { wireRopeSheaveLossTable } from '../trade/wire-rope-sheave-loss-table.ts';
import type { AssessedPiece } from './assess-line.ts';
import { factOf } from './facts.ts';
import type { PullBlock } from './pull-rigging.ts';

/** The least bend ratio for which the loss of wire rope is published. */
export const leastPublishedRatio = Math.min(...wireRopeSheaveLossTable.rows.map((row) => row.ratio));

const times = (limit: Given, share: Given, block: string): Value =>
  asGiven({
    calculation: 'wire-over-sheave', means: `what the bend at \`${block}\` leaves of it`, symbol: 'F_s', kind: limit.kind,
    amount: { low: limit.amount.low * share.amount.low, high: limit.amount.high * share.amount.high },
    formula: 'F_s = s F', inputs: [{ symbol: 'F', meaning: 'limit of the line that runs straight', given: limit }, { symbol: 's', meaning: 'share left over the sheave', given: share }],
    sources: [wireRopeSheaveLossTable.source], assumptions: [], notes: [],
  });

/** What is left of a limit of a line that runs over blocks: wire rope loses by the bend; for fibre no figure is published. */
export function limitOverBlocks(limit: Value, piece: AssessedPiece, blocks: readonly PullBlock[]): Value {
  if (piece.line.material !== 'wire') return limit;
  let least = limit;
  for (const b of blocks) {
    if (b.block === undefined) continue;
    const R = asGiven(bendRatio({ D: factOf(b.block, 'sheave'), d: piece.line.diameter }));
    const share = asGiven(wireBendShare({ R }));
    const most = mostOf(limit);
    const left: Value = isUnknown(share) ? unknown(isUnknown(R) ? R.unknown : { key: `bend at ${b.name}`, says: `what a bend so sharp as at \`${b.name}\` leaves of \`${piece.name}\` is not published`, help: 'use a block with a larger sheave', place: b.place, reported: true }, most) : most === undefined ? limit : isUnknown(limit) ? unknown(limit.unknown, times(most, share, b.name) as Given) : times(limit, share, b.name);
    const [a, c] = [mostOf(least), mostOf(left)];
    if (isUnknown(least) && !isUnknown(left)) continue;
    if (isUnknown(left) || a === undefined || (c !== undefined && c.amount.low < a.amount.low)) least = left;
  }
  return least;
}
