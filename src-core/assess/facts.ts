import type { Place } from '../base/span.ts';
import { unknown, type Cause, type Given, type Value } from '../mechanics/derivation.ts';
import { countOf, quantityOf, type BoundBlock, type BoundQuantity, type BoundStatement } from '../model/bound.ts';
import type { Lost } from '../model/line-state.ts';
import { exactly } from '../units/amount.ts';
import type { Kind } from '../units/dimension.ts';
import { unitNamed, type Unit } from '../units/unit-table.ts';
import { statementNamed } from '../vocabulary/vocabulary.ts';

export const given = (amount: number, kind: Kind, place: Place): Given => ({ amount: exactly(amount), kind, origin: { from: 'written', place } });

/** Unit in which a written quantity is answered: a load written as a mass of the US system is answered in pounds-force. */
const answerUnit = (q: BoundQuantity): Unit | undefined => (q.mass === undefined ? q.unit : q.unit.system === 'us' ? unitNamed('lbf') : undefined);

/** A written quantity as a value; diameters stay diameters. */
export const writtenValue = (q: BoundQuantity, kind: Kind = q.kind): Given => ({ amount: exactly(q.value), kind: q.inDiameters ? 'in diameters' : kind, origin: { from: 'written', place: q.place, unit: answerUnit(q) } });

export const causeOfLost = (lost: Lost, key: string): Cause => ({ key, says: lost.says, help: lost.help, place: lost.place, ...(lost.reported ? { reported: true } : {}) });

export const statementOf = (block: BoundBlock, head: string): BoundStatement | undefined => block.firsts.get(head);

/** Why a statement of a block gives no value: it is missing, or it stands there broken. */
export function missingFact(block: BoundBlock, head: string, key = head): Cause {
  const statement = statementOf(block, head);
  const name = block.name ?? block.definition.head;
  const broken = (statement !== undefined && statement.broken.has(key)) || block.brokenHeads.has(head);
  const definition = statementNamed(block.definition, head);
  const means = definitionMeaning(head, block.definition.head);
  if (broken) return { key: `${head} of ${name}`, says: `${means} of \`${name}\` cannot be read`, help: 'correct it', place: statement?.place ?? block.namePlace, reported: true };
  const found = definition?.foundOn === undefined ? '' : ` from ${definition.foundOn}`;
  return { key: `${head} of ${name}`, says: `${means} of \`${name}\` is not given`, help: `add \`${head}\`${found}`, place: block.namePlace };
}

const meanings: Readonly<Record<string, string>> = {
  breaking: 'breaking strength',
  working: 'working limit',
  wll: 'working load limit',
  rated: 'rated line pull',
  barrel: 'barrel diameter',
  width: 'drum width',
  flange: 'flange diameter',
  mass: 'mass',
  strands: 'number of strands',
};

/** What a statement gives, in words; only a winch has its width across a drum. */
export const definitionMeaning = (head: string, block: string): string => (head === 'width' && block !== 'winch' ? 'width' : (meanings[head] ?? head.replaceAll('-', ' ')));

/** A quantity that a block's statement gives, or the cause why it does not. */
export function factOf(block: BoundBlock, head: string, key = head): Value {
  const statement = statementOf(block, head);
  const q = statement === undefined ? undefined : quantityOf(statement.values, key);
  if (q !== undefined) return writtenValue(q);
  const n = statement === undefined ? undefined : countOf(statement.values, key);
  if (n !== undefined) return given(n, 'count', statement!.values.get(key)!.place);
  return unknown(missingFact(block, head, key));
}

/** As `factOf`, but undefined when the statement is simply not there. */
export function maybeFact(block: BoundBlock, head: string, key = head): Value | undefined {
  if (statementOf(block, head) === undefined && !block.brokenHeads.has(head)) return undefined;
  return factOf(block, head, key);
}
