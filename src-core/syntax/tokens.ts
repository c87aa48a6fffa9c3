import { createToken, type IToken, type TokenType } from 'chevrotain';
import type { Span } from '../base/span.ts';

export type TokenKind = 'word' | 'number' | 'fraction' | 'date' | 'string' | 'open-string' | 'arrow' | 'symbol' | 'left-brace' | 'right-brace' | 'bad';

/** A token with its place in its chunk. */
export interface Token extends Span {
  readonly kind: TokenKind;
  readonly text: string;
}

export interface Comment extends Span {
  readonly text: string;
}

/** What a statement is made of. */
export const Value = createToken({ name: 'Value' });
/** What ends a line of the grammar: a line break or a brace. */
export const LineEnd = createToken({ name: 'LineEnd' });

/** A token as the grammar takes it. What the grammar asks for is told by its kind, so that it is not held twice. */
export class RigToken implements Token, IToken {
  readonly kind: TokenKind;
  readonly text: string;
  readonly start: number;
  readonly end: number;

  constructor(kind: TokenKind, text: string, start: number, end: number) {
    this.kind = kind;
    this.text = text;
    this.start = start;
    this.end = end;
  }

  get tokenType(): TokenType {
    return this.kind === 'left-brace' || this.kind === 'right-brace' ? LineEnd : Value;
  }

  get tokenTypeIdx(): number {
    return this.tokenType.tokenTypeIdx!;
  }

  get image(): string {
    return this.text;
  }

  get startOffset(): number {
    return this.start;
  }
}

/** All line breaks are alike to the grammar. */
export const lineBreak: IToken = { tokenType: LineEnd, tokenTypeIdx: LineEnd.tokenTypeIdx!, image: '\n', startOffset: 0 };
