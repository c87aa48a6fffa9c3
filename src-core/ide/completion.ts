import type { Severity } from '../assess/finding.ts';
import type { Span } from '../base/span.ts';
import { printDay, type DayNumber } from '../model/day.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { Project } from '../project.ts';
import { ruleNamed } from '../rules/all.ts';
import { whyItStays } from '../rules/why-it-stays.ts';
import type { Statement, Token } from '../syntax/tree.ts';
import type { BlockDefinition, Part, StatementDefinition } from '../vocabulary/shape.ts';
import { blockNamed, entryNamed, statementNamed, useStatement, vocabulary } from '../vocabulary/vocabulary.ts';
import { blockSnippet } from './block-snippet.ts';
import { ruleItems, valueItems } from './completion-values.ts';
import { expectedAfter } from './expected-parts.ts';
import { pathFrom } from './file-rename.ts';
import { spotAt, type Spot } from './spot.ts';
import { viewing, type Viewing } from './viewing.ts';
import { blockText, statementText } from './vocabulary-text.ts';

export type CompletionKind = 'block' | 'statement' | 'entry' | 'choice' | 'name' | 'unit' | 'value' | 'word' | 'date' | 'file';

export interface CompletionItem {
  readonly label: string;
  readonly kind: CompletionKind;
  /** What it is, in a few words beside the label. */
  readonly detail?: string | undefined;
  /** Markdown. */
  readonly documentation?: string | undefined;
  /** Text to write; the label when missing. */
  readonly insert?: string;
  /** The same with `${1:...}` places to fill in, for editors that know them. */
  readonly snippet?: string;
  /** Items come in the order of these. */
  readonly rank: number;
}

export interface Completion {
  readonly items: readonly CompletionItem[];
  /** Replaced when the word is written anew; the part before the cursor when it is written in front. */
  readonly replace: Span;
  readonly insert: Span;
}

const wordBefore = /[\p{L}\p{M}\p{N}_-]*$/u;
const wordAfter = /^[\p{L}\p{M}\p{N}_-]*/u;

/** What could be written at an offset. `today` is the date that a new entry would carry. */
export function completionsAt(project: Project, path: string, offset: number, day: DayNumber, today: DayNumber = day): Completion | undefined {
  const view = viewing(project, path, day);
  if (view === undefined) return undefined;
  const { text } = view.file;
  const spot = spotAt(view.file, offset);
  const number = spot === undefined ? undefined : numberBefore(view, spot, today);
  if (number !== undefined) return { items: number.items, insert: { start: offset - number.length, end: offset }, replace: { start: offset - number.length, end: offset } };
  const before = wordBefore.exec(text.slice(Math.max(0, offset - 80), offset))?.[0] ?? '';
  const after = wordAfter.exec(text.slice(offset, offset + 80))?.[0] ?? '';
  const start = offset - before.length;
  const insert = { start, end: offset };
  const replace = { start, end: offset + after.length };
  const items = spot === undefined ? topItems(undefined) : itemsAt(view, spot, start - (offset - spot.at), today);
  return items === undefined ? undefined : { items, insert, replace };
}

/** Behind a number that is being written nothing fits but itself with what it counts. */
function numberBefore(view: Viewing, spot: Spot, today: DayNumber): { readonly items: CompletionItem[]; readonly length: number } | undefined {
  const { token, at } = spot;
  if (token === undefined || token.end !== at || (token.kind !== 'number' && token.kind !== 'fraction') || lineTokens(spot, token.start).length === 0) return undefined;
  const items = (itemsAt(view, spot, at, today) ?? []).filter((item) => item.kind === 'unit' || item.kind === 'word').filter((item) => item.insert === undefined);
  return { items: items.map((item) => ({ ...item, label: `${token.text} ${item.label}` })), length: at - token.start };
}

/** The top-level statement of the text whose block the offset lies in. */
function blockAround(spot: Spot, at: number): Statement | undefined {
  for (const statement of spot.chunk.tree.statements) {
    const { block } = statement;
    if (block === undefined || at < block.open.end) continue;
    if (block.close === undefined || at <= block.close.start) return statement;
  }
  return undefined;
}

