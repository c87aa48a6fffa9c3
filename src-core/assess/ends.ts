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

/** The same without those for which no bury is asked: line that is not hollow braid, and ends of which their maker says what they hold. */
export function* workedEnds(line: AssessedLine): Generator<EndOfPiece> {
  if (line.facts.tooOddToSplice !== undefined) return;
  for (const each of allEnds(line)) if (each.end.facts.holds === undefined || each.end.facts.bury !== undefined) yield each;
}

export const endName = (piece: AssessedPiece, end: AssessedEnd): string => (end.which === 'joint' ? `the joint ${end.isInDoubt === true ? 'that may be ' : ''}in \`${piece.name}\`` : `\`${piece.name}\` ${end.which} eye`);
