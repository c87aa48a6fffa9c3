import type { Place, Span } from '../base/span.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { Token } from '../syntax/tree.ts';
import type { BlockDefinition, Part, StatementDefinition } from '../vocabulary/shape.ts';
import type { BoundName, Fix, Problem } from './bound.ts';
import { dateMeant, firstYear, readDay } from './day.ts';
import { clip, lineWords } from './describe-part.ts';
import type { Reading, Slip } from './slips.ts';
import { Values } from './values.ts';

/** Most statements are whole, and share this. */
const nothing: ReadonlySet<string> = new Set();

/** One statement while its values are read: how far that has come, and what was found. One object for each, of which many are made. */
export class StatementReading implements Reading {
  readonly values = new Values();
  readonly chunk: Chunk;
  readonly tokens: readonly Token[];
  readonly subject: string;
  readonly problems: Problem[];
  readonly words: ReadonlySet<string>;
  readonly #definition: BlockDefinition | StatementDefinition | undefined;
  #broken: Set<string> | undefined;
  /** The names among the values. */
  names: BoundName[] | undefined;
  /** Prose without quotes: whatever is wrong within it is part of the same slip. */
  prose: Span | undefined;
  /** The token that is next. */
  at = 0;
  failed = false;
  /** A word was not understood: what hangs on it may not be understood either. */
  unread = false;

  /** `subject` names the statement in messages; `definition` says how a whole one is written. */
  constructor(chunk: Chunk, tokens: readonly Token[], subject: string, parts: readonly Part[], problems: Problem[], definition?: BlockDefinition | StatementDefinition) {
    this.chunk = chunk;
    this.tokens = tokens;
    this.subject = subject;
    this.problems = problems;
    this.words = lineWords(parts);
    this.#definition = definition;
  }

  /** The parts that were written wrong or not at all. */
  get broken(): ReadonlySet<string> {
    return this.#broken ?? nothing;
  }

  /** How a whole one is written, on one line; empty when that is not known. */
  get example(): string {
    return this.#definition?.example.split('\n', 1)[0]!.replace(/ {2,}/g, ' ') ?? '';
  }

  break(key: string): void {
    this.#broken ??= new Set();
    this.#broken.add(key);
  }

  place(span: Span): Place {
    return { chunk: this.chunk, start: span.start, end: span.end };
  }

  text(span: Span): string {
    return clip(this.chunk.text.slice(span.start, span.end));
  }

  report(code: string, span: Span, message: string, help: string, fixes?: readonly Fix[]): void {
    this.problems.push({ code, place: this.place(span), message, help, ...(fixes ? { fixes } : {}) });
  }

  slip({ code, span, message, help, fix }: Slip): void {
    const fixes = fix && [{ title: fix.title, edits: [{ place: this.place(fix.span), text: fix.text }], ...(fix.mechanical ? { mechanical: true as const } : {}) }];
    this.report(code, span, message, help, fixes);
  }

  /** Passes a word, when it is the next token. */
  word(word: string): Token | undefined {
    const token = this.tokens[this.at];
    if (token?.kind !== 'word' || token.text !== word) return undefined;
    this.at++;
    return token;
  }

  /** The day of a date token, or undefined with a problem. */
  day(token: Token): number | undefined {
    const day = readDay(token.text);
    if (day !== undefined) return day;
    const meant = dateMeant(token.text);
    if (meant === undefined) this.report('bad-date', token, `${clip(token.text)} ${Number(token.text.slice(0, 4)) < firstYear ? `is before ${firstYear}, when days begin here` : 'is not a day of the calendar'}`, 'write a date as year-month-day, such as 2026-06-21');
    else this.report('bad-date', token, `${clip(token.text)} has a month or a day of one digit`, `write both with two digits: ${meant}`, [{ title: `Write \`${meant}\``, edits: [{ place: this.place(token), text: meant }], mechanical: true }]);
    return undefined;
  }
}
