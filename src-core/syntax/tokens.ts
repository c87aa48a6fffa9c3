import { createToken, type IToken } from 'chevrotain';
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

/** What the grammar is made of. */
export const Line = createToken({ name: 'Line' });

/** One line as the grammar takes it: its tokens, then the brace that ended it; without one a line break did. */
export class RigLine implements IToken {
  readonly tokens: readonly Token[];
  readonly brace: Token | undefined;

  constructor(tokens: readonly Token[], brace: Token | undefined) {
    this.tokens = tokens;
    this.brace = brace;
  }

  get tokenType(): typeof Line {
    return Line;
  }

  get tokenTypeIdx(): number {
    return Line.tokenTypeIdx!;
  }

  get image(): string {
    return this.tokens.map((token) => token.text).join(' ');
  }

  get startOffset(): number {
    return (this.tokens[0] ?? this.brace)!.start;
  }
}
