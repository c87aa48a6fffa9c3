import { between, exactly, type Amount } from '../units/amount.ts';
import type { Kind } from '../units/dimension.ts';
import { toSI, unitNamed } from '../units/unit-table.ts';
import { sheaveLoss, sheaveLossRoller } from './sheave-efficiency.ts';
import type { Source } from './source.ts';
import { ownChoice, practice, sources } from './sources.ts';

/** A value that is used when nobody wrote one. It is marked as assumed wherever it shows, and one written line replaces it. */
export interface PracticeValue {
  readonly key: string;
  /** What it holds for, when it does not hold for all: a material, a kind of gear, a degree of wear. */
  readonly for?: string;
  readonly means: string;
  readonly kind: Kind;
  readonly amount: Amount;
  readonly source: Source;
}

const si = (value: number, word: string): number => toSI(value, unitNamed(word)!);
const percent = (value: number): Amount => exactly(value / 100);
const percents = (low: number, high: number): Amount => between(low / 100, high / 100);

const row = (key: string, holdsFor: string | undefined, means: string, kind: Kind, amount: Amount, source: Source): PracticeValue => ({
  key,
  ...(holdsFor === undefined ? {} : { for: holdsFor }),
  means,
  kind,
  amount,
  source,
});

const taperThird = ownChoice('taper-a-third', 'the taper is a third of the bury, as in the maker\'s HMPE instruction (21 d of 63 d); no figure for this material was found');
const wordOfWear = ownChoice('word-of-wear', 'a word is not a measurement, so the heavy end of what it may mean is taken; write the share of strand volume that is gone');