/** Tokens of the line before `at`, of whichever statement stands on it. */
function lineTokens(spot: Spot, at: number): readonly Token[] {
  const { text } = spot.chunk;
  const lineStart = Math.max(text.lastIndexOf('\n', at - 1), text.lastIndexOf('\r', at - 1)) + 1;
  const found: Token[] = [];
  const visit = (statements: readonly Statement[]): void => {
    for (const statement of statements) {
      if (statement.end < lineStart && statement.block === undefined) continue;
      for (const token of statement.tokens) if (lineStart <= token.start && token.end <= at) found.push(token);
      if (statement.block !== undefined) visit(statement.block.statements);
    }
  };
  visit(spot.chunk.tree.statements);
  return found;
}

function itemsAt(view: Viewing, spot: Spot, at: number, today: DayNumber): CompletionItem[] | undefined {
  const { text } = spot.chunk;
  const comment = spot.chunk.tree.comments.find((c) => c.start < spot.at && spot.at <= c.end);
  if (comment !== undefined) return allowanceItems(view, spot, comment);
  const tokens = lineTokens(spot, at);
  const open = tokens.find((t) => t.kind === 'open-string' || (t.kind === 'string' && t.start < spot.at && spot.at < t.end));
  const around = blockAround(spot, at);
  const inString = open !== undefined || stringAt(spot);
  if (around === undefined) {
    if (tokens[0]?.text === 'use' || text.slice(0, at).trimStart().startsWith('use')) return inString ? fileItems(view) : tokens.length > 1 ? [] : [{ label: '"..."', kind: 'file', detail: 'path of a rig file', snippet: '"${1:practice.rig}"', insert: '"practice.rig"', rank: 0 }];
    if (inString) return [];
    if (tokens.length === 0) return topItems(view);
    const definition = blockNamed(tokens[0]!.text);
    if (definition === undefined) return [];
    return valueItems(view, spot.block, expectedAfter(definition.header, tokens.slice(1)), { header: true, today });
  }
  if (inString) return [];
  const definition = blockNamed(around.tokens[0]?.text ?? '');
  if (definition === undefined) return [];
  const block = spot.bound.blocks.find((b) => b.place.start === around.start);
  if (tokens.length === 0) return statementItems(view, definition, block, today);
  const dated = tokens[0]!.kind === 'date';
  if (dated && tokens.length === 1) return entryHeads(definition);
  const head = dated ? tokens[1]! : tokens[0]!;
  const statement = dated ? entryNamed(definition, head.text) : statementNamed(definition, head.text);
  if (statement !== undefined) {
    const values = tokens.slice(dated ? 2 : 1);
    return valueItems(view, block, expectedAfter(partsFor(statement, values), values), { header: false, today, statement });
  }
  if (definition.headless !== undefined && !dated) return valueItems(view, block, expectedAfter(definition.headless.parts, tokens), { header: false, today });
  return [];
}

/** How bad each kind of damage is, is said in its own way: cut strands are counted, wear is a share or a word. */
const measuredBy: Readonly<Record<string, readonly string[]>> = { cut: ['strands'], pulled: ['strands'], abrasion: ['share', 'severity'], glaze: ['state'] };
const damageMeasures: ReadonlySet<string> = new Set(Object.values(measuredBy).flat());

function partsFor({ head, parts }: StatementDefinition, values: readonly Token[]): readonly Part[] {
  // A cut keeps what lies outboard of it, or drops what lies inboard.
  if (head === 'cut') return parts.filter(({ key }) => (key !== 'drop' && key !== 'keep') || !values.some(({ text }) => text === (key === 'drop' ? 'keep' : 'drop')));
  if (head !== 'damage' || values.length === 0) return parts;
  return parts.filter((part) => !damageMeasures.has(part.key) || measuredBy[values[0]!.text]?.includes(part.key) === true);
}

