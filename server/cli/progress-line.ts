/** Nobody needs to be told how far a check is that ends before they look up, nor more often than this. */
const first_ms = 500;
const between_ms = 100;

export interface ProgressLine {
  show(text: string): void;
  clear(): void;
}

/** One line of a terminal that tells how far we are and is gone before anything else is written. `now` is in milliseconds. */
export function progressLine(write: (text: string) => void, now: () => number): ProgressLine {
  const started = now();
  let shown = false;
  let last = -Infinity;
  return {
    show(text) {
      const at = now();
      if (at - started < first_ms || at - last < between_ms) return;
      last = at;
      shown = true;
      write(`\r${text}\u001b[K`);
    },
    clear() {
      if (!shown) return;
      shown = false;
      last = -Infinity;
      write('\r\u001b[K');
    },
  };
}
