import type { BoundStatement } from '../model/bound.ts';
import { assessLine, type AssessedLine } from './assess-line.ts';

/** The line as it was when an entry of its logbook was made: what stands above it on the same day has happened already. */
export function lineBefore(line: AssessedLine, entry: BoundStatement): AssessedLine {
  const day = entry.day!;
  const index = line.block.statements.indexOf(entry);
  const statements = line.block.statements.filter((s, i) => s.day === undefined || s.day < day || (s.day === day && i < index));
  return assessLine({ ...line.block, statements }, line.facts.practice, day);
}
