import { didYouMean, editDistance } from '../base/did-you-mean.ts';
import type { Dimension } from './dimension.ts';
import { unitNamed, units, unitWords, type Unit } from './unit-table.ts';

/** Plain spellings that are not written in a rig, each with the unit that stands for it. */
const spelled: ReadonlyMap<string, string> = new Map(Object.entries({
  mtr: 'm', mtrs: 'm',
  dia: 'd', diam: 'd', diams: 'd', diameter: 'd', diameters: 'd',
  gram: 'g', grams: 'g',
  kilo: 'kg', kilos: 'kg', kgs: 'kg', kilogram: 'kg', kilograms: 'kg', kilogramme: 'kg', kilogrammes: 'kg',
  pound: 'lb', pounds: 'lb',
  mt: 't', 'metric-ton': 't', 'metric-tons': 't', 'metric-tonne': 't', 'metric-tonnes': 't',
  newton: 'N', newtons: 'N', kilonewton: 'kN', kilonewtons: 'kN', decanewton: 'daN', decanewtons: 'daN',
  'kg-f': 'kgf', 'kilogram-force': 'kgf', 'kilograms-force': 'kgf',
  'lb-f': 'lbf', 'lbs-f': 'lbf', lbsf: 'lbf', 'pound-force': 'lbf', 'pounds-force': 'lbf', klbf: 'kip', klb: 'kip', klbs: 'kip',
  radian: 'rad', radians: 'rad',
  sec: 's', secs: 's', mins: 'min', hr: 'h', hrs: 'h', wk: 'weeks', wks: 'weeks', mth: 'months', mths: 'months', yr: 'years', yrs: 'years',
  kmh: 'km/h', kph: 'km/h', kmph: 'km/h', 'km/hr': 'km/h', mps: 'm/s', mpm: 'm/min', fpm: 'ft/min', 'mi/h': 'mph',
  celsius: 'degC', fahrenheit: 'degF',
  pc: '%', pct: '%', percents: '%', 'per-cent': '%',
}));

const prefixes = /^(?:da|[dchkKMGTmunµ])/u;
const mayHavePrefix: ReadonlySet<string> = new Set(['m', 'g', 't', 'N', 's', 'J', 'Pa', 'lb', 'lbf']);

/** `MN` is a unit with another factor before it: whatever is near it is wrong by powers of ten. */
const isPrefixed = (word: string): boolean => mayHavePrefix.has(word.replace(prefixes, '')) && !mayHavePrefix.has(word);

const fits = (unit: Unit | undefined, wanted: readonly Dimension[] | undefined): boolean => unit !== undefined && (wanted === undefined || wanted.includes(unit.dimension));
const unitOf = (word: string): Unit | undefined => unitNamed(spelled.get(word) ?? word);

/**
 * The unit word that was most likely meant, of one of the `wanted` dimensions; undefined when none is near. A suggestion
 * never crosses to another dimension: when a unit of another one is nearer, that is what was meant, and it does not belong here.
 */
export function unitMeant(word: string, wanted?: readonly Dimension[]): string | undefined {
  const plain = spelled.get(word.toLowerCase());
  if (plain !== undefined) return fits(unitNamed(plain), wanted) ? plain : undefined;
  const all = [...unitWords()];
  const sameLetters = all.filter((w) => w.toLowerCase() === word.toLowerCase() && fits(unitNamed(w), wanted));
  if (sameLetters.length > 0) return sameLetters[0];
  // A letter more or less of a short word makes another unit of it.
  if (word.length <= 2 || isPrefixed(word)) return undefined;
  const known = [...all, ...spelled.keys()].filter((w) => w.length > 2 || fits(unitOf(w), wanted));
  const near = didYouMean(word, known.filter((w) => fits(unitOf(w), wanted)));
  if (near === undefined) return undefined;
  const nearest = didYouMean(word, known);
  const cost = (other: string): number => editDistance(word.toLowerCase(), other.toLowerCase(), 64);
  return nearest === undefined || fits(unitOf(nearest), wanted) || cost(near) <= cost(nearest) ? (spelled.get(near) ?? near) : undefined;
}

/** Units that people write every day, those of other measures left aside. */
const everyday: readonly string[] = ['mm', 'cm', 'm', 'in', 'ft', 'd', 'kN', 'lbf', 't', 'kg', 'lb', 'kgf', 'N', 'deg', '%', 's', 'min', 'h', 'days', 'weeks', 'months', 'years', 'm/min', 'km/h', 'ft/min', 'degC', 'degF', 'm2', 'ft2'];

/** Units of these dimensions, the most usual first. */
export const everydayUnits = (wanted: readonly Dimension[]): readonly Unit[] => {
  const found = everyday.map((w) => unitNamed(w)!).filter((u) => wanted.includes(u.dimension));
  return found.length > 0 ? found : units.filter((u) => wanted.includes(u.dimension));
};

/** `mm, cm, m, in or ft`: for help. */
export const listUnits = (wanted: readonly Dimension[]): string => {
  const words = everydayUnits(wanted).slice(0, 7).map((u) => u.symbol);
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)!}`;
};
