import type { Kind } from '../units/dimension.ts';

/** The blocks of the language. */
export type BlockHead =
  | 'vehicle' | 'winch' | 'line' | 'shackle' | 'soft-shackle' | 'strap' | 'block' | 'ring' | 'hook' | 'thimble'
  | 'anchor' | 'chain' | 'pull' | 'repair' | 'kit' | 'practice';

/** Everything a name can stand for; `piece` is declared by a `cut ... keep NAME`. */
export type NameKind = BlockHead | 'piece' | 'point';

/** A measured value: what it is for, and what may be written for it. SI limits; outside them it is refused where it stands. */
export interface Measure {
  readonly kind: Kind;
  /** Written as a force, or as a mass that standard gravity turns into a force, as the trade does. */
  readonly load?: true;
  /** May also be written in diameters of the line (`72 d`, `3.5 fids`). */
  readonly diameters?: true;
  /** May also be written as a share (`20 %`), for grades. */
  readonly share?: true;
  readonly above?: number;
  readonly min?: number;
  readonly max: number;
  /** What to write instead of a number below the range, where a person may mean one. */
  readonly below?: string;
  /** For completion and messages. */
  readonly example: string;
}

/** Words that may stand at a place, each with its meaning. */
export type Choices = Readonly<Record<string, string>>;

interface Keyed {
  /** Under which the value is read; unique within its statement. */
  readonly key: string;
  readonly optional?: true;
}

export type Part =
  /** A name that is declared here. */
  | ({ readonly part: 'new-name' } & Keyed)
  /** A name declared elsewhere, as one of these. */
  | ({ readonly part: 'name'; readonly of: readonly NameKind[] } & Keyed)
  | ({ readonly part: 'quantity'; readonly measure: Measure } & Keyed)
  /** A whole number, with the noun that may or must follow it. */
  | ({ readonly part: 'count'; readonly noun?: readonly [string, ...string[]]; readonly nounNeeded?: true; readonly min: number; readonly max: number } & Keyed)
  | ({ readonly part: 'choice'; readonly of: Choices } & Keyed)
  /** Prose in quotes. */
  | ({ readonly part: 'text'; readonly meaning: string } & Keyed)
  | ({ readonly part: 'date' } & Keyed)
  /** A marking such as IP68. `pattern` is matched against the whole word. */
  | ({ readonly part: 'marking'; readonly pattern: string; readonly example: string } & Keyed)
  /** A word that says something by being there. */
  | ({ readonly part: 'flag'; readonly word: string; readonly meaning: string; readonly optional: true } & Keyed)
  /** A word with its own values behind it, in any order among the optional parts: `bury 72 d`. */
  | { readonly part: 'clause'; readonly word: string; readonly key: string; readonly meaning: string; readonly parts: readonly Part[]; readonly optional?: true }
  /** `at 8.4 m from inboard`, or `from 7.9 m to 9.1 m from inboard` when a stretch is allowed. */
  | ({ readonly part: 'station'; readonly stretch: boolean } & Keyed)
  /** `a -> b -> c`. */
  | ({ readonly part: 'route' } & Keyed);

export interface StatementDefinition {
  /** The word it begins with; for a dated entry the word behind the date. */
  readonly head: string;
  readonly summary: string;
  readonly parts: readonly Part[];
  readonly example: string;
  /** May stand more than once in its block. */
  readonly many?: true;
  /** What cannot be judged without it; absent for statements that nothing waits for. */
  readonly needed?: string;
  /** Where the figure is usually found, for the help of a missing fact. */
  readonly foundOn?: string;
  readonly since: string;
}

export interface BlockDefinition {
  readonly head: BlockHead;
  readonly summary: string;
  readonly header: readonly Part[];
  readonly statements: readonly StatementDefinition[];
  /** Dated logbook entries. */
  readonly entries?: readonly StatementDefinition[];
  /** A statement without a head of its own: the route of a chain. */
  readonly headless?: StatementDefinition;
  /** A whole block that stands on its own. */
  readonly example: string;
  readonly since: string;
}

const since = '0.1.0';

type Optional = { optional?: true };

export const newName = (): Part => ({ part: 'new-name', key: 'name' });
export const maybeNewName = (): Part => ({ part: 'new-name', key: 'name', optional: true });
export const label = (meaning = 'what it is, in words'): Part => ({ part: 'text', key: 'label', meaning, optional: true });
export const note = (meaning = 'a note'): Part => ({ part: 'text', key: 'note', meaning, optional: true });
export const name = (key: string, of: readonly NameKind[], more: Optional = {}): Part => ({ part: 'name', key, of, ...more });
export const quantity = (key: string, measure: Measure, more: Optional = {}): Part => ({ part: 'quantity', key, measure, ...more });
export const count = (key: string, min: number, max: number, noun?: readonly [string, ...string[]], more: Optional & { nounNeeded?: true } = {}): Part => ({ part: 'count', key, min, max, ...(noun ? { noun } : {}), ...more });
export const choice = (key: string, of: Choices, more: Optional = {}): Part => ({ part: 'choice', key, of, ...more });
export const flag = (word: string, meaning: string): Part => ({ part: 'flag', key: word, word, meaning, optional: true });
export const clause = (word: string, meaning: string, parts: readonly Part[], more: Optional & { key?: string } = {}): Part => ({ part: 'clause', word, key: more.key ?? word, meaning, parts, ...(more.optional ? { optional: true } : {}) });
export const maybe = (word: string, meaning: string, parts: readonly Part[], key?: string): Part => clause(word, meaning, parts, { optional: true, ...(key === undefined ? {} : { key }) });
export const at = (stretch = false, more: Optional = {}): Part => ({ part: 'station', key: 'station', stretch, ...more });

export const statement = (head: string, summary: string, parts: readonly Part[], example: string, more: Partial<Pick<StatementDefinition, 'many' | 'needed' | 'foundOn'>> = {}): StatementDefinition => ({ head, summary, parts, example, since, ...more });
export const defineBlock = (definition: Omit<BlockDefinition, 'since'>): BlockDefinition => ({ ...definition, since });
