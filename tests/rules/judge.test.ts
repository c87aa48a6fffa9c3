import { describe, expect, test } from 'vitest';
import type { Place } from '../../src-core/base/span.ts';
import { unknown, type Derivation, type Given } from '../../src-core/mechanics/derivation.ts';
import { Judge, relatedPlaces, type RuleHead } from '../../src-core/rules/judge.ts';
import { between, exactly, type Amount } from '../../src-core/units/amount.ts';

const chunk = { text: 'own' };
const other = { text: 'other' };
const at = (start: number, end: number, where: object = chunk): Place => ({ chunk: where, start, end });
const written = (amount: Amount, place: Place): Given => ({ amount, kind: 'length', origin: { from: 'written', place } });
const rule: RuleHead = { name: 'bury-too-short', severity: 'error', why: 'its reason', source: 'its source' };
const cause = { key: 'length of main', says: 'length of `main` is not given', help: 'add `length`' };

function judging(): Judge {
  const judge = new Judge();
  judge.begin(rule);
  return judge;
}
const counts = (judge: Judge): { made: number; failed: number; found: number; notJudged: number } => ({ made: judge.made, failed: judge.failed, found: judge.findings.length, notJudged: judge.notJudged.length });
const draft = (place: Place) => () => ({ place, message: 'it does not hold', help: 'change it' });

describe('what is counted', () => {
  test('nothing, before anything was judged', () => {
    expect(counts(judging())).toEqual({ made: 0, failed: 0, found: 0, notJudged: 0 });
  });

  test('a condition that holds is a check, and one that fails is a check and a finding', () => {
    const judge = judging();
    expect(judge.holds(true, draft(at(0, 1)))).toBe(true);
    expect(counts(judge)).toEqual({ made: 1, failed: 0, found: 0, notJudged: 0 });
    expect(judge.holds(false, draft(at(0, 1)))).toBe(false);
    expect(counts(judge)).toEqual({ made: 2, failed: 1, found: 1, notJudged: 0 });
    expect(judge.findings).toEqual([{ code: 'bury-too-short', severity: 'error', place: at(0, 1), message: 'it does not hold', why: 'its reason', help: 'change it', source: 'its source', related: [], fixes: [] }]);
  });

  test('of a chunk alone: what holds was counted with its own line, and what stands elsewhere does not count', () => {
    const judge = judging();
    judge.within(chunk, () => {
      expect(judge.holds(true, draft(at(0, 1)))).toBe(true);
      expect(counts(judge)).toEqual({ made: 0, failed: 0, found: 0, notJudged: 0 });
      expect(judge.holds(false, draft(at(0, 1, other)))).toBe(false);
      expect(judge.atLeast(written(exactly(1), at(0, 1)), written(exactly(2), at(2, 3)), at(0, 1, other), draft(at(0, 1, other)))).toBeUndefined();
      judge.cannot(cause, at(0, 1, other));
      expect(counts(judge)).toEqual({ made: 0, failed: 0, found: 0, notJudged: 0 });
      expect(judge.holds(false, draft(at(0, 1)))).toBe(false);
      judge.cannot(cause, at(0, 1));
      expect(counts(judge)).toEqual({ made: 1, failed: 1, found: 1, notJudged: 1 });
    });
    // After it, every chunk counts again.
    judge.holds(false, draft(at(0, 1, other)));
    expect(counts(judge)).toEqual({ made: 2, failed: 2, found: 2, notJudged: 1 });
  });
});

