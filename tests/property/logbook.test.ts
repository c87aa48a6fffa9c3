import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { AssessedLine, AssessedPiece } from '../../src-core/assess/assess-line.ts';
import { overlaps } from '../../src-core/assess/splice-stretches.ts';
import { isUnknown, mostOf } from '../../src-core/mechanics/derivation.ts';
import { readDay } from '../../src-core/model/day.ts';
import { projectOf, testDay } from '../support/judge-text.ts';

const eye = 'eye thimble tube bury 72 d taper 24 d size 200 mm stitched';
const piecesOf = (entries: readonly string[], length: string, fitted = '2026-01-01 fitted'): ReadonlyMap<string, AssessedPiece> => {
  const text = `line main {\n  material HMPE\n  strands 12\n  diameter 10 mm\n  ${length}\n  breaking 92 kN\n  outboard ${eye}\n  ${fitted}\n${entries.map((e) => `  2026-06-01 ${e}`).join('\n')}\n}\n`;
  const line = projectOf(text).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks[0]!.assessed as AssessedLine;
  return line.pieces;
};
const main = (entries: readonly string[], length: string, fitted?: string): AssessedPiece => piecesOf(entries, length, fitted).get('main')!;
/** What a rule may count on: nothing where it is not known, where more may be known to the worse, or of a retired piece. */
const counted = (piece: AssessedPiece): number => (isUnknown(piece.strength) || piece.incomplete !== undefined || piece.retired !== undefined ? 0 : piece.strength.amount.low);

const metres = fc.double({ min: 0.5, max: 29.5, noNaN: true }).map((x) => `${x.toFixed(2)} m`);
const entry = fc.oneof(
  fc.tuple(fc.integer({ min: 1, max: 4 }), metres, fc.constantFrom('inboard', 'outboard')).map(([n, at, end]) => `damage cut ${n} strands at ${at} from ${end}`),
  fc.tuple(fc.integer({ min: 1, max: 40 }), metres).map(([share, at]) => `damage abrasion ${share} % at ${at} from inboard`),
  fc.integer({ min: 5, max: 100 }).map((load) => `pulled ${load} kN`),
  fc.tuple(fc.integer({ min: 20, max: 150 }), metres).map(([heat, at]) => `heated ${heat} degC at ${at} from inboard`),
  fc.constantFrom('retired', 'retired tail', 'damage cut 1 strand at 31 m from inboard', 'damage cut 1 strand at 3 m from inboard of tail', 'cut at 40 m from inboard', 'splice tail outboard eye bury 72 d', 'join main to tail bury 72 d'),
);

test('one more thing that happened to a line never leaves it stronger', () => {
  fc.assert(
    fc.property(fc.array(entry, { maxLength: 4 }), entry, fc.constantFrom('length 30 m', ''), (entries, more, length) => {
      expect(counted(main([...entries, more], length))).toBeLessThanOrEqual(counted(main(entries, length)) * (1 + 1e-12));
    }),
    { numRuns: 200 },
  );
});

/** What a check fails by: known of the piece, whatever else is not. */
const failing = (piece: AssessedPiece): number => mostOf(piece.strength)?.amount.low ?? Infinity;
const worse = fc.oneof(entry, fc.tuple(fc.constantFrom('melt', 'stain', 'kink', 'glaze hard', 'abrasion heavy', 'cut'), metres).map(([kind, at]) => `damage ${kind} at ${at} from inboard`));

test('nor does it let a check hold that failed, where it leaves nobody knows what', () => {
  fc.assert(
    // A cut takes an end off, with whatever was wrong with it.
    fc.property(fc.array(worse, { maxLength: 4 }), worse.filter((e) => !/^(?:cut|splice|join)/.test(e)), fc.constantFrom('length 30 m', '', 'length 30 m\n  stored outdoors'), fc.constantFrom('2026-01-01 fitted', ''), (entries, more, length, fitted) => {
      const [before, after] = [entries, [...entries, more]].map((log) => main(log, length, fitted));
      expect(failing(after!)).toBeLessThanOrEqual(failing(before!) * (1 + 1e-12));
    }),
    { numRuns: 300 },
  );
});

/** The joint lies somewhere between 13.2 and 14.95 m from inboard, and from outboard: places at its edges are worth more tries than plain line. */
const aroundJoint = fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1300, max: 1500 }), fc.constantFrom('inboard', 'outboard')).map(([n, at, end]) => `damage cut ${n} strands at ${(at / 100).toFixed(2)} m from ${end}`);

test('and neither does turning it', () => {
  fc.assert(
    fc.property(fc.array(fc.oneof(entry, aroundJoint), { maxLength: 3 }), fc.constantFrom('length 30 m', ''), fc.constantFrom('40 d taper 20 d', '72 d taper 24 d'), (entries, length, bury) => {
      const joined = ['cut at 15 m from inboard keep tail', `join main to tail bury ${bury} stitched`, ...entries];
      // Inboard and outboard change places, so only what lies between them is compared.
      const body = (piece: AssessedPiece): number => (isUnknown(piece.body) || piece.incomplete !== undefined ? 0 : piece.body.amount.low);
      const [asItLay, turned] = [body(main(joined, length)), body(main([...joined, 'reversed'], length))];
      expect(turned).toBeLessThanOrEqual(asItLay * (1 + 1e-12));
      // Where its length is known, no place is lost by turning it either.
      if (length !== '') expect(turned).toBeGreaterThanOrEqual(asItLay * (1 - 1e-12));
    }),
    { numRuns: 200 },
  );
});

/** Somewhere on every piece of the line below, whichever way it was turned. */
const shortPlace = fc.tuple(fc.integer({ min: 10, max: 290 }), fc.constantFrom('inboard', 'outboard')).map(([at, end]) => `${(at / 100).toFixed(2)} m from ${end}`);
const laterEntry = fc.oneof(
  fc.tuple(fc.integer({ min: 1, max: 4 }), shortPlace).map(([n, at]) => `damage cut ${n} strands at ${at}`),
  fc.tuple(fc.integer({ min: 20, max: 150 }), shortPlace).map(([heat, at]) => `heated ${heat} degC at ${at}`),
  fc.constant('reversed'),
);

test('a line whose length nobody wrote is never counted stronger than the same line measured, whatever is joined and cut', () => {
  fc.assert(
    fc.property(fc.constantFrom('inboard', 'outboard'), fc.array(laterEntry, { maxLength: 3 }), fc.integer({ min: 400, max: 2500 }), fc.constantFrom('inboard', 'outboard'), fc.array(laterEntry, { maxLength: 2 }), fc.boolean(), (first, before, at, from, after, again) => {
      const log = [`cut at 5 m from ${first} keep tail`, 'join main to tail bury 30 d taper 20 d stitched', ...before, `cut at ${(at / 100).toFixed(2)} m from ${from} keep rest`, ...after, ...(again ? ['join main to rest bury 30 d taper 20 d stitched'] : [])];
      const [known, unknown] = ['length 30 m', ''].map((length) => piecesOf(log, length));
      // What does not fit the measured line, and which splices overlap, cannot be told of the other: that is not judged there, by rules of its own.
      fc.pre([...known!.values()].every((piece) => piece.incomplete === undefined && !piece.splices.gaps.some(overlaps)));
      for (const [name, piece] of known!) expect(counted(unknown!.get(name)!)).toBeLessThanOrEqual(counted(piece) * (1 + 1e-12));
    }),
    { numRuns: 200 },
  );
});
