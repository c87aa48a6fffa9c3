export interface LineColumn {
  /** Zero-based. */
  readonly line: number;
  /** Zero-based, in UTF-16 units. */
  readonly column: number;
}

/** Finds lines in a text. Lines end at LF, CR LF or a lone CR. */
export class LineIndex {
  readonly text: string;
  readonly #starts: number[];

  constructor(text: string, starts?: number[]) {
    this.text = text;
    this.#starts = starts ?? [0, ...lineStartsIn(text, 0, text.length)];
  }

  /** The index of `text`, which came from this one's text by replacing `start..end` by `length` characters. */
  edited(text: string, start: number, end: number, length: number): LineIndex {
    // A CR before the edit and an LF behind it join or part with it: one character more is read on each side.
    const from = Math.max(0, start - 1);
    const to = Math.min(text.length, start + length + 1);
    const delta = length - (end - start);
    const keep = countUpTo(this.#starts, from);
    const rest = countUpTo(this.#starts, to - delta);
    const starts = this.#starts.slice(0, keep);
    for (const at of lineStartsIn(text, from, to)) starts.push(at);
    for (let i = rest; i < this.#starts.length; i++) starts.push(this.#starts[i]! + delta);
    return new LineIndex(text, starts);
  }

  get lineCount(): number {
    return this.#starts.length;
  }

  lineColumn(offset: number): LineColumn {
    const at = Math.max(0, Math.min(offset, this.text.length));
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const mid = (low + high + 1) >> 1;
      if (this.#starts[mid]! <= at) low = mid;
      else high = mid - 1;
    }
    return { line: low, column: at - this.#starts[low]! };
  }

  offset(line: number, column: number): number {
    if (line < 0) return 0;
    if (line >= this.#starts.length) return this.text.length;
    return Math.max(this.#starts[line]!, Math.min(this.#starts[line]! + Math.max(0, column), this.lineEnd(line)));
  }

  lineStart(line: number): number {
    return this.#starts[Math.max(0, Math.min(line, this.#starts.length - 1))]!;
  }

  /** Offset behind the line's last character, its line break not counted. */
  lineEnd(line: number): number {
    let end = line + 1 < this.#starts.length ? this.#starts[line + 1]! : this.text.length;
    const start = this.lineStart(line);
    while (end > start && (this.text.charCodeAt(end - 1) === 10 || this.text.charCodeAt(end - 1) === 13)) end--;
    return end;
  }
}

/** Starts of lines whose break ends within `from..to` of the text: every start in (from, to]. */
function lineStartsIn(text: string, from: number, to: number): number[] {
  const starts: number[] = [];
  for (let i = from; i < to; i++) {
    const c = text.charCodeAt(i);
    if (c === 10 || (c === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
  }
  return starts;
}

/** How many of the ascending numbers are at most `limit`. */
function countUpTo(numbers: readonly number[], limit: number): number {
  let low = 0;
  let high = numbers.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (numbers[mid]! <= limit) low = mid + 1;
    else high = mid;
  }
  return low;
}
