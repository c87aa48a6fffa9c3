import type { AssessedLine, AssessedPiece } from './assess-line.ts';
import type { AssessedEnd, BuriedEnd } from './splice-end.ts';

export interface EndOfPiece {
  readonly piece: AssessedPiece;
  readonly end: AssessedEnd;
  readonly buried: BuriedEnd;
}

/** Pieces that are not retired: of the others nothing is asked any more. */
export const inService = (line: AssessedLine): AssessedPiece[] => [...line.pieces.values()].filter((piece) => piece.retired === undefined);

/** Every buried splice that is in service now, the two ends and the joints of each piece. */
export function* allEnds(line: AssessedLine): Generator<EndOfPiece> {
  for (const piece of inService(line)) {
    for (const end of [piece.inboard, piece.outboard, ...piece.joints]) {
      if (end.buried !== undefined) yield { piece, end, buried: end.buried };
    }
  }
}

export const endName = (piece: AssessedPiece, end: AssessedEnd): string => (end.which === 'joint' ? `the joint ${end.isInDoubt === true ? 'that may be ' : ''}in \`${piece.name}\`` : `\`${piece.name}\` ${end.which} eye`);
