import type { BoundBlock, BoundStatement } from '../model/bound.ts';
import { printDay } from '../model/day.ts';
import { definitionMeaning, given, writtenValue } from './facts.ts';
import type { SheetRows } from './sheet-rows.ts';

/** What the statements of a block say by themselves, in their order. */
export function writtenRows(rows: SheetRows, block: BoundBlock, without: ReadonlySet<string> = new Set()): void {
  for (const statement of block.statements) {
    if (statement.day === undefined && !without.has(statement.definition.head)) writtenRow(rows, statement, block.definition.head);
  }
}

function writtenRow(rows: SheetRows, statement: BoundStatement, block: string): void {
  const { head } = statement.definition;
  const numbers: { key: string; add: (label: string, says: string | undefined) => void }[] = [];
  const words: string[] = [];
  let subject = definitionMeaning(head, block);
  let id = head;
  for (const [key, value] of statement.values) {
    switch (value.type) {
      case 'new-name':
        subject += ` ${value.name}`;
        id += ` ${value.name}`;
        break;
      case 'quantity':
        numbers.push({ key, add: (label, says) => rows.add(label, writtenValue(value), { id: idOf(key), says, place: value.place }) });
        break;
      case 'count':
        numbers.push({ key, add: (label, says) => rows.add(label, given(value.count, 'count', value.place), { id: idOf(key), says, place: value.place }) });
        break;
      case 'word':
        words.push(value.word);
        break;
      case 'text':
        words.push(`“${value.text}”`);
        break;
      case 'name':
        words.push(value.name);
        break;
      case 'date':
        words.push(printDay(value.day));
        break;
      case 'flag':
        words.push(key);
        break;
    }
  }
  const says = words.length === 0 ? undefined : words.join(', ');
  const idOf = (key: string): string => (numbers.length === 1 || key === head ? id : `${id} ${key}`);
  numbers.forEach(({ key, add }, i) => add(numbers.length === 1 || key === head ? subject : `${subject} ${key}`, i === 0 ? says : undefined));
  if (numbers.length === 0) rows.words(subject, says ?? 'written, without a value', { id, place: statement.place });
}
