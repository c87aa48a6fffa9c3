import type { Dimension } from './dimension.ts';

/** Standard acceleration of gravity, m/s² (NIST SP 811, app. B: exact by definition). */
export const standardGravity = 9.80665;

export type UnitSystem = 'metric' | 'us' | 'both';

export interface Unit {
  /** How it is printed. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** SI value of one unit: exact, or the product of exact definitions. */
  readonly factor: number;
  /** Added after the factor (temperatures only). */
  readonly offset?: number;
  readonly system: UnitSystem;
  /** Words that mean it, the symbol included. */
  readonly words: readonly string[];
  readonly meaning: string;
  /** Digits behind the point when printed; else three significant digits. */
  readonly decimals?: number;
}

// Exact by definition: NIST SP 811 (2008), app. B. Everything else is a product of these.
const inch = 0.0254;
const foot = 12 * inch;
const yard = 3 * foot;
const pound = 0.45359237;
const poundForce = pound * standardGravity;
const minute = 60;
const hour = 60 * minute;
const day = 24 * hour;
const year = 365.25 * day;

const unit = (
  symbol: string,
  dimension: Dimension,
  factor: number,
  system: UnitSystem,
  meaning: string,
  more: { words?: readonly string[]; decimals?: number; offset?: number } = {},
): Unit => ({
  symbol,
  dimension,
  factor,
  system,
  meaning,
  words: [symbol, ...(more.words ?? [])],
  ...(more.decimals === undefined ? {} : { decimals: more.decimals }),
  ...(more.offset === undefined ? {} : { offset: more.offset }),
});

