/** Edit distance with swaps of neighbours counted as one, given up (Infinity) once above `limit`. */
export function editDistance(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return Infinity;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let best = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, before[j - 2]! + 1);
      row.push(cost);
      if (cost < best) best = cost;
    }
    if (best > limit) return Infinity;
    before = last;
    last = row;
  }
  return last[b.length]!;
}

/** The candidate that was most likely meant, or undefined when none is near. */
export function didYouMean(written: string, candidates: Iterable<string>): string | undefined {
  if (written.length > 64) return undefined;
  const lower = written.toLowerCase();
  const limit = lower.length <= 4 ? 1 : lower.length <= 6 ? 2 : 3;
  let best: string | undefined;
  let bestCost = limit + 1;
  for (const candidate of candidates) {
    const other = candidate.toLowerCase();
    let cost = editDistance(lower, other, limit);
    if (cost > limit && lower.length >= 3 && other.length >= 3 && (other.startsWith(lower) || lower.startsWith(other))) cost = limit;
    if (cost < bestCost || (cost === bestCost && best !== undefined && candidate < best)) {
      best = candidate;
      bestCost = cost;
    }
  }
  return best;
}
