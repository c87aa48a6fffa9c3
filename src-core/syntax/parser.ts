import { EmbeddedActionsParser, type IToken } from 'chevrotain';
import { fitted } from '../base/fitted.ts';
import type { Block, ChunkTree, Comment, Statement, SyntaxProblem, Token } from './tree.ts';
import * as T from './tokens.ts';

/** Deeper blocks than this mean nothing in the language; the text inside is passed over and said so. */
export const deepestBlock = 16;

/** The line of a version-control conflict: `<<<<<<<`, `|||||||`, `=======`, `>>>>>>>`. */
const conflictLine = /^(?:<{7}|\|{7}|={7}|>{7})/;

/** The same few words and numbers make most of any rig: each is held once. */
const knownWords = new Map<string, string>();
const mostKnown = 20_000;

function known(word: string): string {
  // A longer one is a view into its text, and would keep that.
  if (word.length > 12) return word;
  const same = knownWords.get(word);
  if (same !== undefined) return same;
  if (knownWords.size < mostKnown) knownWords.set(word, word);
  return word;
}

/** One line of text as the grammar sees it: some tokens, then what ended them. */
interface RigLine {
  readonly tokens: readonly Token[];
  readonly end: 'newline' | 'open' | 'close' | 'file';
  readonly endToken: IToken | undefined;
}

/**
 * The grammar: text is lines; a line is tokens ended by a line break, a brace or the end of the file.
 * Every token sequence fits it, so recovery is never a matter of luck; nesting is put together afterwards.
 */
class RigParser extends EmbeddedActionsParser {
  constructor() {
    super(T.parserTokens, { recoveryEnabled: false, skipValidations: true, maxLookahead: 1 });
    this.performSelfAnalysis();
  }

  readonly lines = this.RULE('lines', (): RigLine[] => {
    const lines: RigLine[] = [];
    this.MANY(() => {
      const line = this.SUBRULE(this.line);
      this.ACTION(() => lines.push(line));
    });
    return lines;
  });

  readonly line = this.RULE('line', (): RigLine => {
    const tokens: Token[] = [];
    this.MANY(() => {
      const token = this.SUBRULE(this.value);
      this.ACTION(() => tokens.push({ kind: T.tokenKind(token.tokenType), text: known(token.image), start: token.startOffset, end: token.startOffset + token.image.length }));
    });
    let end: RigLine['end'] = 'file';
    let endToken: IToken | undefined;
    this.OR([
      { ALT: () => { endToken = this.CONSUME(T.Newline); end = 'newline'; } },
      { ALT: () => { endToken = this.CONSUME(T.LeftBrace); end = 'open'; } },
      { ALT: () => { endToken = this.CONSUME(T.RightBrace); end = 'close'; } },
    ]);
    return { tokens: fitted(tokens), end, endToken };
  });

  readonly value = this.RULE('value', (): IToken =>
    this.OR([
      { ALT: () => this.CONSUME(T.Word) },
      { ALT: () => this.CONSUME(T.NumberToken) },
      { ALT: () => this.CONSUME(T.Fraction) },
      { ALT: () => this.CONSUME(T.DateToken) },
      { ALT: () => this.CONSUME(T.StringToken) },
      { ALT: () => this.CONSUME(T.OpenString) },
      { ALT: () => this.CONSUME(T.Arrow) },
      { ALT: () => this.CONSUME(T.SymbolToken) },
      { ALT: () => this.CONSUME(T.Bad) },
    ]),
  );
}

let parser: RigParser | undefined;

interface OpenBlock {
  readonly tokens: readonly Token[];
  readonly open: Token;
  readonly statements: Statement[];
}

const brace = (token: IToken, kind: 'left-brace' | 'right-brace'): Token => ({ kind, text: token.image, start: token.startOffset, end: token.startOffset + 1 });

/**
 * Reads a chunk. Never throws: what does not fit is a problem with a place, and costs its line.
 * Takes time in proportion to the text.
 */
export function parseChunk(text: string): ChunkTree {
  // A closing line break lets the grammar do without an end-of-file case.
  const closed = /[\r\n]$/.test(text) ? text : text + '\n';
  const lexed = T.rigLexer().tokenize(closed);
  parser ??= new RigParser();
  parser.input = lexed.tokens;
  const lines = parser.lines();
  const comments: Comment[] = (lexed.groups['comments'] ?? []).map((c) => ({ text: c.image, start: c.startOffset, end: c.startOffset + c.image.length }));
  return nest(lines ?? [], comments, text);
}

function nest(lines: readonly RigLine[], comments: readonly Comment[], text: string): ChunkTree {
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

  for (const { tokens, end, endToken } of lines) {
    if (conflictLine.test(tokens[0]?.text ?? '')) {
      conflict ??= {
        code: 'conflict-marker',
        start: tokens[0]!.start,
        end: tokens.at(-1)!.end,
        message: 'this file holds an unfinished merge',
        help: 'keep one side and delete the lines that mark the conflict',
      };
      continue;
    }
    const usable = skipped > 0 ? [] : checkTokens(tokens, text, problems);
    const above = top.at(-1);
    if (end === 'open' && tokens.length === 0 && stack.length === 0 && above !== undefined && above.block === undefined) {
      // A brace under its head still opens the block that was meant.
      const open = brace(endToken!, 'left-brace');
      top.pop();
      stack.push({ tokens: above.tokens, open, statements: [] });
      const free = comments.every((comment) => comment.end <= above.end || open.start <= comment.start);
      problems.push({ code: 'brace-below-head', start: open.start, end: open.end, message: `this \`{\` stands below the head of its block`, help: 'write it at the end of the line above', ...(free ? { fix: { title: 'Move `{` to the line above', start: above.end, end: open.end, text: ' {', mechanical: true as const } } : {}) });
      continue;
    }
    if (end === 'open') {
      if (stack.length >= deepestBlock || skipped > 0) {
        if (skipped === 0) {
          problems.push({ code: 'nested-too-deep', start: endToken!.startOffset, end: endToken!.startOffset + 1, message: `blocks are nested more than ${deepestBlock} deep; what stands inside is passed over`, help: 'close a brace that was left open above' });
        }
        skipped++;
      } else stack.push({ tokens: usable, open: brace(endToken!, 'left-brace'), statements: [] });
      continue;
    }
    if (usable.length > 0) add({ tokens: usable, start: usable[0]!.start, end: usable.at(-1)!.end });
    if (end !== 'close') continue;
    const closing = brace(endToken!, 'right-brace');
    if (skipped > 0) skipped--;
    else if (stack.length > 0) close(closing, closing.end);
    else problems.push({ code: 'stray-brace', start: closing.start, end: closing.end, message: 'this `}` closes nothing', help: 'remove it, or open its block above' });
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
    } else if (!reported) problems.push({ code: 'stray-character', ...(inNumber(tokens[i - 1], token, next) ?? describeBad(token)) });
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
