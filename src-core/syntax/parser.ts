import { late } from '../base/late.ts';
import { EmbeddedActionsParser } from 'chevrotain';
import { fitted } from '../base/fitted.ts';
import { lex } from './lexer.ts';
import { Line, type RigLine } from './tokens.ts';
import type { Block, ChunkTree, Comment, Statement, SyntaxProblem, Token } from './tree.ts';

/** Deeper blocks than this mean nothing in the language; the text inside is passed over and said so. */
export const deepestBlock = 16;

/** The line of a version-control conflict: `<<<<<<<`, `|||||||`, `=======`, `>>>>>>>`. */
const conflictLine = /^(?:<{7}|\|{7}|={7}|>{7})/;

/** Methods of the library by which a grammar is written. */
const recorded = /^(?:[A-Z_]+\d?|consume|subrule|option|or|many|atLeastOne)$/;

/** The grammar: a chunk is lines. Any lines fit it, so recovery is never a matter of luck; nesting is put together afterwards. */
class RigParser extends EmbeddedActionsParser {
  constructor() {
    super([Line], { recoveryEnabled: false, skipValidations: true, maxLookahead: 1 });
    this.performSelfAnalysis();
  }

  /**
   * Ends the library's recording of the grammar. The library deletes the methods that it had put before its own to record, which takes half of
   * its start; here each gives way to its own.
   */
  protected disableRecording(): void {
    const own = this as unknown as Record<string, unknown>;
    const shared = RigParser.prototype as unknown as Record<string, unknown>;
    own['RECORDING_PHASE'] = false;
    for (const name of Object.keys(own)) if (recorded.test(name) && typeof shared[name] === 'function') own[name] = shared[name];
  }

  readonly lines = this.RULE('lines', (): RigLine[] => {
    const lines: RigLine[] = [];
    this.MANY(() => {
      lines.push(this.CONSUME(Line) as RigLine);
    });
    return lines;
  });
}

let parser: RigParser | undefined;

/** Makes the parser, which takes a few milliseconds, before there is anything to read. */
export function prepareParser(): void {
  parser ??= new RigParser();
}

interface OpenBlock {
  readonly tokens: readonly Token[];
  readonly open: Token;
  readonly statements: Statement[];
}

/**
 * Reads a chunk. Never throws: what does not fit is a problem with a place, and costs its line.
 * Takes time in proportion to the text.
 */
export function parseChunk(text: string): ChunkTree {
  const lexed = lex(text);
  parser ??= new RigParser();
  parser.input = lexed.lines as RigLine[];
  return nest(parser.lines(), lexed.comments, text, lexed.sound);
}

function nest(lines: readonly RigLine[], comments: readonly Comment[], text: string, sound: boolean): ChunkTree {
  const problems: SyntaxProblem[] = [];
  const top: Statement[] = [];
  const stack: OpenBlock[] = [];
  let skipped = 0;
  let conflict: SyntaxProblem | undefined;

  const add = (statement: Statement): void => {
    (stack.at(-1)?.statements ?? top).push(statement);
  };
  const close = (closing: Token | undefined, end: number): void => {
    const opened = stack.pop()!;
    const block: Block = { open: opened.open, statements: fitted(opened.statements), start: opened.open.start, end, ...(closing === undefined ? {} : { close: closing }) };
    add({ tokens: opened.tokens, block, start: opened.tokens[0]?.start ?? opened.open.start, end });
  };

  for (const { tokens, brace } of lines) {
    if (!sound && conflictLine.test(tokens[0]?.text ?? '')) {
      conflict ??= {
        code: 'conflict-marker',
        start: tokens[0]!.start,
        end: tokens.at(-1)!.end,
        message: 'this file holds an unfinished merge',
        help: 'keep one side and delete the lines that mark the conflict',
      };
      continue;
    }
    const usable = skipped > 0 ? [] : sound ? tokens : checkTokens(tokens, text, problems);
    const above = top.at(-1);
    if (brace?.kind === 'left-brace' && tokens.length === 0 && stack.length === 0 && above !== undefined && above.block === undefined) {
      // A brace under its head still opens the block that was meant.
      top.pop();
      stack.push({ tokens: above.tokens, open: brace, statements: [] });
      const free = comments.every((comment) => comment.end <= above.end || brace.start <= comment.start);
      problems.push({ code: 'brace-below-head', start: brace.start, end: brace.end, message: `this \`{\` stands below the head of its block`, help: 'write it at the end of the line above', ...(free ? { fix: { title: 'Move `{` to the line above', start: above.end, end: brace.end, text: ' {', mechanical: true as const } } : {}) });
      continue;
    }
    if (brace?.kind === 'left-brace') {
      if (stack.length >= deepestBlock || skipped > 0) {
        if (skipped === 0) {
          problems.push({ code: 'nested-too-deep', start: brace.start, end: brace.end, message: `blocks are nested more than ${deepestBlock} deep; what stands inside is passed over`, help: 'close a brace that was left open above' });
        }
        skipped++;
      } else stack.push({ tokens: usable, open: brace, statements: [] });
      continue;
    }
    if (usable.length > 0) add({ tokens: usable, start: usable[0]!.start, end: usable.at(-1)!.end });
    if (brace === undefined) continue;
    if (skipped > 0) skipped--;
    else if (stack.length > 0) close(brace, brace.end);
    else problems.push({ code: 'stray-brace', start: brace.start, end: brace.end, message: 'this `}` closes nothing', help: 'remove it, or open its block above' });
  }
  while (stack.length > 0) {
    const { open, tokens } = stack.at(-1)!;
    const name = tokens[0] === undefined ? 'this block' : `\`${tokens.slice(0, 2).map((t) => t.text).join(' ').slice(0, 60)}\``;
    problems.push({ code: 'unclosed-brace', start: open.start, end: open.end, message: `${name} is not closed`, help: 'add `}` on a line of its own where the block ends' });
    const inner = stack.at(-1)!.statements.at(-1);
    close(undefined, Math.min(text.length, Math.max(inner?.end ?? 0, open.end)));
  }
  if (conflict !== undefined) problems.push(conflict);
  problems.sort((a, b) => a.start - b.start);
  return { statements: fitted(top), comments: fitted(comments), problems: fitted(problems) };
}

