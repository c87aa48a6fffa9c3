import { exactly } from '../units/amount.ts';
import { kinds, type Dimension } from '../units/dimension.ts';
import { printAmount } from '../units/print.ts';
import { everydayUnits } from '../units/unit-meant.ts';
import { standardGravity, toSI, unitNamed, type Unit } from '../units/unit-table.ts';
import type { Measure } from '../vocabulary/shape.ts';
import type { BoundQuantity } from './bound.ts';

const known = new WeakMap<Measure, readonly Dimension[]>();

/** What may be written for a measure. */
export function dimensionsOf(measure: Measure): readonly Dimension[] {
  let dimensions = known.get(measure);
  if (dimensions === undefined) {
    const own = kinds[measure.kind].dimension;
    dimensions = [own, ...(measure.load ? ['mass' as const] : []), ...(measure.diameters && own !== 'diameters' ? ['diameters' as const] : []), ...(measure.share ? ['ratio' as const] : [])];
    known.set(measure, dimensions);
  }
  return dimensions;
}

type Limits = Pick<Measure, 'above' | 'min' | 'max'>;

const limitsOf = (measure: Measure, inDiameters: boolean): Limits => (inDiameters ? { above: 0, max: 1000 } : measure);

/** Which end of its range a value passes. `value` is SI, or a number of diameters. */
export function rangePassed(measure: Measure, value: number, inDiameters: boolean): 'low' | 'high' | undefined {
  const { above, min, max } = limitsOf(measure, inDiameters);
  if ((above !== undefined && value <= above) || (min !== undefined && value < min)) return 'low';
  return value <= max * (1 + 1e-12) ? undefined : 'high';
}

/** The limit that a value passes, in the unit it is written in: `be at most 2,000 m`. */
export function saidLimit(measure: Measure, bound: BoundQuantity, passed: 'low' | 'high'): string {
  const { above, min, max } = limitsOf(measure, bound.inDiameters === true);
  const dimension = bound.mass !== undefined ? 'mass' : bound.inDiameters ? 'diameters' : kinds[measure.kind].dimension;
  const show = (si: number, careful: 'up' | 'down'): string => printAmount(exactly(bound.mass === undefined ? si : si / standardGravity), dimension, { unit: bound.unit, careful });
  if (passed === 'high') return `be at most ${show(max, 'down')}`;
  return above === undefined ? `not be below ${show(min ?? 0, 'up')}` : above === 0 ? 'be above zero' : `be above ${show(above, 'up')}`;
}

/** The number as it was meant, when its thousands stand behind a point, or its decimals behind a comma. */
export function pointForComma(text: string, passed: 'low' | 'high'): { readonly from: string; readonly to: string; readonly help: string } | undefined {
  const [from, whole, rest] = (passed === 'low' ? /^([1-9]\d{0,2})\.(\d{3})(?![\d,.])/ : /^([1-9]\d{0,2}),(\d{3})(?![\d,.])/).exec(text) ?? [];
  if (from === undefined) return undefined;
  if (passed === 'low') return { from, to: `${whole},${rest}`, help: `a point begins decimals: for thousands write \`${whole},${rest}\` or \`${whole}${rest}\`` };
  return { from, to: `${whole}.${rest}`, help: `a comma marks thousands: for decimals write \`${whole}.${rest}\`` };
}

const mostOffered = 5;

/** Units that a bare number may have been meant in, the one of the example first; none in which it would be absurd. */
export function unitsForBare(measure: Measure, value: number): readonly Unit[] {
  const own = unitNamed(measure.example.replace(/^[\d.,\s]+/, ''));
  const fits = (unit: Unit): boolean => {
    const si = toSI(value, unit);
    if (unit.dimension === 'ratio' && measure.share) return rangePassed(measure, Math.atan(si), false) === undefined;
    if (unit.dimension === 'mass' && measure.load) return rangePassed(measure, si * standardGravity, false) === undefined;
    return rangePassed(measure, si, unit.dimension === 'diameters' && kinds[measure.kind].dimension !== 'diameters') === undefined;
  };
  return [...new Set([...(own === undefined ? [] : [own]), ...everydayUnits(dimensionsOf(measure))])].filter(fits).slice(0, mostOffered);
}
