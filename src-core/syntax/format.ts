import { Chunk, splitChunks } from './chunk.ts';
import { lex, tokensOf, type Lexed } from './lexer.ts';
import { deepestBlock } from './parser.ts';
import type { Comment, SyntaxCode, Token } from './tree.ts';

/** Entries stay in their columns when the first long verb comes: a logbook that grows downward changes by one line. */
const verbColumn = 'inspected'.length + 2;
const indentation = 2;

/** With one of these, nobody can say which block a line belongs to: the chunk stays as it is. */
const shapeless: ReadonlySet<SyntaxCode> = new Set(['stray-brace', 'unclosed-brace', 'nested-too-deep', 'conflict-marker']);

/** One line of the result. */
interface Row {
  readonly depth: number;
  readonly tokens: readonly Token[];
  readonly comment: string | undefined;
  /** A line that is broken, that begins a page, or that cannot be cut in two: its text as it stood. */
  readonly asItWas: string | undefined;
  /** How its values are lined up with those of its neighbours. */
  readonly column: 'head' | 'verb' | undefined;
}

/** A line of the source, before it is cut into statements. */
interface SourceLine {
  readonly text: string;
  readonly tokens: readonly Token[];
  readonly comment: Comment | undefined;
  readonly broken: boolean;
}

/**
 * The text of a file in one layout: a statement a line, two spaces for each block, values in a column. Every token and
 * every comment stays, in its order; `topHeads` are the words that begin a block, as for `splitChunks`.
 */
export function formatFile(text: string, topHeads: ReadonlySet<string>): string {
  const lineBreak = /\r\n|\n|\r/.exec(text)?.[0] === '\r\n' ? '\r\n' : '\n';
  let result = '';
  for (const { chunk } of splitChunks(text.replace(/\r\n|\r/g, '\n'), topHeads)) {
    const formatted = formatChunk(chunk);
    result += result === '' ? withoutBlankStart(formatted) : formatted;
  }
  if (/^\n*$/.test(result)) result = '';
  return lineBreak === '\n' ? result : result.replaceAll('\n', lineBreak);
}

/** Blank lines before the first word of a file are not kept. */
export const withoutBlankStart = (text: string): string => text.replace(/^\n+(?=[^\n])/, '');

const formattedAs = new WeakMap<Chunk, string>();

/** The text of one chunk in the same layout. Lines end with LF. A chunk is laid out once. */
export function formatChunk(chunk: Chunk): string {
  let formatted = formattedAs.get(chunk);
  if (formatted === undefined) {
    formatted = layOut(chunk);
    // Most text is laid out already: then one copy of it is enough.
    if (formatted === chunk.text) formatted = chunk.text;
    formattedAs.set(chunk, formatted);
  }
  return formatted;
}

/** Whether every brace plainly has its other: nothing is shapeless then, and no tree has to be made to know it. */
function isPlain({ lines, sound }: Lexed): boolean {
  let depth = 0;
  for (const { brace } of lines) {
    if (brace === undefined) continue;
    depth += brace.kind === 'left-brace' ? 1 : -1;
    if (depth < 0 || depth > deepestBlock) return false;
  }
  return sound && depth === 0;
}

function layOut(chunk: Chunk): string {
  const lexed = lex(chunk.text);
  if (!isPlain(lexed) && chunk.tree.problems.some((problem) => shapeless.has(problem.code))) return chunk.text;
  const rows: (Row | 'blank')[] = [];
  let depth = 0;
  let reasonAbove = false;
  for (const line of linesOf(chunk, lexed)) {
    if (line.tokens.length === 0 && line.comment === undefined && !line.broken) {
      if (rows.at(-1) !== 'blank') rows.push('blank');
      continue;
    }
    const cut = statementsOf(line.tokens);
    // A reason that sets a finding aside speaks of a whole line: cutting the line would leave some of it out.
    const whole = cut.length > 1 && (line.comment !== undefined || reasonAbove);
    if (line.broken || whole) {
      rows.push({ depth, tokens: line.tokens, comment: undefined, asItWas: line.text, column: undefined });
      for (const token of line.tokens) depth += token.kind === 'left-brace' ? 1 : token.kind === 'right-brace' ? -1 : 0;
    } else if (cut.length === 0) rows.push({ depth, tokens: [], comment: trimmed(line.comment), asItWas: undefined, column: undefined });
    for (const [i, tokens] of line.broken || whole ? [] : cut.entries()) {
      if (tokens[0]!.kind === 'right-brace') depth--;
      rows.push({ depth, tokens, comment: i === cut.length - 1 ? trimmed(line.comment) : undefined, asItWas: undefined, column: depth === 0 ? undefined : columnOf(tokens) });
      if (tokens.at(-1)!.kind === 'left-brace') depth++;
    }
    reasonAbove = line.tokens.length === 0 && /^#\s*allow\b/.test(line.comment?.text ?? '');
  }
  return printRows(rows);
}

const trimmed = (comment: Comment | undefined): string | undefined => comment?.text.trimEnd();

