import { bindChunk } from '../model/bind-chunk.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { Project } from '../project.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { Statement, Token } from '../syntax/tree.ts';
import type { ReadonlyValues } from '../model/values.ts';

export const tokenTypes = ['block', 'fact', 'entry', 'word', 'name', 'number', 'unit', 'date', 'text', 'comment', 'arrow'] as const;
export type TokenType = (typeof tokenTypes)[number];

export interface SemanticToken {
  readonly start: number;
  readonly end: number;
  readonly type: TokenType;
  readonly declares: boolean;
}

const kept = new WeakMap<Chunk, readonly SemanticToken[]>();

/** Every token with the part it plays, in order. A chunk's tokens are worked out once. */
export function semanticTokens(project: Project, path: string, within: { readonly start: number; readonly end: number } = { start: 0, end: Infinity }): SemanticToken[] {
  const tokens: SemanticToken[] = [];
  for (const { chunk, offset } of project.file(path)?.chunks ?? []) {
    if (offset + chunk.text.length < within.start || within.end < offset) continue;
    for (const token of tokensOf(chunk)) {
      const [start, end] = [offset + token.start, offset + token.end];
      if (within.start <= end && start <= within.end) tokens.push({ ...token, start, end });
    }
  }
  return tokens;
}

function tokensOf(chunk: Chunk): readonly SemanticToken[] {
  let tokens = kept.get(chunk);
  if (tokens === undefined) {
    tokens = classify(chunk);
    kept.set(chunk, tokens);
  }
  return tokens;
}

function classify(chunk: Chunk): SemanticToken[] {
  const bound = bindChunk(chunk);
  const found: SemanticToken[] = chunk.tree.comments.map((c) => ({ start: c.start, end: c.end, type: 'comment', declares: false }));
  const put = (token: Token, type: TokenType, declares = false): void => void found.push({ start: token.start, end: token.end, type, declares });
  const names = new Map<number, boolean>();
  for (const block of bound.blocks) {
    addNames(names, block.header);
    for (const s of block.statements) addNames(names, s.values);
  }
  const visit = (statement: Statement, top: boolean): void => {
    const entry = statement.tokens[0]?.kind === 'date';
    statement.tokens.forEach((token, i) => {
      switch (token.kind) {
        case 'word': {
          const declares = names.get(token.start);
          if (declares !== undefined) return put(token, 'name', declares);
          if (i === 0) return put(token, top ? 'block' : 'fact');
          if (entry && i === 1) return put(token, 'entry');
          const before = statement.tokens[i - 1]!.kind;
          return put(token, isUnit(bound.blocks, token) || (before === 'symbol' && statement.tokens[i - 1]!.text === '/') ? 'unit' : 'word');
        }
        case 'number':
        case 'fraction':
          return put(token, 'number');
        case 'date':
          return put(token, 'date');
        case 'string':
        case 'open-string':
          return put(token, 'text');
        case 'arrow':
          return put(token, 'arrow');
        case 'symbol':
          return put(token, 'unit');
        default:
          return;
      }
    });
    for (const inner of statement.block?.statements ?? []) visit(inner, false);
  };
  for (const statement of chunk.tree.statements) visit(statement, true);
  return found.sort((a, b) => a.start - b.start);
}

function addNames(names: Map<number, boolean>, values: ReadonlyValues): void {
  for (const value of values.all()) {
    if (value.type === 'name' || value.type === 'new-name') names.set(value.place.start, value.type === 'new-name');
    if (value.type === 'route') {
      for (const link of value.links) {
        if (link.link !== 'name') continue;
        names.set(link.namePlace.start, false);
        if (link.part !== undefined && link.part.name !== 'inboard' && link.part.name !== 'outboard') names.set(link.part.place.start, false);
      }
    }
  }
}

/** True for a word inside a measured value: only units stand there. */
function isUnit(blocks: readonly BoundBlock[], token: Token): boolean {
  const block = blocks.find((b) => b.place.start <= token.start && token.end <= b.place.end);
  const inValues = (values: ReadonlyValues | undefined): boolean => {
    for (const value of values?.all() ?? []) {
      if (value.type === 'quantity' && value.place.start <= token.start && token.end <= value.place.end) return true;
      if (value.type === 'station') for (const at of [value.from, value.to]) if (at !== undefined && at.distance.place.start <= token.start && token.end <= at.distance.place.end) return true;
      if (value.type === 'route') for (const link of value.links) if (link.link === 'sized' && link.size.place.start <= token.start && token.end <= link.size.place.end) return true;
    }
    return false;
  };
  return inValues(block?.header) || inValues(block?.statements.find((s) => s.place.start <= token.start && token.end <= s.place.end)?.values);
}
