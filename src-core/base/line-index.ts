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

  constructor(text: string) {
    this.text = text;
    const starts = [0];
    for (let i = 0; i < text.length; i++) {
      const c = text.charCodeAt(i);
      if (c === 10) starts.push(i + 1);
      else if (c === 13 && text.charCodeAt(i + 1) !== 10) starts.push(i + 1);
    }
    this.#starts = starts;
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
