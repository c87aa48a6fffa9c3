import type { Place } from '../base/span.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { Kind } from '../units/dimension.ts';
import type { Unit } from '../units/unit-table.ts';
import type { BlockDefinition, NameKind, StatementDefinition } from '../vocabulary/shape.ts';
import type { DayNumber } from './day.ts';
import type { ReadonlyValues } from './values.ts';

/** A replacement of text that a finding offers. */
export interface TextEdit {
  readonly place: Place;
  readonly text: string;
}

export interface Fix {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  /** May be applied with all others at once: it changes spelling, never what is claimed about strength, reach or rating. */
  readonly mechanical?: true;
}

/** Something about the text itself that is wrong where it stands. */
export interface Problem {
  readonly code: string;
  readonly place: Place;
  readonly message: string;
  readonly help: string;
  readonly related?: readonly { readonly place: Place; readonly message: string }[];
  readonly fixes?: readonly Fix[];
}

export interface BoundQuantity {
  readonly type: 'quantity';
  readonly place: Place;
  /** SI; for `inDiameters` the number of diameters. */
  readonly value: number;
  readonly kind: Kind;
  readonly unit: Unit;
  readonly inDiameters?: true;
  /** Kilograms, when a force was written as a mass. */
  readonly mass?: number;
}

export interface BoundEnd {
  readonly distance: BoundQuantity;
  readonly end: 'inboard' | 'outboard';
}

export type BoundValue =
  | BoundQuantity
  | { readonly type: 'count'; readonly place: Place; readonly count: number }
  | { readonly type: 'word'; readonly place: Place; readonly word: string }
  | { readonly type: 'text'; readonly place: Place; readonly text: string }
  | { readonly type: 'name'; readonly place: Place; readonly name: string; readonly of: readonly NameKind[] }
  | { readonly type: 'new-name'; readonly place: Place; readonly name: string }
  | { readonly type: 'date'; readonly place: Place; readonly day: DayNumber }
  | { readonly type: 'flag'; readonly place: Place }
  /** A clause by its own key, so that its place can be shown; its values stand beside it under their own keys. */
  | { readonly type: 'clause'; readonly place: Place }
  | { readonly type: 'station'; readonly place: Place; readonly from: BoundEnd; readonly to?: BoundEnd }
  | { readonly type: 'route'; readonly place: Place; readonly links: readonly BoundLink[] };

/** A name that is used, with what it may stand for; a link of a route may stand for much. */
export interface BoundName {
  readonly name: string;
  readonly place: Place;
  readonly of: readonly NameKind[] | 'link';
}

/** One link of a route: a name with an end or a point of it, or gear given by its kind and size. */
export type BoundLink =
  | { readonly link: 'name'; readonly place: Place; readonly name: string; readonly namePlace: Place; readonly part?: { readonly name: string; readonly place: Place } }
  | { readonly link: 'sized'; readonly place: Place; readonly gear: 'shackle' | 'soft-shackle'; readonly form?: string; readonly size: BoundQuantity; readonly standard?: string };

export interface BoundStatement {
  readonly definition: StatementDefinition;
  readonly place: Place;
  /** Where it ends with the block that stands behind it by mistake. */
  readonly end: number;
  readonly values: ReadonlyValues;
  /** Set for logbook entries. */
  readonly day?: DayNumber;
  readonly dayPlace?: Place;
  /** Keys whose values stand there but cannot be used; a problem at the place says why. */
  readonly broken: ReadonlySet<string>;
}

export interface BoundBlock {
  readonly definition: BlockDefinition;
  readonly chunk: Chunk;
  readonly place: Place;
  readonly headPlace: Place;
  readonly name: string | undefined;
  readonly namePlace: Place;
  readonly header: ReadonlyValues;
  readonly statements: readonly BoundStatement[];
  /** The first statement of each head. */
  readonly firsts: ReadonlyMap<string, BoundStatement>;
  /** Every name of something else that it uses, but those of pieces in a logbook or a repair: the replay knows which of them are left. */
  readonly uses: readonly BoundName[];
  /** Heads of statements that stand in the block but were not understood at all. */
  readonly brokenHeads: ReadonlySet<string>;
}

export interface BoundUse {
  readonly path: string;
  readonly place: Place;
}

/** What one chunk says, as far as it can be told without other chunks. */
export interface BoundChunk {
  readonly chunk: Chunk;
  readonly blocks: readonly BoundBlock[];
  readonly uses: readonly BoundUse[];
  readonly problems: readonly Problem[];
  /** Reasons written to set findings aside: `# allow CODE: reason`. */
  readonly allowances: readonly Allowance[];
}

export interface Allowance {
  readonly code: string;
  readonly reason: string;
  readonly place: Place;
  /** Offset of the statement it speaks of: the next one below, or the one on its line. */
  readonly target: number;
}

export const quantityOf = (values: ReadonlyValues, key: string): BoundQuantity | undefined => {
  const value = values.get(key);
  return value?.type === 'quantity' ? value : undefined;
};
export const wordOf = (values: ReadonlyValues, key: string): string | undefined => {
  const value = values.get(key);
  return value?.type === 'word' ? value.word : undefined;
};
export const countOf = (values: ReadonlyValues, key: string): number | undefined => {
  const value = values.get(key);
  return value?.type === 'count' ? value.count : undefined;
};
export const textOf = (values: ReadonlyValues, key: string): string | undefined => {
  const value = values.get(key);
  return value?.type === 'text' ? value.text : undefined;
};
export const nameOf = (values: ReadonlyValues, key: string): { readonly name: string; readonly place: Place; readonly of: readonly NameKind[] } | undefined => {
  const value = values.get(key);
  return value?.type === 'name' ? value : undefined;
};
export const newNameOf = (values: ReadonlyValues, key: string): { readonly name: string; readonly place: Place } | undefined => {
  const value = values.get(key);
  return value?.type === 'new-name' ? value : undefined;
};
export const hasFlag = (values: ReadonlyValues, key: string): boolean => values.get(key)?.type === 'flag';
