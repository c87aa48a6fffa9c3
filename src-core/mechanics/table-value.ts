import { between } from '../units/amount.ts';
import type { Kind } from '../units/dimension.ts';
import type { Source } from '../trade/source.ts';
import { unknown, type Given, type Unknown } from './derivation.ts';

/** A table's figure as an input: assumed, because nobody wrote it in the file. `means` says how to replace it. */
export const tableValue = (low: number, high: number, kind: Kind, source: Source, means: string): Given => ({
  amount: between(low, high),
  kind,
  origin: { from: 'assumed', source, means },
});

/** A figure that stands in a formula or a definition and cannot be replaced. */
export const constantValue = (value: number, kind: Kind, source: Source): Given => ({
  amount: { low: value, high: value },
  kind,
  origin: { from: 'constant', source },
});

/** No source gives the figure: the result is not judged. */
export const noFigure = (key: string, says: string, help: string): Unknown => unknown({ key, says, help });
