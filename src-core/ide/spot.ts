import type { Place, Span } from '../base/span.ts';
import { bindChunk } from '../model/bind-chunk.ts';
import type { BoundBlock, BoundChunk, BoundStatement, BoundValue } from '../model/bound.ts';
import type { RigFile } from '../project.ts';
import type { Chunk } from '../syntax/chunk.ts';
import type { Comment, Statement, Token } from '../syntax/tree.ts';
import type { ReadonlyValues } from '../model/values.ts';

/** What stands at an offset of a file. Offsets inside count from the chunk. */
export interface Spot {
  readonly chunk: Chunk;
  readonly bound: BoundChunk;
  readonly at: number;
  /** Where the chunk begins in its file. */
  readonly base: number;
  readonly comment: Comment | undefined;
  /** The innermost statement of the text, understood or not. */
  readonly raw: Statement | undefined;
  readonly token: Token | undefined;
  readonly block: BoundBlock | undefined;
  readonly statement: BoundStatement | undefined;
}

const holds = (span: Span, at: number): boolean => span.start <= at && at <= span.end;
const isOn = (span: Span, at: number): boolean => span.start <= at && at < span.end;

function innermost(statements: readonly Statement[], at: number): Statement | undefined {
  for (const statement of statements) {
    if (!holds(statement, at)) continue;
    if (statement.block !== undefined && statement.block.open.end <= at && at <= statement.block.end) return innermost(statement.block.statements, at);
    return statement;
  }
  return undefined;
}

export function spotAt(file: RigFile, offset: number): Spot | undefined {
  const found = file.chunkAt(offset);
  if (found === undefined) return undefined;
  const { chunk, at } = found;
  const bound = bindChunk(chunk);
  const raw = innermost(chunk.tree.statements, at);
  const tokens = raw?.tokens ?? [];
  const block = bound.blocks.find((b) => holds(b.place, at));
  return {
    chunk,
    bound,
    at,
    base: offset - at,
    comment: chunk.tree.comments.find((c) => holds(c, at)),
    raw,
    token: tokens.find((t) => isOn(t, at)) ?? tokens.find((t) => t.end === at),
    block,
    statement: block?.statements.find((s) => holds(s.place, at)),
  };
}

export interface ValueAt {
  /** Its key; a clause has the key of the clause. */
  readonly key: string;
  readonly value: BoundValue;
}

/** The smallest value that an offset of the chunk lies in. */
export function valueAt(values: ReadonlyValues, at: number): ValueAt | undefined {
  let found: ValueAt | undefined;
  let size = Infinity;
  for (const [key, value] of values) {
    const length = value.place.end - value.place.start;
    if (holds(value.place, at) && length < size) [found, size] = [{ key: key.replace(/:clause$/, ''), value }, length];
  }
  return found;
}

export const spanIn = (spot: Spot, span: Span): Span => ({ start: spot.base + span.start, end: spot.base + span.end });
export const placeHolds = (place: Place, spot: Spot): boolean => place.chunk === spot.chunk && holds(place, spot.at);
