import type { Span } from '../base/span.ts';
import type { Comment, Token } from './tokens.ts';

export type { Comment, Token } from './tokens.ts';

/** `head value value ... [{ block }]`. The head is the first token, whatever it is. */
export interface Statement extends Span {
  /** All tokens before the brace, the head first. Empty only for a brace that stands alone. */
  readonly tokens: readonly Token[];
  readonly block?: Block;
}

export interface Block extends Span {
  readonly open: Token;
  readonly statements: readonly Statement[];
  /** Missing when the file ends, or the next top-level block begins, before the block is closed. */
  readonly close?: Token;
}

export type SyntaxCode = 'unclosed-brace' | 'stray-brace' | 'brace-below-head' | 'unclosed-quote' | 'stray-character' | 'nested-too-deep' | 'conflict-marker';

export interface SyntaxProblem extends Span {
  readonly code: SyntaxCode;
  readonly message: string;
  readonly help: string;
  /** A replacement that puts it right; `mechanical` when nothing of what is said changes. */
  readonly fix?: Span & { readonly title: string; readonly text: string; readonly mechanical?: true };
}

/** What one chunk of text says. Offsets count from the chunk's start. */
export interface ChunkTree {
  readonly statements: readonly Statement[];
  readonly comments: readonly Comment[];
  readonly problems: readonly SyntaxProblem[];
}
