import type { BoundStatement } from '../model/bound.ts';
import { changesTheLine } from '../model/line-history.ts';
import { assessLine, type AssessedLine } from './assess-line.ts';
import { agesOutdoors } from './line-facts.ts';

/** Pulls between two changes meet the same line, so each state is worked out once. */
const states = new WeakMap<AssessedLine, Map<string, AssessedLine>>();

/**
 * The line as it was when an entry of its logbook was made: what stands above it on the same day has happened already.
 * What earlier pulls may have done to it is left out, so that each pull is judged by itself.
 */
export function lineBefore(line: AssessedLine, entry: BoundStatement): AssessedLine {
  const day = entry.day!;
  const index = line.block.statements.indexOf(entry);
  const changes = line.block.statements.map((s, i) => ({ s, i })).filter(({ s }) => s.day !== undefined && s.definition.head !== 'pulled' && changesTheLine.has(s.definition.head));
  const earlier = changes.filter(({ s, i }) => s.day! < day || (s.day === day && i < index));
  const ages = agesOutdoors(line.block);
  // Nothing has happened to it since.
  if (!ages && earlier.length === changes.length && line.overloads.size === 0) return line;
  const key = ages ? `${earlier.length} on ${day}` : `${earlier.length}`;
  const known = states.get(line) ?? new Map<string, AssessedLine>();
  states.set(line, known);
  let before = known.get(key);
  if (before === undefined) {
    before = assessLine({ ...line.block, statements: [...line.block.statements.filter((s) => s.day === undefined), ...earlier.map(({ s }) => s)] }, line.facts.practice, day);
    known.set(key, before);
  }
  return before;
}
