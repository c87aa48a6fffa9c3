import { isBeyondBorder } from './practice-border.ts';
import { unknown, type Given, type Value } from '../mechanics/derivation.ts';
import { textOf, wordOf, type BoundBlock, type BoundStatement } from '../model/bound.ts';
import type { Reader } from '../model/scope.ts';
import { practiceValue, type PracticeValue } from '../trade/built-in-practice.ts';
import { exactly } from '../units/amount.ts';

/** How a practice value is written, to replace an assumed one. */
const replaceWith = (key: string, holdsFor: string | undefined): string => `\`${key}${holdsFor === undefined ? '' : ' ' + holdsFor}\` in a \`practice\` block`;

/** What was looked up, for as long as the same blocks hold. */
const lookedUp = new WeakMap<readonly BoundBlock[], Map<string, Map<string | undefined, Value>>>();

/** Severities by rule, for as long as the same blocks hold. */
const severitiesSet = new WeakMap<readonly BoundBlock[], Map<string, string>>();

/** The values that hold in a scope: the shop's own where it wrote one, else the built-in ones, marked as assumed. */
export class Practice {
  readonly #blocks: readonly BoundBlock[];
  readonly #values: Map<string, Map<string | undefined, Value>>;

  constructor(reader: Reader) {
    this.#blocks = reader.practices();
    this.#values = lookedUp.get(this.#blocks) ?? new Map();
    lookedUp.set(this.#blocks, this.#values);
  }

  /** The statement that sets a value; the last one written wins. */
  #written(key: string, holdsFor: string | undefined): BoundStatement | undefined {
    let found: BoundStatement | undefined;
    for (const block of this.#blocks) {
      for (const statement of block.statements) {
        if (statement.definition.head !== key || statement.broken.size > 0 || isBeyondBorder(statement)) continue;
        const word = wordOf(statement.values, 'material') ?? wordOf(statement.values, 'gear') ?? wordOf(statement.values, 'wear') ?? wordOf(statement.values, 'bearing');
        if (word === undefined || word === holdsFor) found = statement;
      }
    }
    return found;
  }

  /** The value, written or assumed; unknown when there is neither. */
  value(key: string, holdsFor?: string): Value {
    let ofKey = this.#values.get(key);
    if (ofKey === undefined) this.#values.set(key, (ofKey = new Map()));
    let value = ofKey.get(holdsFor);
    if (value === undefined) ofKey.set(holdsFor, (value = this.#find(key, holdsFor)));
    return value;
  }

  #find(key: string, holdsFor: string | undefined): Value {
    const builtIn = practiceValue(key, holdsFor);
    const statement = this.#written(key, holdsFor);
    if (statement !== undefined) {
      for (const [, value] of statement.values) {
        if (value.type === 'quantity') return { amount: exactly(value.value), kind: builtIn?.kind ?? value.kind, origin: { from: 'written', place: value.place, unit: value.unit } };
        if (value.type === 'count') return { amount: exactly(value.count), kind: builtIn?.kind ?? 'count', origin: { from: 'written', place: value.place } };
      }
    }
    if (builtIn !== undefined) return assumed(builtIn);
    const what = `${key.replaceAll('-', ' ')}${holdsFor === undefined ? '' : ' for ' + holdsFor}`;
    return unknown({ key: `practice ${key} ${holdsFor ?? ''}`, says: `no figure for ${what} was found`, help: `write ${replaceWith(key, holdsFor)}, with where it comes from` });
  }

  /** The careful end of a value that always exists. */
  number(key: string, end: 'low' | 'high', holdsFor?: string): number {
    const value = this.value(key, holdsFor) as Given;
    return value.amount[end];
  }

  /** Severity that the shop has set for a rule. */
  severityOf(rule: string): string | undefined {
    let levels = severitiesSet.get(this.#blocks);
    if (levels === undefined) {
      severitiesSet.set(this.#blocks, (levels = new Map()));
      for (const { definition, values } of this.#blocks.flatMap((block) => block.statements)) {
        const [name, level] = definition.head === 'severity' ? [wordOf(values, 'rule'), wordOf(values, 'level')] : [];
        if (name !== undefined && level !== undefined) levels.set(name, level);
      }
    }
    return levels.get(rule);
  }

  /** Where a written value says it comes from. */
  noteOn(key: string, holdsFor?: string): string | undefined {
    const statement = this.#written(key, holdsFor);
    return statement === undefined ? undefined : textOf(statement.values, 'note');
  }
}

const assumed = (value: PracticeValue): Given => ({ amount: value.amount, kind: value.kind, origin: { from: 'assumed', source: value.source, means: `write ${replaceWith(value.key, value.for)} to replace it` } });

