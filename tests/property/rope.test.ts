import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ropeUsedByEndToEnd } from '../../src-core/mechanics/rope-used-by-end-to-end.ts';
import { ropeUsedByEye } from '../../src-core/mechanics/rope-used-by-eye.ts';
import { isUnknown, type Derived, type Given } from '../../src-core/mechanics/derivation.ts';
import { bindChunk } from '../../src-core/model/bind-chunk.ts';
import { readDay } from '../../src-core/model/day.ts';
import { replayLogbook } from '../../src-core/model/line-history.ts';
import { axisAt, finishedAt, finishedLength, type LineState, type PieceState } from '../../src-core/model/line-state.ts';
import { splitChunks } from '../../src-core/syntax/chunk.ts';
import { topHeads } from '../../src-core/vocabulary/vocabulary.ts';
import { sources } from '../../src-core/trade/sources.ts';

const until = readDay('2030-01-01')!;
const replay = (entries: readonly string[], contraction: number, length = 'length 60 m'): LineState => {
  const text = `line main {\n  diameter 10 mm\n  ${length}\n${entries.map((e, i) => `  2026-01-${String(i + 1).padStart(2, '0')} ${e}`).join('\n')}\n}\n`;
  const [block] = splitChunks(text, topHeads).flatMap((c) => bindChunk(c.chunk).blocks);
  return replayLogbook(block!, until, { contraction, eyeLoop_d: 20 });
};
const total = (state: LineState): number => [...state.pieces.values()].reduce((sum, p) => sum + finishedLength(p)!, 0);
const given = (value: number, kind: Given['kind']): Given => ({ amount: { low: value, high: value }, kind, origin: { from: 'constant', source: sources.geometry } });
const number = (derived: Derived): number => {
  if (isUnknown(derived)) throw new Error(derived.unknown.says);
  return derived.amount.low;
};

const contraction = fc.double({ min: 0.15, max: 0.25, noNaN: true });
const cm = (metres: number): string => `${metres.toFixed(3)} m`;

describe('rope is neither made nor lost', () => {
  test('pieces that are all kept add up to the line', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.05, max: 0.95, noNaN: true }), { minLength: 1, maxLength: 6 }), contraction, (shares, c) => {
        let length = 60;
        const cuts = shares.map((share, i) => {
          length *= share;
          return `cut at ${cm(length)} from inboard keep p${i}`;
        });
        const state = replay(cuts, c);
        expect(state.problems).toEqual([]);
        expect(total(state)).toBeCloseTo(60, 9);
      }),
    );
  });

  // The lengths that a splice uses are worked out twice, by the replay and by the calculation that the sheet shows.
  test('an eye takes what its calculation says', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 55, noNaN: true }), fc.integer({ min: 20, max: 90 }), fc.integer({ min: 60, max: 400 }), contraction, (at, bury_d, size_mm, c) => {
        const state = replay([`cut at ${cm(at)} from inboard`, `splice outboard eye bury ${bury_d} d size ${size_mm} mm`], c);
        const used = number(ropeUsedByEye({ T: given(bury_d * 0.01, 'length'), E: given(size_mm / 1000, 'length'), c: given(c, 'needed share') }));
        expect(finishedLength(state.pieces.get('main')!)! + used).toBeCloseTo(Number(at.toFixed(3)), 9);
      }),
    );
  });

  test('a joint takes what its calculation says', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 55, noNaN: true }), fc.integer({ min: 20, max: 90 }), contraction, (at, bury_d, c) => {
        const state = replay([`cut at ${cm(at)} from inboard keep tail`, `join main to tail bury ${bury_d} d`], c);
        const used = number(ropeUsedByEndToEnd({ T: given(bury_d * 0.01, 'length'), c: given(c, 'needed share') }));
        expect(total(state) + used).toBeCloseTo(60, 9);
      }),
    );
  });

  test('a longer shortening never leaves more line', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 55, noNaN: true }), fc.integer({ min: 20, max: 90 }), contraction, contraction, (at, bury_d, c1, c2) => {
        const entries = [`cut at ${cm(at)} from inboard`, `splice outboard eye bury ${bury_d} d`];
        expect(total(replay(entries, Math.max(c1, c2)))).toBeLessThanOrEqual(total(replay(entries, Math.min(c1, c2))) + 1e-12);
      }),
    );
  });
});

test('a station read and marked again is the same station', () => {
  fc.assert(
    fc.property(fc.double({ min: 5, max: 55, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), contraction, (at, share, c) => {
      const piece = replay([`cut at ${cm(at)} from inboard`, 'splice outboard eye bury 72 d', 'reversed'], c).pieces.get('main')!;
      const x = share * finishedLength(piece)!;
      expect(finishedAt(piece, axisAt(piece, x))).toBeCloseTo(x, 9);
    }),
  );
});

test('damage keeps its fibre through end-for-end and back', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 59, noNaN: true }), contraction, (at, c) => {
      const once = replay([`damage cut 1 strand at ${cm(at)} from inboard`], c).pieces.get('main')!;
      const twice = replay([`damage cut 1 strand at ${cm(at)} from inboard`, 'reversed', 'reversed'], c).pieces.get('main')!;
      const turned = replay([`damage cut 1 strand at ${cm(at)} from inboard`, 'reversed'], c).pieces.get('main')!;
      expect(twice.marks[0]!.from).toBeCloseTo(once.marks[0]!.from!, 9);
      expect(turned.marks[0]!.from).toBeCloseTo(60 - once.marks[0]!.from!, 9);
    }),
  );
});

describe('a line whose length nobody wrote', () => {
  const metres = fc.double({ min: 1, max: 59, noNaN: true });
  const bury = fc.integer({ min: 20, max: 90 });
  const known = (text: readonly string[], c: number): PieceState => replay(text, c).pieces.get('main')!;
  const unknown = (text: readonly string[], c: number): PieceState => replay(text, c, '').pieces.get('main')!;

  test('has its damage where a line of known length has it after a new inboard eye', () => {
    fc.assert(
      fc.property(metres, bury, contraction, (at, bury_d, c) => {
        const entries = [`damage cut 1 strand at ${cm(at)} from inboard`, `splice inboard eye bury ${bury_d} d size 200 mm`];
        const [mark, other] = [known(entries, c).marks[0]!, unknown(entries, c).marks[0]!];
        expect(other.from).toBeCloseTo(mark.from!, 9);
        expect(other.to).toBeCloseTo(mark.to!, 9);
      }),
    );
  });

  test('may have it wherever a line of known length has it after a new outboard eye', () => {
    fc.assert(
      fc.property(metres, metres, bury, contraction, (at, off, bury_d, c) => {
        const entries = [`damage cut 1 strand at ${cm(at)} from inboard`, `cut at ${cm(off)} from outboard`, `splice outboard eye bury ${bury_d} d size 200 mm`];
        const piece = known(entries, c);
        const [mark] = piece.marks;
        if (mark === undefined || piece.axis === undefined) return;
        const [other] = unknown(entries, c).marks;
        expect(other!.from).toBeLessThanOrEqual(mark.from! + 1e-9);
        expect(other!.to).toBeGreaterThanOrEqual(mark.to! - 1e-9);
      }),
    );
  });
});
