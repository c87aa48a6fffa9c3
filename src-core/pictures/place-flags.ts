/** A label on a pole: it names a point of a drawing from a row above it. */
export interface Flag {
  readonly x: number;
  readonly width: number;
}

export interface PlacedFlag {
  /** Left end of its text. */
  readonly left: number;
  /** Zero is the row nearest the drawing. */
  readonly row: number;
}

const gap = 8;

/**
 * Rows for labels so that no text covers another, and no pole runs through a text. Undefined when they do not fit in
 * `most` rows: then they are counted in groups.
 */
export function placeFlags(flags: readonly Flag[], from: number, to: number, most: number): PlacedFlag[] | undefined {
  const rising = flags.map((_, i) => i).sort((a, b) => flags[a]!.x - flags[b]!.x || a - b);
  const middle = (from + to) / 2;
  const [near, far] = [rising.filter((i) => flags[i]!.x < middle), rising.filter((i) => flags[i]!.x >= middle)];
  // All texts to the right of their poles; else those of the right half to the left, so that none is pressed back from the edge.
  return (
    place(flags, [...rising].reverse(), () => true, from, to, most) ??
    place(flags, [...near.reverse(), ...far], (i) => flags[i]!.x < middle, from, to, most) ??
    place(flags, rising, () => false, from, to, most)
  );
}

function place(flags: readonly Flag[], order: readonly number[], isRight: (index: number) => boolean, from: number, to: number, most: number): PlacedFlag[] | undefined {
  const placed = new Map<number, PlacedFlag>();
  for (const index of order) {
    const flag = flags[index]!;
    const left = Math.max(from, Math.min(isRight(index) ? flag.x + 5 : flag.x - 5 - flag.width, to - flag.width));
    const right = left + flag.width;
    let found: number | undefined;
    for (let row = 0; row < most && found === undefined; row++) {
      const fits = [...placed].every(([k, other]) => {
        const pole = flags[k]!.x;
        const otherRight = other.left + flags[k]!.width;
        if (other.row === row && left < otherRight + gap && other.left < right + gap) return false;
        if (pole >= left - 3 && pole <= right + 3 && row <= other.row && Math.abs(pole - flag.x) > 0.5) return false;
        return !(flag.x >= other.left - 3 && flag.x <= otherRight + 3 && other.row <= row && Math.abs(pole - flag.x) > 0.5);
      });
      if (fits) found = row;
    }
    if (found === undefined) return undefined;
    placed.set(index, { left, row: found });
  }
  return flags.map((_, i) => placed.get(i)!);
}
