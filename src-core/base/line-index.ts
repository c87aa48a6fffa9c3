export interface LineColumn {
  /** Zero-based. */
  readonly line: number;
  /** Zero-based, in UTF-16 units. */
  readonly column: number;
}

/** Finds lines in a text. Lines end at LF, CR LF or a lone CR. */
export interface LineIndex {
  readonly text: string;
  readonly lineCount: number;
  lineColumn(offset: number): LineColumn;
  /** A column beyond the line is at its end, a line beyond the text at the text's end. */
  offset(line: number, column: number): number;
  lineStart(line: number): number;
  /** Offset behind the line's last character, its line break not counted. */
  lineEnd(line: number): number;
}

/** Where lines begin behind the line breaks of a text. */
export function lineStartsIn(text: string): number[] {
  const starts: number[] = [];
  if (!text.includes('\r')) {
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
    return starts;
  }
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i);
    if (c === 10 || (c === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
  }
  return starts;
}

/** How many of the ascending numbers are at most `limit`. */
export function countUpTo(numbers: ArrayLike<number>, limit: number, length = numbers.length): number {
  let low = 0;
  let high = length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (numbers[mid]! <= limit) low = mid + 1;
    else high = mid;
  }
  return low;
}