/** The built-in values. Where sources disagree the careful one stands here and the others are in the tables. */
export const builtInPractice: readonly PracticeValue[] = [
  // Drum
  row('keep-wraps', 'HMPE', 'wraps kept on the barrel', 'needed count', exactly(10), sources['practice-keep-wraps-hmpe']),
  row('keep-wraps', undefined, 'wraps kept on the barrel', 'needed count', exactly(5), sources['alberta-ohs-299']),
  row('freeboard', undefined, 'flange above the outermost layer', 'needed diameters', exactly(1), sources['practice-freeboard']),
  row('spooling-tension', undefined, 'tension to spool the line under', 'tension', exactly(si(500, 'lbf')), sources['tm-9-2320-280-10-spooling']),
  row('fleet-angle-most', undefined, 'greatest fleet angle on a smooth drum', 'angle', exactly(si(1.5, 'deg')), sources['wire-rope-manual-fleet']),
  row('fleet-angle-least', undefined, 'smallest fleet angle at the flange', 'angle', exactly(si(0.5, 'deg')), sources['wire-rope-manual-fleet']),
  row('fill-factor', undefined, 'share of the drum\'s computed capacity that line really fills', 'share', between(0.7, 0.9), sources['sae-j706-2017-fill']),

  // Factors
  row('line-factor', undefined, 'breaking strength of the line over the pull it is used with', 'needed count', exactly(3), sources['ufc-4-159-03-3-7']),
  row('design-factor', 'shackle', 'breaking strength over working limit of a shackle', 'needed count', exactly(5), sources['asme-b30-26-1-2']),
  row('design-factor', 'line', 'breaking strength over working limit of fibre line', 'needed count', exactly(5), sources['ci-1401-15']),
  row('design-factor', 'soft-shackle', 'breaking strength over working limit of fibre gear', 'needed count', exactly(5), sources['ci-1401-15']),
  row('design-factor', 'strap', 'breaking strength over working limit of a sling', 'needed count', exactly(5), sources['29-cfr-1918-app-ii']),
  row('design-factor', undefined, 'breaking strength over working limit of steel gear', 'needed count', exactly(5), ownChoice('factor-as-shackle', 'steel gear without a figure of its own is treated like a shackle (ASME B30.26)')),

  // Splices: the bury counts from throat to tail end and the taper is part of it.
  row('bury', 'HMPE', 'needed bury, taper included', 'needed diameters', exactly(72), sources['toss-103-105']),
  row('bury', 'polyester', 'needed bury, taper included', 'needed diameters', exactly(24), sources['toss-103-105']),
  row('bury', 'nylon', 'needed bury, taper included', 'needed diameters', exactly(24), sources['toss-103-105']),
  row('taper', 'HMPE', 'needed taper, the last part of the bury', 'needed diameters', exactly(21), sources['maker-12-strand-eye']),
  row('taper', 'polyester', 'needed taper, the last part of the bury', 'needed diameters', exactly(8), taperThird),
  row('taper', 'nylon', 'needed taper, the last part of the bury', 'needed diameters', exactly(8), taperThird),
  row('lock-stitch', undefined, 'length of the lock-stitch from the throat', 'needed diameters', between(6, 8), sources['lock-stitch-guide']),
  row('splice-shortening', undefined, 'share by which the standing part shortens over the buried tail', 'needed share', percents(15, 25), ownChoice('shortening-between', 'between the measured 15 % and the 25 % of Toss p. 104 (exit at 1 1/3 tail lengths)')),
  row('splice-efficiency', undefined, 'share of the line\'s strength that a full splice keeps', 'share', percents(90, 100), sources['maker-12-strand-eye']),
  row('blunt-loss', undefined, 'share of strength lost when the buried tail ends blunt', 'needed share', percent(8.7), sources['blunt-tail-tests']),
  row('eye-size', undefined, 'line around an eye whose size is not written', 'in diameters', between(12, 40), ownChoice('eye-size-12-40', 'an eye is rarely smaller than a thimble for the line or larger than a hand; write `size` to replace it')),
  row('temporary-life', undefined, 'time until a temporary splice is made again', 'time', exactly(si(30, 'days')), ownChoice('temporary-life-30', 'a temporary splice is made again within 30 days, so that it does not become the lasting one')),

  // Line in service
  row('inspection-interval', undefined, 'longest time between inspections', 'time', exactly(si(6, 'months')), ownChoice('inspection-6-months', 'a line is looked at along its whole length twice a year; a maker or an employer may ask for more')),
  row('abrasion-retire', undefined, 'share of strand volume lost to abrasion at which a line is cut out or retired', 'share', percent(25), sources['ci-2001-04']),
  row('abrasion-share', 'light', 'share of strand volume taken as lost', 'needed share', percent(10), wordOfWear),
  row('abrasion-share', 'moderate', 'share of strand volume taken as lost', 'needed share', percent(25), wordOfWear),
  row('near', undefined, 'distance within which damage counts as one place', 'needed diameters', exactly(72), ownChoice('near-a-bury', 'strands take up load again over about the length of a full bury, so cut strands closer than that are added up, wear is added to them, and of worn places the worst counts')),
  row('washing-interval', undefined, 'longest time between washes', 'time', exactly(si(6, 'months')), ownChoice('washing-6-months', 'grit that works in between the fibres is washed out twice a year; a maker may ask for more')),
  row('cut-strands-limit', undefined, 'cut strands close together at which a line is cut out or retired', 'count', exactly(2), sources['practice-cut-strands']),
  row('overload-share', undefined, 'share of breaking strength above which a line is permanently damaged', 'share', percent(75), sources['navedtra-14160-overload']),
  row('outdoor-loss', undefined, 'share of strength lost outdoors in the outdoor time', 'needed share', percent(30), sources['navedtra-14160-outdoor']),
  row('outdoor-time', undefined, 'time outdoors over which the outdoor loss was observed', 'time', exactly(si(2, 'years')), sources['navedtra-14160-outdoor']),
  row('wet-loss', 'nylon', 'share of strength lost when wet', 'needed share', percent(15), sources['ufc-4-159-03-3-7']),
  row('wet-loss', 'HMPE', 'share of strength lost when wet', 'needed share', percent(0), ownChoice('hmpe-takes-up-no-water', 'HMPE takes up no water (handbook overview of the fibre), so nothing is taken off')),
  row('heat-limit', 'HMPE', 'temperature from which strength is lost', 'temperature', exactly(si(65, 'degC')), sources['hmpe-handbook']),
  row('knot-strength', 'HMPE', 'share of breaking strength at which a knot slips', 'share', percents(20, 35), sources['hmpe-knot-tests']),
  row('knot-strength', undefined, 'share of breaking strength left in a knotted line', 'share', percent(50), sources['ci-1401-15']),

  // Sheaves
  row('sheave-loss', 'plain', 'share of the pull lost at a sheave on a plain bearing', 'needed share', sheaveLoss('plain'), sources['sheave-loss-plain']),
  row('sheave-loss', 'roller', 'share of the pull lost at a sheave on rollers', 'needed share', sheaveLoss('roller'), sheaveLossRoller),
];

/** What the trade has no published figure for: asked for by name, so that "not published" is an answer too. */
export const notPublished: Readonly<Record<string, Source>> = {
  'rope-on-rope': sources['practice-rope-on-rope'],
  'keep-wraps-standard-hmpe': practice('keep-wraps-standard-hmpe', 'no standard for wraps kept of synthetic winch line was found'),
};

/** The value for exactly what was asked, else the one that holds for all, else undefined: then the answer is unknown. */
export const practiceValue = (key: string, holdsFor?: string): PracticeValue | undefined => {
  const ofKey = byKey.get(key);
  return (holdsFor === undefined ? undefined : ofKey?.get(holdsFor)) ?? ofKey?.get(undefined);
};

const byKey = new Map<string, Map<string | undefined, PracticeValue>>();
for (const value of builtInPractice) {
  const ofKey = byKey.get(value.key) ?? new Map<string | undefined, PracticeValue>();
  byKey.set(value.key, ofKey);
  if (!ofKey.has(value.for)) ofKey.set(value.for, value);
}

/** Every key that a practice block may set, once. */
export const practiceKeys: readonly string[] = [...new Set(builtInPractice.map((value) => value.key))];
