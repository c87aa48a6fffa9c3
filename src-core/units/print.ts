import { isNear } from '../base/compare.ts';
import type { Amount } from './amount.ts';
import { isRange } from './amount.ts';
import type { Careful, Dimension } from './dimension.ts';
import { fromSI, unitNamed, type Unit } from './unit-table.ts';

/** The units a text prefers: the ones it is written in. */
export type System = 'metric' | 'us';

export interface PrintOptions {
  /** Print in this unit when it fits the dimension. */
  readonly unit?: Unit | undefined;
  readonly system?: System | undefined;
  /** Rounds an exact number this way; a range always opens outward. */
  readonly careful?: Careful | undefined;
}

const pick = (...words: [string, ...string[]]): readonly Unit[] => words.map((w) => unitNamed(w)!);

/** Units to print in, smallest first, each used from the SI size beside it. */
const preferred: Record<Dimension, Record<System, readonly (readonly [from: number, unit: Unit])[]>> = (() => {
  const same = (units: readonly Unit[], from: readonly number[]) => {
    const list = units.map((u, i) => [from[i] ?? 0, u] as const);
    return { metric: list, us: list };
  };
  const two = (metric: readonly (readonly [number, string])[], us: readonly (readonly [number, string])[]) => ({
    metric: metric.map(([from, w]) => [from, unitNamed(w)!] as const),
    us: us.map(([from, w]) => [from, unitNamed(w)!] as const),
  });
  return {
    length: two([[0, 'mm'], [1, 'm']], [[0, 'in'], [3 * 0.3048, 'ft']]),
    diameters: same(pick('d'), [0]),
    mass: two([[0, 'kg']], [[0, 'lb']]),
    force: two([[0, 'N'], [1000, 'kN']], [[0, 'lbf']]),
    angle: same(pick('deg'), [0]),
    time: same(pick('s', 'min', 'h', 'days'), [0, 60, 3600, 86400]),
    speed: two([[0, 'm/min'], [3, 'km/h']], [[0, 'ft/min'], [3, 'mph']]),
    temperature: two([[0, 'degC']], [[0, 'degF']]),
    ratio: same(pick('%'), [0]),
    count: { metric: [], us: [] },
    energy: two([[0, 'J'], [1000, 'kJ']], [[0, 'ft-lbf']]),
    area: two([[0, 'm2']], [[0, 'ft2']]),
    pressure: two([[0, 'kPa']], [[0, 'lb/ft2']]),
    stiffness: two([[0, 'kN/m']], [[0, 'lbf/ft']]),
    'linear-density': two([[0, 'g/m']], [[0, 'lb/ft']]),
  };
})();

const group = (digits: string): string => {
  const [whole = '', fraction] = digits.split('.');
  const sign = whole.startsWith('-') ? '-' : '';
  const grouped = whole.slice(sign.length).replace(/\B(?=(\d{3})+(?!\d))/g, ',');
  return sign + grouped + (fraction === undefined ? '' : '.' + fraction);
};

/** A plain number with thousands marked, rounded to `decimals`, or to three significant digits. */
export function printNumber(value: number, careful: Careful = 'nearest', decimals?: number): string {
  if (!Number.isFinite(value)) return String(value);
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)) + 1e-12);
  const places = decimals ?? 2 - magnitude;
  const step = 10 ** Math.max(-15, Math.min(15, -places));
  const scaled = value / step;
  const nearest = Math.round(scaled);
  let rounded = nearest;
  // A value that is a whole number of steps but for rounding noise stays where it is.
  if (!(isNear(scaled, nearest) || Math.abs(scaled - nearest) < 1e-9)) {
    rounded = careful === 'up' ? Math.ceil(scaled) : careful === 'down' ? Math.floor(scaled) : nearest;
  }
  const shown = Math.max(0, Math.min(15, places));
  const text = (rounded * step).toFixed(shown);
  const trimmed = decimals === undefined && text.includes('.') && Number.isInteger(Number(text)) && Math.abs(Number(text)) >= 100 ? text.replace(/\.0+$/, '') : text;
  return group(Object.is(Number(trimmed), -0) || Number(trimmed) === 0 ? trimmed.replace('-', '') : trimmed);
}

/** The unit a value of this size is printed in. */
export function unitFor(value: number, dimension: Dimension, options: PrintOptions = {}): Unit | undefined {
  if (options.unit !== undefined && options.unit.dimension === dimension) return options.unit;
  const choices = preferred[dimension][options.system ?? 'metric'];
  let chosen: Unit | undefined = choices[0]?.[1];
  for (const [from, unit] of choices) if (Math.abs(value) >= from * (1 - 1e-9)) chosen = unit;
  return chosen;
}

const trimZeros = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/** An amount as a person reads it: one number and unit, or `low to high unit` for a range. */
export function printAmount(amount: Amount, dimension: Dimension, options: PrintOptions = {}): string {
  const unit = unitFor(Math.max(Math.abs(amount.low), Math.abs(amount.high)), dimension, options);
  const decimals = unit === undefined ? 0 : unit.decimals;
  const show = (si: number, careful: Careful): string => {
    // What is left of a difference that should be nothing is shown as nothing.
    const value = Math.abs(si) < 1e-9 && unit?.offset === undefined ? 0 : unit === undefined ? si : fromSI(si, unit);
    // A length too small for its unit's usual digits keeps three significant ones.
    const fine = decimals !== undefined && value !== 0 && Math.abs(value) < 10 ** -decimals * 10 && unit !== undefined;
    return trimZeros(printNumber(value, careful, fine ? undefined : decimals));
  };
  const suffix = unit === undefined ? '' : ' ' + unit.symbol;
  if (!isRange(amount)) return show(amount.low, options.careful ?? 'nearest') + suffix;
  const low = show(amount.low, 'down');
  const high = show(amount.high, 'up');
  return low === high ? low + suffix : `${low} to ${high}${suffix}`;
}