function linesOf(chunk: Chunk, lexed: Lexed): SourceLine[] {
  const { comments } = lexed;
  const tokens = tokensOf(lexed);
  const lines: SourceLine[] = [];
  let at = 0;
  let [nextToken, nextComment] = [0, 0];
  while (at < chunk.text.length) {
    const found = chunk.text.indexOf('\n', at);
    const end = found < 0 ? chunk.text.length : found;
    const own: Token[] = [];
    while (nextToken < tokens.length && tokens[nextToken]!.start < end) own.push(tokens[nextToken++]!);
    const comment = nextComment < comments.length && comments[nextComment]!.start < end ? comments[nextComment++] : undefined;
    lines.push({ text: chunk.text.slice(at, end), tokens: own, comment, broken: beginsPage(chunk.text, at) || own.some((t) => t.kind === 'bad' || t.kind === 'open-string') });
    at = end + 1;
  }
  return lines;
}

/** A form feed ends what is open above it, so it stays. */
const beginsPage = (text: string, at: number): boolean => text.charCodeAt(at) === 12;

/** Cuts a line behind every opening brace and around every closing one. */
function statementsOf(tokens: readonly Token[]): Token[][] {
  const parts: Token[][] = [];
  let open = false;
  for (const token of tokens) {
    if (token.kind === 'right-brace') {
      parts.push([token]);
      open = false;
      continue;
    }
    if (open) parts.at(-1)!.push(token);
    else parts.push([token]);
    open = token.kind !== 'left-brace';
  }
  return parts;
}

function columnOf(tokens: readonly Token[]): Row['column'] {
  if (tokens.some((t) => t.kind === 'arrow' || isBrace(t))) return undefined;
  const [first, second] = tokens;
  const endsAlone = (i: number): boolean => tokens[i + 1] === undefined || between(tokens[i]!, tokens[i + 1]!, true) === ' ';
  if (first!.kind === 'date' && second?.kind === 'word') return endsAlone(1) ? 'verb' : undefined;
  return first!.kind === 'word' && endsAlone(0) ? 'head' : undefined;
}

/**
 * What stands between two tokens. Tokens that touch stay together, but for the places where the space is plainly
 * missing and setting it cannot make other tokens of the text: `10mm`, `a->b`, `main{`. `alone` says that a space
 * stands before `token`: the numbers of a broken date, which touch each other, must not become a date.
 */
function between(token: Token, next: Token, alone: boolean): string {
  if (token.end < next.start) return ' ';
  if (token.kind === 'string' || next.kind === 'string' || next.kind === 'left-brace' || token.kind === 'arrow') return ' ';
  if (next.kind === 'arrow') return token.kind === 'word' ? ' ' : '';
  if ((token.kind === 'number' || token.kind === 'fraction') && alone && (next.kind === 'word' || (next.kind === 'symbol' && next.text !== '/'))) return ' ';
  return '';
}

function spaced(tokens: readonly Token[], from: number): string {
  let text = tokens[from]?.text ?? '';
  let alone = true;
  for (let i = from + 1; i < tokens.length; i++) {
    const gap = between(tokens[i - 1]!, tokens[i]!, alone);
    text += gap + tokens[i]!.text;
    alone = gap !== '';
  }
  return text;
}

function printRows(rows: readonly (Row | 'blank')[]): string {
  const widths = columnWidths(rows);
  let text = '';
  for (const [i, row] of rows.entries()) {
    if (row === 'blank') {
      const [before, after] = [rows[i - 1], rows[i + 1]];
      const opens = before !== undefined && before !== 'blank' && before.tokens.at(-1)?.kind === 'left-brace';
      const closes = after !== undefined && after !== 'blank' && after.tokens[0]?.kind === 'right-brace';
      // A chunk ends with its last statement; blank lines behind the last one of a file are not kept.
      if (!opens && !closes && after !== undefined) text += '\n';
      continue;
    }
    text += printRow(row, widths.get(row) ?? 0) + '\n';
  }
  return text;
}

function printRow(row: Row, width: number): string {
  if (row.asItWas !== undefined) return row.asItWas;
  const comment = row.comment === undefined ? '' : (row.tokens.length > 0 ? '  ' : '') + row.comment;
  return ' '.repeat(Math.max(0, row.depth) * indentation) + printStatement(row, width) + comment;
}

function printStatement({ tokens, column }: Row, width: number): string {
  if (column === undefined) return spaced(tokens, 0);
  const start = column === 'verb' ? `${tokens[0]!.text}  ` : '';
  const head = column === 'verb' ? 1 : 0;
  const rest = spaced(tokens, head + 1);
  return start + (rest === '' ? tokens[head]!.text : tokens[head]!.text.padEnd(width) + rest);
}

const isBrace = ({ kind }: Token): boolean => kind === 'left-brace' || kind === 'right-brace';

/** Where values begin, for each run of statements that stand below each other. A comment does not end a run, a blank line does. */
function columnWidths(rows: readonly (Row | 'blank')[]): Map<Row, number> {
  const widths = new Map<Row, number>();
  let run: Row[] = [];
  const close = (): void => {
    const longest = run.reduce((most, r) => Math.max(most, r.tokens[r.column === 'verb' ? 1 : 0]!.text.length), 0);
    for (const row of run) widths.set(row, row.column === 'verb' ? Math.max(verbColumn, longest + 2) : longest + 2);
    run = [];
  };
  for (const row of rows) {
    // A line that stays as it is ends a run only where it opens or closes a block.
    if (row !== 'blank' && (row.tokens.length === 0 || (row.asItWas !== undefined && !row.tokens.some(isBrace)))) continue;
    if (row === 'blank' || row.column === undefined || (run.length > 0 && run[0]!.column !== row.column)) close();
    if (row !== 'blank' && row.column !== undefined) run.push(row);
  }
  close();
  return widths;
}