describe('a comparison takes the careful ends of both', () => {
  const place = at(0, 5);
  const compared = (what: 'atLeast' | 'atMost', value: Amount, limit: Amount): boolean | undefined => judging()[what](written(value, place), written(limit, at(10, 15)), place, draft(place));
  test.each([
    ['at least: at the limit', 'atLeast', exactly(2), exactly(2), true],
    ['at least: below it', 'atLeast', exactly(1.9), exactly(2), false],
    ['at least: the lower end counts', 'atLeast', between(1.9, 3), exactly(2), false],
    ['at least: the higher limit counts', 'atLeast', exactly(2), between(1.5, 2.1), false],
    ['at least: both ranges touch', 'atLeast', between(2, 3), between(1, 2), true],
    ['at most: at the limit', 'atMost', exactly(2), exactly(2), true],
    ['at most: above it', 'atMost', exactly(2.1), exactly(2), false],
    ['at most: the higher end counts', 'atMost', between(1, 2.1), exactly(2), false],
    ['at most: the lower limit counts', 'atMost', exactly(2), between(1.9, 3), false],
    ['at most: both ranges touch', 'atMost', between(1, 2), between(2, 3), true],
  ] as const)('%s', (_what, how, value, limit, holds) => {
    expect(compared(how, value, limit)).toBe(holds);
  });

  test('one that holds is counted, one that is not known is not judged, one that may be worse neither', () => {
    const judge = judging();
    const one = written(exactly(1), place);
    const two = written(exactly(2), at(10, 15));
    expect(judge.atLeast(two, one, place, draft(place))).toBe(true);
    expect(counts(judge)).toEqual({ made: 1, failed: 0, found: 0, notJudged: 0 });
    expect(judge.atLeast(unknown(cause), one, place, draft(place))).toBeUndefined();
    expect(judge.atLeast(one, unknown(cause), place, draft(place))).toBeUndefined();
    expect(judge.atLeast(two, one, place, draft(place), cause)).toBeUndefined();
    expect(counts(judge)).toEqual({ made: 1, failed: 0, found: 0, notJudged: 3 });
    expect(judge.notJudged[0]).toEqual({ cause, rule: 'bury-too-short', place });
    expect(judge.atLeast(one, two, place, draft(place), cause)).toBe(false);
    expect(counts(judge)).toEqual({ made: 2, failed: 1, found: 1, notJudged: 3 });
    expect(judge.findings[0]!.related).toEqual([{ place: at(10, 15), message: 'length' }]);
  });
});

describe('related places', () => {
  const madeOf = (...places: readonly Place[]): Given => {
    const derivation: Derivation = {
      calculation: 'sum', means: 'a sum', symbol: 's', amount: exactly(1), kind: 'length', formula: 's = a + b', sources: [], assumptions: [], notes: [],
      inputs: places.map((place) => ({ symbol: 'a', meaning: `figure at ${place.start}`, given: written(exactly(1), place) })),
    };
    return { amount: exactly(1), kind: 'length', origin: { from: 'derived', derivation } };
  };
  const own = at(10, 20);
  const related = (...places: readonly Place[]): string[] => relatedPlaces(madeOf(...places), madeOf(), own).map((r) => `${r.place.chunk === chunk ? '' : 'other '}${r.place.start}-${r.place.end} ${r.message}`);

  test.each([
    ['the finding\'s own place', at(10, 20), []],
    ['inside it', at(12, 18), []],
    ['from its start', at(10, 12), []],
    ['to its end', at(18, 20), []],
    ['before it', at(2, 4), ['2-4 figure at 2']],
    ['behind it', at(25, 30), ['25-30 figure at 25']],
    ['from before it into it', at(9, 15), ['9-15 figure at 9']],
    ['from inside it past its end', at(15, 21), ['15-21 figure at 15']],
    ['around it', at(9, 21), ['9-21 figure at 9']],
    ['as far into another chunk', at(12, 18, other), ['other 12-18 figure at 12']],
  ] as const)('%s', (_what, place, said) => {
    expect(related(place)).toEqual(said);
  });

  test('those of the limit follow those of the value, and each place is said once', () => {
    const limit = madeOf(at(30, 35), at(40, 45));
    expect(relatedPlaces(madeOf(at(1, 2), at(30, 35)), limit, own).map((r) => r.place.start)).toEqual([1, 30, 40]);
  });

  test('the same offset of another chunk, and another offset of the same chunk, are other places', () => {
    expect(related(at(1, 2), at(1, 2, other), at(3, 4))).toEqual(['1-2 figure at 1', 'other 1-2 figure at 1', '3-4 figure at 3']);
  });

  test('there are six at most', () => {
    const places = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => at(100 + i * 10, 105 + i * 10));
    expect(related(...places.slice(0, 5))).toHaveLength(5);
    expect(related(...places)).toEqual([100, 110, 120, 130, 140, 150].map((start) => `${start}-${start + 5} figure at ${start}`));
  });
});
