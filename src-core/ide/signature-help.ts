import type { Project } from '../project.ts';
import type { Part, StatementDefinition } from '../vocabulary/shape.ts';
import { blockNamed, entryNamed, statementNamed } from '../vocabulary/vocabulary.ts';
import { expectedAfter } from './expected-parts.ts';
import { spotAt } from './spot.ts';
import { partMeaning, partText } from '../papers/part-text.ts';

export interface Signature {
  readonly label: string;
  readonly summary: string;
  readonly parts: readonly { readonly start: number; readonly end: number; readonly meaning: string }[];
  /** Which part comes next; undefined when the statement is full. */
  readonly active: number | undefined;
}

/** The parts of the statement under the cursor, with the one that comes next. */
export function signatureAt(project: Project, path: string, offset: number): Signature | undefined {
  const file = project.file(path);
  const spot = file === undefined ? undefined : spotAt(file, offset);
  if (file === undefined || spot === undefined) return undefined;
  const line = file.lines.lineColumn(offset).line;
  const lineStart = file.lines.lineStart(line) - spot.base;
  // Behind the last word with a space between, no statement holds the offset any more: the line does.
  const own = spot.chunk.tree.statements.flatMap((s) => [s, ...(s.block?.statements ?? [])]).find((s) => lineStart <= s.start && s.start < spot.at && (s.tokens.at(-1)?.end ?? s.end) >= lineStart && file.lines.lineColumn(spot.base + s.start).line === line);
  if (own === undefined || own.tokens.length === 0 || (own.block !== undefined && own.block.open.start < spot.at)) return undefined;
  if (spot.chunk.tree.comments.some((c) => c.start < spot.at && spot.at <= c.end)) return undefined;
  const before = own.tokens.filter((t) => t.end < spot.at);
  const top = spot.chunk.tree.statements.includes(own);
  const owner = top ? undefined : blockNamed(spot.chunk.tree.statements.find((s) => s.block?.statements.includes(own))?.tokens[0]?.text ?? '');
  if (top) {
    const block = blockNamed(own.tokens[0]!.text);
    return block === undefined || before.length === 0 ? undefined : signature(block.head, block.summary, block.header, before.slice(1));
  }
  if (owner === undefined) return undefined;
  const dated = own.tokens[0]!.kind === 'date';
  const head = own.tokens[dated ? 1 : 0]?.text ?? '';
  const definition: StatementDefinition | undefined = dated ? entryNamed(owner, head) : statementNamed(owner, head);
  if (definition === undefined || before.length < (dated ? 2 : 1)) return undefined;
  return signature(dated ? `DATE ${definition.head}` : definition.head, definition.summary, definition.parts, before.slice(dated ? 2 : 1));
}

function signature(head: string, summary: string, parts: readonly Part[], before: Parameters<typeof expectedAfter>[1]): Signature {
  let label = head;
  const shown = parts.map((part) => {
    const start = label.length + 1;
    label += ` ${partText(part)}`;
    return { start, end: label.length, meaning: partMeaning(part) };
  });
  return { label, summary, parts: shown, active: activePart(parts, before) };
}

/** The first part that could come next, or the clause that the cursor is in. */
function activePart(parts: readonly Part[], before: Parameters<typeof expectedAfter>[1]): number | undefined {
  const expected = expectedAfter(parts, before);
  for (const one of expected) {
    if (one.expect !== 'part') continue;
    const direct = parts.indexOf(one.part);
    if (direct >= 0) return direct;
    const inside = parts.findIndex((p) => p.part === 'clause' && holds(p, one.part));
    if (inside >= 0) return inside;
  }
  const open = expected[0];
  if (open === undefined) return undefined;
  const kind = open.expect === 'unit' ? ['quantity'] : open.expect === 'noun' ? ['count'] : open.expect === 'link' || open.expect === 'arrow' || open.expect === 'link-part' ? ['route'] : ['station'];
  if (open.expect === 'unit') {
    const measured = parts.findIndex((p) => (p.part === 'quantity' && p.measure === open.measure) || (p.part === 'clause' && p.parts.some((q) => q.part === 'quantity' && q.measure === open.measure && before.some((t) => t.text === p.word))));
    if (measured >= 0) return measured;
  }
  const found = parts.findIndex((p) => kind.includes(p.part));
  return found < 0 ? undefined : found;
}

const holds = (clause: Extract<Part, { part: 'clause' }>, part: Part): boolean => clause.parts.some((inner) => inner === part || (inner.part === 'clause' && holds(inner, part)));