/** In `# allow CODE: reason`, the codes: those that are found on the line it speaks of first. */
function allowanceItems(view: Viewing, spot: Spot, comment: Span): CompletionItem[] | undefined {
  const { text } = spot.chunk;
  if (!/^#\s*allow\s+[a-z-]*$/.test(text.slice(comment.start, spot.at))) return undefined;
  const line = text.slice(0, comment.start).split(/[\r\n]/).at(-1)!;
  const from = line.trim() === '' ? comment.end : comment.start - line.length;
  const target = from + /^(?:\s|#[^\r\n]*)*/.exec(text.slice(from))![0].length;
  const end = target + /^[^\r\n]*/.exec(text.slice(target))![0].length;
  const found = view.project.findings(view.path, view.day).filter(({ place }) => place.chunk === spot.chunk && target <= place.start && place.start <= end && (place.start < comment.start || comment.end <= place.start));
  const here = new Set(found.filter((f) => mayBeSetAside(f.code, f.severity)).map((f) => f.code));
  const goesOn = /^[a-z-]*\s*:/.test(text.slice(spot.at));
  return ruleItems()
    .filter(({ label }) => here.has(label) || mayBeSetAside(label))
    .map((item) => ({ ...item, rank: item.rank - (here.has(item.label) ? 1000 : 0), ...(goesOn ? {} : { insert: `${item.label}: `, snippet: `${item.label}: \${1:reason}` }) }));
}

const mayBeSetAside = (code: string, severity?: Severity): boolean => {
  const rule = ruleNamed(code);
  return rule !== undefined && whyItStays(rule, severity) === undefined;
};

const stringAt = (spot: Spot): boolean => spot.token !== undefined && (spot.token.kind === 'string' || spot.token.kind === 'open-string') && spot.token.start < spot.at && (spot.token.kind === 'open-string' || spot.at < spot.token.end);

function topItems(view: Viewing | undefined): CompletionItem[] {
  const items: CompletionItem[] = vocabulary.map((definition, i) => ({ label: definition.head, kind: 'block', detail: definition.summary, documentation: blockText(definition), snippet: blockSnippet(definition), insert: `${definition.head} `, rank: i }));
  items.push({ label: 'use', kind: 'statement', detail: useStatement.summary, documentation: statementText(useStatement), snippet: 'use "${1:practice.rig}"', insert: 'use ', rank: view?.file.text.trim() === '' ? -1 : items.length });
  return items;
}

function fileItems(view: Viewing): CompletionItem[] {
  const others = [...view.project.paths].filter((path) => path !== view.path);
  const items = others.map((path): CompletionItem => ({ label: pathFrom(view.path, path), kind: 'file', rank: 0 }));
  return items.sort((a, b) => (a.label < b.label ? -1 : 1));
}

/** The widest head, so that values line up as the formatter would put them. */
const pad = (head: string, definitions: readonly StatementDefinition[]): string => head + ' '.repeat(Math.max(...definitions.map((d) => d.head.length)) - head.length + 2);

function statementItems(view: Viewing, definition: BlockDefinition, block: BoundBlock | undefined, today: DayNumber): CompletionItem[] {
  const present = new Set(block?.statements.filter((s) => s.day === undefined).map((s) => s.definition.head));
  const items: CompletionItem[] = [];
  const left = definition.statements.filter((s) => s.many === true || !present.has(s.head));
  left.forEach((s, i) => items.push({ label: s.head, kind: 'statement', detail: s.summary, documentation: statementText(s), insert: pad(s.head, left), rank: (s.needed === undefined ? 100 : 0) + i }));
  if (definition.entries !== undefined) items.push({ label: printDay(today), kind: 'date', detail: 'a logbook entry of today', insert: `${printDay(today)}  `, rank: 200 });
  if (definition.headless !== undefined) items.push(...valueItems(view, block, [{ expect: 'link' }], { header: false, today }).map((item) => ({ ...item, rank: item.rank - 500 })));
  return items;
}

const entryHeads = (definition: BlockDefinition): CompletionItem[] =>
  (definition.entries ?? []).map((entry, i) => ({ label: entry.head, kind: 'entry', detail: entry.summary, documentation: statementText(entry), insert: pad(entry.head, definition.entries!), rank: i }));
