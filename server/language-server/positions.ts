import type { LineIndex } from '../../src-core/base/line-index.ts';
import type { Span } from '../../src-core/base/span.ts';

export type PositionEncoding = 'utf-8' | 'utf-16' | 'utf-32';

export interface Position {
  readonly line: number;
  readonly character: number;
}
export interface Range {
  readonly start: Position;
  readonly end: Position;
}

/** Text inside is UTF-16; a client that speaks nothing else of its own is answered in what it prefers. */
export function chooseEncoding(offered: unknown): PositionEncoding {
  if (!Array.isArray(offered) || offered.includes('utf-16')) return 'utf-16';
  const known = offered.find((e): e is PositionEncoding => e === 'utf-32' || e === 'utf-8');
  return known ?? 'utf-16';
}

const widths: Record<PositionEncoding, (codePoint: number) => number> = {
  'utf-8': (c) => (c < 0x80 ? 1 : c < 0x800 ? 2 : c < 0x10000 ? 3 : 4),
  'utf-16': (c) => (c < 0x10000 ? 1 : 2),
  'utf-32': () => 1,
};

const isAscii = (text: string): boolean => !/[^\u0000-\u007f]/.test(text);

/** Offsets to positions and back, in the encoding that client and server agreed on. */
export class Positions {
  readonly encoding: PositionEncoding;

  constructor(encoding: PositionEncoding) {
    this.encoding = encoding;
  }

  position(lines: LineIndex, offset: number): Position {
    const { line, column } = lines.lineColumn(offset);
    if (this.encoding === 'utf-16') return { line, character: column };
    const start = lines.lineStart(line);
    return { line, character: this.#width(lines.text.slice(start, start + column)) };
  }

  range(lines: LineIndex, span: Span): Range {
    return { start: this.position(lines, span.start), end: this.position(lines, span.end) };
  }

  /** Positions beyond a line are at its end, lines beyond the file at the file's end. */
  offset(lines: LineIndex, { line, character }: Position): number {
    if (this.encoding === 'utf-16') return lines.offset(line, character);
    if (line < 0) return 0;
    if (line >= lines.lineCount) return lines.text.length;
    const start = lines.lineStart(line);
    const text = lines.text.slice(start, lines.lineEnd(line));
    if (isAscii(text)) return start + Math.max(0, Math.min(character, text.length));
    const width = widths[this.encoding];
    let units = 0;
    let at = 0;
    for (const letter of text) {
      if (units >= character) break;
      units += width(letter.codePointAt(0)!);
      at += letter.length;
    }
    return start + at;
  }

  span(lines: LineIndex, { start, end }: Range): Span {
    const [a, b] = [this.offset(lines, start), this.offset(lines, end)];
    return { start: Math.min(a, b), end: Math.max(a, b) };
  }

  #width(text: string): number {
    if (isAscii(text)) return text.length;
    const width = widths[this.encoding];
    let units = 0;
    for (const letter of text) units += width(letter.codePointAt(0)!);
    return units;
  }
}

export const isPosition = (value: unknown): value is Position => {
  const { line, character } = (value ?? {}) as Partial<Position>;
  return Number.isInteger(line) && Number.isInteger(character) && 0 <= line! && 0 <= character!;
};
export const isRange = (value: unknown): value is Range => {
  const { start, end } = (value ?? {}) as Partial<Range>;
  return isPosition(start) && isPosition(end);
};
