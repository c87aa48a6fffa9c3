import type { AssessedLine, AssessedPiece } from './assess-line.ts';
import type { AssessedEnd, BuriedEnd } from './splice-end.ts';

export interface EndOfPiece {
  readonly piece: AssessedPiece;
  readonly end: AssessedEnd;
  readonly buried: BuriedEnd;
}

/** Every buried splice that is on the line now, the two ends and the joints of each piece. */
export function* allEnds(line: AssessedLine): Generator<EndOfPiece> {
  for (const piece of line.pieces.values()) {
    for (const end of [piece.inboard, piece.outboard, ...piece.joints]) {
      if (end.buried !== undefined) yield { piece, end, buried: end.buried };
    }
  }
}

export const endName = (piece: AssessedPiece, end: AssessedEnd): string => (end.which === 'joint' ? `the joint in \`${piece.name}\`` : `\`${piece.name}\` ${end.which} eye`);
