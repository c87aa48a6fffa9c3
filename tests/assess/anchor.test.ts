import { describe, expect, test } from 'vitest';
import { isUnknown } from '../../src-core/mechanics/derivation.ts';
import type { AssessedAnchor } from '../../src-core/assess/assess-anchor.ts';
import { judgedRig, shown } from '../support/judged-pull.ts';

const anchor = (statements: string, more = ''): AssessedAnchor => {
  const { assessed } = judgedRig(`anchor one {\n  ${statements.replaceAll('; ', '\n  ')}\n}\n${more}`).block('anchor');
  if (assessed.kind !== 'anchor') throw new Error('the anchor was not assessed');
  return assessed;
};
const pounds = (of: AssessedAnchor): number => (isUnknown(of.holding) ? NaN : of.holding.amount.low / 4.4482216152605);

describe('what is published', () => {
  // NAVEDTRA 14251, picket holdfasts in loam: 700, 1,800 and 4,000 lb.
  test.each([['single', 700], ['one-one-one', 1800], ['three-two-one', 4000]])('pickets %s hold %d lb in loam', (form, holding) => {
    expect(pounds(anchor(`kind  pickets; pickets  ${form}; soil  loam`))).toBeCloseTo(holding, 6);
  });
  // US Army TM 5-5420-278-10, WP 0035 table 9: 4,000 lb/ft2 at 5 ft and 1:3; a face of 1 ft, 5 ft long less 1 ft holds 16,000 lb.
  test('a buried log', () => expect(pounds(anchor('kind  buried-log; log  5 ft face 1 ft; depth  5 ft; slope  3; soil  loam'))).toBeCloseTo(16_000, 4));
  // The same, deadman thickness: a log is at most 5 thicknesses long; what is longer counts no more.
  test('a log that is longer than it is thick', () => expect(pounds(anchor('kind  buried-log; log  20 ft face 1 ft; depth  5 ft; slope  3; soil  loam'))).toBeCloseTo(16_000, 4));
  test('in hardpan five times, in wet ground half of that', () => {
    expect(pounds(anchor('kind  buried-log; log  5 ft face 1 ft; depth  5 ft; slope  3; soil  hardpan'))).toBeCloseTo(80_000, 3);
    expect(pounds(anchor('kind  buried-log; log  5 ft face 1 ft; depth  5 ft; slope  3; soil  wet'))).toBeCloseTo(8_000, 4);
  });
  // Towing training text: a braked vehicle holds 0.666 of its weight.
  test('a braked vehicle', () => expect(pounds(anchor('kind  vehicle; vehicle  dipper', 'vehicle dipper {\n  mass  6,000 lb\n}\n'))).toBeCloseTo(3996, 6));
  test('what somebody answers for stands before any table', () => expect(shown(anchor('kind  pickets; pickets  single; soil  loam; holding  9 kN "pulled"').holding)).toBe('9 kN'));
});

describe('what is not', () => {
  test.each([
    ['kind  tree; girth  1.3 m', 'no table gives it for a tree'],
    ['kind  rock', 'no table gives it for a rock'],
    ['kind  ground-anchor', 'no table gives it for a ground anchor'],
    ['girth  1.3 m', 'kind of `one` is not given'],
    ['kind  vehicle', 'vehicle of `one` is not given'],
    ['kind  vehicle; vehicle  dipper', 'not known'],
    ['kind  pickets; soil  loam', 'pickets of `one` is not given'],
    ['kind  pickets; pickets  single', 'soil of `one` is not given'],
    ['kind  pickets; pickets  single; soil  wet', 'published for loam only'],
    ['kind  buried-log; depth  5 ft; slope  3; soil  loam', 'log of `one` is not given'],
    ['kind  buried-log; log  6 ft face 1 ft; slope  3; soil  loam', 'depth of `one` is not given'],
    ['kind  buried-log; log  6 ft face 1 ft; depth  5 ft; soil  loam', 'slope of `one` is not given'],
    ['kind  buried-log; log  6 ft face 1 ft; depth  5 ft; slope  3', 'soil of `one` is not given'],
    ['kind  buried-log; log  6 ft face 1 ft; depth  2 ft; slope  3; soil  loam', 'no holding power is published for so shallow a log'],
  ])('%s', (statements, says) => expect(shown(anchor(statements).holding)).toContain(says));
});