/** What people write for an arrow. */
const arrowLike = /^(?:[-–—=]*>+|>>)$/u;

/** What stands right before a number and makes it another one: a digit of another script, or a sign that it is no more than about that. */
const beginsNumber = late(() => /[\p{N}.~≈<>≤≥±]$/u);

/** Reports what cannot be part of any statement, and gives back the rest. What is plainly an arrow is read as one. */
function checkTokens(tokens: readonly Token[], text: string, problems: SyntaxProblem[]): readonly Token[] {
  if (tokens.every((token) => token.kind !== 'open-string' && token.kind !== 'bad')) return tokens;
  const usable: Token[] = [];
  let reported = false;
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    const next = tokens[i + 1];
    if (token.kind === 'open-string') problems.push(unclosedQuote(token, text, tokens[i - 2], tokens[i - 1]));
    if (token.kind !== 'bad') {
      usable.push(token);
      continue;
    }
    const inTwo = /^[-–—=]+$/u.test(token.text) && next?.kind === 'bad' && next.text === '>';
    if (inTwo || arrowLike.test(token.text)) {
      const span = { start: token.start, end: (inTwo ? next! : token).end };
      const written = text.slice(span.start, span.end);
      if (!reported) problems.push({ code: 'stray-character', ...span, message: `\`${written.replace(/\s+/, ' ')}\` is not an arrow`, help: 'the arrow is `->`, without a space', fix: { title: 'Write `->`', ...span, text: '->', mechanical: true } });
      usable.push({ kind: 'arrow', text: written, ...span });
      if (inTwo) i++;
    } else {
      if (!reported) problems.push({ code: 'stray-character', ...(inNumber(tokens[i - 1], token, next) ?? describeBad(token)) });
      // Half of a number is another number.
      if (beginsNumber().test(token.text) && next?.start === token.end && (next.kind === 'number' || next.kind === 'fraction') && tokens[i - 1]?.end !== token.start) i++;
    }
    reported = true;
  }
  return usable;
}

function unclosedQuote(token: Token, text: string, whole: Token | undefined, before: Token | undefined): SyntaxProblem {
  const said = { code: 'unclosed-quote' as const, start: token.start, end: token.end, message: 'this text has no closing quote' };
  if (before?.end !== token.start || (before.kind !== 'number' && before.kind !== 'fraction')) return { ...said, help: 'add `"` at the end of the line' };
  return { ...said, help: `write \`in\` for inches: ${text.slice((before.kind === 'fraction' && whole?.kind === 'number' ? whole : before).start, before.end)} in`, fix: { title: 'Write `in` for inches', start: token.start, end: token.start + 1, text: ' in' } };
}

const fractions: Readonly<Record<string, string>> = { '½': '1/2', '¼': '1/4', '¾': '3/4', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };

/** A decimal comma, and a fraction in one character. */
function inNumber(before: Token | undefined, token: Token, next: Token | undefined): Omit<SyntaxProblem, 'code'> | undefined {
  const behind = before?.kind === 'number' && before.end === token.start ? before : undefined;
  const fraction = fractions[token.text];
  if (fraction !== undefined) {
    const written = behind === undefined ? fraction : ` ${fraction}`;
    return { start: token.start, end: token.end, message: `\`${token.text}\` means nothing here`, help: `write it as \`${(behind?.text ?? '') + written}\``, fix: { title: `Write \`${fraction}\``, start: token.start, end: token.end, text: written } };
  }
  if (token.text !== ',' || behind === undefined || next?.kind !== 'number' || next.start !== token.end) return undefined;
  const decimal = `${behind.text}.${next.text}`;
  return { start: token.start, end: token.end, message: '`,` means nothing here', help: `write a decimal with a point: ${decimal}`, ...(/^[+-]?\d+\.\d+$/.test(decimal) ? { fix: { title: `Write \`${decimal}\``, start: token.start, end: token.end, text: '.' } } : {}) };
}

function describeBad(token: Token): Omit<SyntaxProblem, 'code'> {
  const shown = [...token.text].slice(0, 12).join('');
  const printable = /^[\p{P}\p{S}\p{L}\p{N}\p{M}]+$/u.test(shown) ? `\`${shown}\`` : 'a character that does not show';
  const help: Record<string, string> = {
    ':': 'a statement is its head and its values with spaces between, without a colon',
    '=': 'a statement is its head and its values with spaces between, without an equals sign',
    ';': 'end a statement with the line',
    "'": 'write ft and in for feet and inches, and "..." around text',
    '“': 'write "..." with straight quotes',
    '”': 'write "..." with straight quotes',
    ',': 'write values with spaces between; a comma belongs inside a number, such as 9,500',
  };
  return { start: token.start, end: token.end, message: `${printable} means nothing here`, help: help[token.text[0]!] ?? 'remove it, or put text into "..."' };
}