export const units: readonly Unit[] = [
  unit('mm', 'length', 0.001, 'metric', 'millimetre', { words: ['millimetre', 'millimetres', 'millimeter', 'millimeters'], decimals: 0 }),
  unit('cm', 'length', 0.01, 'metric', 'centimetre', { words: ['centimetre', 'centimetres', 'centimeter', 'centimeters'], decimals: 1 }),
  unit('m', 'length', 1, 'metric', 'metre', { words: ['metre', 'metres', 'meter', 'meters'], decimals: 2 }),
  unit('km', 'length', 1000, 'metric', 'kilometre', { words: ['kilometre', 'kilometres', 'kilometer', 'kilometers'], decimals: 3 }),
  unit('in', 'length', inch, 'us', 'inch, 25.4 mm exactly', { words: ['inch', 'inches'], decimals: 1 }),
  unit('ft', 'length', foot, 'us', 'foot, 12 in', { words: ['foot', 'feet'], decimals: 1 }),
  unit('yd', 'length', yard, 'us', 'yard, 3 ft', { words: ['yard', 'yards'], decimals: 1 }),

  unit('d', 'diameters', 1, 'both', 'diameters of the line that is spoken of', { decimals: 1 }),
  unit('fids', 'diameters', 21, 'both', 'fid lengths; a fid is 21 diameters of the line', { words: ['fid'], decimals: 2 }),

  unit('g', 'mass', 0.001, 'metric', 'gram'),
  unit('kg', 'mass', 1, 'metric', 'kilogram'),
  unit('t', 'mass', 1000, 'metric', 'tonne, 1,000 kg', { words: ['tonne', 'tonnes'] }),
  unit('lb', 'mass', pound, 'us', 'pound (avoirdupois), 0.45359237 kg exactly', { words: ['lbs'] }),
  unit('short-ton', 'mass', 2000 * pound, 'us', 'short ton, 2,000 lb', { words: ['short-tons'] }),
  unit('long-ton', 'mass', 2240 * pound, 'us', 'long ton, 2,240 lb', { words: ['long-tons'] }),

  unit('N', 'force', 1, 'metric', 'newton'),
  unit('daN', 'force', 10, 'metric', 'decanewton'),
  unit('kN', 'force', 1000, 'metric', 'kilonewton'),
  unit('kgf', 'force', standardGravity, 'metric', 'kilogram-force, 9.80665 N exactly'),
  unit('lbf', 'force', poundForce, 'us', 'pound-force, 4.4482216152605 N'),
  unit('kip', 'force', 1000 * poundForce, 'us', 'kip, 1,000 lbf', { words: ['kips'] }),

  unit('deg', 'angle', Math.PI / 180, 'both', 'degree of angle', { words: ['°', 'degree', 'degrees'], decimals: 1 }),
  unit('rad', 'angle', 1, 'both', 'radian', { decimals: 3 }),

  unit('s', 'time', 1, 'both', 'second', { words: ['second', 'seconds'], decimals: 0 }),
  unit('min', 'time', minute, 'both', 'minute', { words: ['minute', 'minutes'], decimals: 1 }),
  unit('h', 'time', hour, 'both', 'hour', { words: ['hour', 'hours'], decimals: 1 }),
  unit('days', 'time', day, 'both', 'day', { words: ['day'], decimals: 0 }),
  unit('weeks', 'time', 7 * day, 'both', 'week', { words: ['week'], decimals: 0 }),
  unit('months', 'time', year / 12, 'both', 'month, a twelfth of 365.25 days', { words: ['month'], decimals: 0 }),
  unit('years', 'time', year, 'both', 'year of 365.25 days', { words: ['year'], decimals: 1 }),

  unit('m/s', 'speed', 1, 'metric', 'metre a second', { decimals: 2 }),
  unit('m/min', 'speed', 1 / 60, 'metric', 'metre a minute', { decimals: 1 }),
  unit('km/h', 'speed', 1 / 3.6, 'metric', 'kilometre an hour', { decimals: 0 }),
  unit('ft/min', 'speed', foot / 60, 'us', 'foot a minute', { decimals: 1 }),
  unit('mph', 'speed', (5280 * foot) / hour, 'us', 'mile an hour', { decimals: 0 }),

  unit('degC', 'temperature', 1, 'metric', 'degree Celsius', { words: ['°C', 'C'], offset: 273.15, decimals: 0 }),
  unit('degF', 'temperature', 5 / 9, 'us', 'degree Fahrenheit', { words: ['°F', 'F'], offset: 459.67 * (5 / 9), decimals: 0 }),

  unit('%', 'ratio', 0.01, 'both', 'per cent', { words: ['percent'] }),

  unit('J', 'energy', 1, 'metric', 'joule'),
  unit('kJ', 'energy', 1000, 'metric', 'kilojoule'),
  unit('ft-lbf', 'energy', foot * poundForce, 'us', 'foot-pound'),

  unit('m2', 'area', 1, 'metric', 'square metre', { words: ['m²'] }),
  unit('ft2', 'area', foot * foot, 'us', 'square foot', { words: ['ft²'] }),

  unit('kPa', 'pressure', 1000, 'metric', 'kilopascal'),
  unit('Pa', 'pressure', 1, 'metric', 'pascal'),
  unit('lb/ft2', 'pressure', poundForce / (foot * foot), 'us', 'pound-force on a square foot', { words: ['lbf/ft2', 'lb/ft²'] }),

  unit('kN/m', 'stiffness', 1000, 'metric', 'kilonewton for each metre of stretch'),
  unit('lbf/ft', 'stiffness', poundForce / foot, 'us', 'pound-force for each foot of stretch'),

  unit('g/m', 'linear-density', 0.001, 'metric', 'gram a metre'),
  unit('kg/m', 'linear-density', 1, 'metric', 'kilogram a metre'),
  unit('lb/ft', 'linear-density', pound / foot, 'us', 'pound a foot'),
];

const byWord = new Map<string, Unit>(units.flatMap((u) => u.words.map((w) => [w, u] as const)));

/** The unit that a word means, exactly as written; undefined when there is none. */
export const unitNamed = (word: string): Unit | undefined => byWord.get(word);
export const unitWords = (): Iterable<string> => byWord.keys();
export const unitsOf = (dimension: Dimension): readonly Unit[] => units.filter((u) => u.dimension === dimension);

/** Words that name more than one unit: refused, with what each could mean. */
export const ambiguousUnits: Readonly<Record<string, { meanings: string; choices: readonly string[] }>> = {
  ton: { meanings: '1,000, 907 or 1,016 kg', choices: ['t', 'short-ton', 'long-ton'] },
  tons: { meanings: '1,000, 907 or 1,016 kg', choices: ['t', 'short-ton', 'long-ton'] },
  T: { meanings: 'a tonne, a tesla or a short ton', choices: ['t', 'short-ton', 'long-ton'] },
  tn: { meanings: '1,000, 907 or 1,016 kg', choices: ['t', 'short-ton', 'long-ton'] },
  oz: { meanings: 'a mass or a volume', choices: ['g', 'lb'] },
};

/** SI value of a number in a unit. */
export const toSI = (value: number, u: Unit): number => value * u.factor + (u.offset ?? 0);
/** Number in a unit of an SI value. */
export const fromSI = (si: number, u: Unit): number => (si - (u.offset ?? 0)) / u.factor;
