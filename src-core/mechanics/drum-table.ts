import { sources } from '../trade/sources.ts';
import { exactly } from '../units/amount.ts';
import type { Kind } from '../units/dimension.ts';
import { asGiven, isUnknown, unknown, type Derived, type Given, type Known, type Unknown, type Value } from './derivation.ts';
import { outermostLayer } from './drum-geometry.ts';
import { layerLength } from './layer-length.ts';
import { layersThatFit } from './layers-that-fit.ts';
import { lengthOnPartialLayer } from './length-on-partial-layer.ts';
import { lengthThroughLayer } from './length-through-layer.ts';
import { pullByLayer } from './pull-by-layer.ts';
import { pullOnFirstLayer } from './pull-on-first-layer.ts';
import { wrapsLeft } from './wraps-left.ts';
import { wrapsPerLayer } from './wraps-per-layer.ts';

export interface DrumInputs {
  readonly barrel: Value;
  readonly width: Value;
  readonly diameter: Value;
  /** Line length on the drum when all of it is spooled. */
  readonly length: Value;
  readonly ratedPull: Value;
  readonly ratedLayer: Value;
  readonly flange?: Value | undefined;
}

export interface DrumRow {
  /** Counted from the barrel. */
  readonly layer: number;
  /** Wraps that a full layer takes. */
  readonly wraps: Derived;
  /** Line on this layer; on a partial one, what is really there. */
  readonly lengthOnLayer: Derived;
  /** Line on the layers up to this one. */
  readonly lengthThrough: Derived;
  readonly pull: Derived;
  /** True for an outermost layer that the line does not fill. */
  readonly partial: boolean;
}

export interface DrumTable {
  readonly wrapsPerLayer: Derived;
  readonly pullOnFirstLayer: Derived;
  readonly rows: readonly DrumRow[];
  /** Wraps of the whole line on the drum; unknown with the cause when the length is. */
  readonly wrapsOnDrum: Derived;
}

/** Nobody winds more layers than this; a table of more is a slip of the pen. */
const mostRows = 100;

/** A number that belongs to the method and that nobody wrote, such as the layer of a row. */
export const constantOf = (value: number, kind: Kind): Given => ({ amount: exactly(value), kind, origin: { from: 'constant', source: sources.geometry } });

/**
 * The drum, layer by layer: as many layers as the line makes, or, when its length is not known, as many as fit below the flange.
 * Unknown only when the layers themselves cannot be counted; an unknown rating makes the pulls unknown and nothing else.
 */
export function drumTable({ barrel: B, width: W, diameter: d, length: L, ratedPull: F_r, ratedLayer: r, flange: A }: DrumInputs): Known<DrumTable> {
  const wraps = wrapsPerLayer({ W, d });
  if (isUnknown(wraps)) return wraps;
  if (isUnknown(B)) return B;
  if (isUnknown(d)) return d;
  const w = asGiven(wraps);
  const first = pullOnFirstLayer({ F_r, r, B, d });
  const layers = countLayers();
  if (typeof layers !== 'number') return layers;
  if (layers > mostRows) return unknown({ key: 'drum-table: too many layers', says: `the line makes more than ${mostRows} layers on this drum`, help: 'correct the line length or the drum sizes' });

  const rows: DrumRow[] = [];
  for (let layer = 1; layer <= layers; layer++) {
    const n = constantOf(layer, 'count');
    const full = layerLength({ w, B, d, n });
    const through = lengthThroughLayer({ w, B, d, n });
    const outermost = !isUnknown(L) && layer === layers;
    const partial = outermost && !isUnknown(through) && L.amount.low < through.amount.high * (1 - 1e-9);
    const onPartial = partial ? lengthOnPartialLayer({ L, w, B, d, n }) : full;
    rows.push({
      layer,
      wraps,
      lengthOnLayer: onPartial,
      lengthThrough: through,
      pull: pullByLayer({ F_1: asGiven(first), B, d, n }),
      partial,
    });
  }
  return { wrapsPerLayer: wraps, pullOnFirstLayer: first, rows, wrapsOnDrum: wrapsLeft({ y: L, w, B, d }) };

  function countLayers(): Unknown | number {
    if (!isUnknown(L) && !isUnknown(B) && !isUnknown(d) && !isUnknown(w)) {
      if (!(L.amount.low > 0) || !(B.amount.low > 0)) return unknown({ key: 'drum-table: nothing to wind', says: 'the line length and the barrel diameter must be above zero', help: 'correct the value' });
      // The thickest line and the longest length make the most layers.
      return outermostLayer(L.amount.high, w.amount.low, B.amount.low, d.amount.high);
    }
    if (A === undefined) return isUnknown(L) ? L : unknown({ key: 'drum-table: layers', says: 'the layers on the drum cannot be counted', help: 'give the line length' });
    const fit = layersThatFit({ A, B, d, f: constantOf(0, 'needed length') });
    return isUnknown(fit) ? fit : fit.amount.low;
  }
}
