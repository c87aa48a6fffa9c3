/** A half-open range of UTF-16 offsets. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

/**
 * A span inside one chunk of a file (a top-level statement with its block). Offsets count from the chunk's first
 * character, so that what was worked out for a chunk stays true when text above it moves.
 * `chunk` is the chunk's identity; only the project knows where it stands in its file.
 */
export interface Place extends Span {
  readonly chunk: object;
}

export const spanLength = (span: Span): number => span.end - span.start;
export const contains = (span: Span, offset: number): boolean => span.start <= offset && offset <= span.end;
