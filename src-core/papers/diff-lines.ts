/** A line that only one of two texts has. Numbers count from 1, in the text that has it. */
export interface LineChange {
  readonly side: 'old' | 'new';
  readonly line: number;
  readonly text: string;
}

/** Beyond so many changes two texts have little to do with each other, and the search for the fewest would take long. */
const mostChanges = 3000;

/** The fewest lines that go and come from one text to the other, in the order of the texts; what goes stands before what comes. */
export function diffLines(before: readonly string[], after: readonly string[]): LineChange[] {
  let start = 0;
  while (start < before.length && start < after.length && before[start] === after[start]) start++;
  let tail = 0;
  while (tail < before.length - start && tail < after.length - start && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  const a = before.slice(start, before.length - tail);
  const b = after.slice(start, after.length - tail);
  const kept = common(a, b);
  const changes: LineChange[] = [];
  let [i, j] = [0, 0];
  for (const [x, y] of [...kept, [a.length, b.length] as const]) {
    for (; i < x; i++) changes.push({ side: 'old', line: start + i + 1, text: a[i]! });
    for (; j < y; j++) changes.push({ side: 'new', line: start + j + 1, text: b[j]! });
    [i, j] = [x + 1, y + 1];
  }
  return changes;
}

/** Pairs of lines that stay, by the greedy search of Myers, "An O(ND) Difference Algorithm" (1986). */
function common(a: readonly string[], b: readonly string[]): (readonly [number, number])[] {
  const [n, m] = [a.length, b.length];
  if (n === 0 || m === 0) return [];
  const most = Math.min(n + m, mostChanges);
  const reach = new Int32Array(2 * most + 3);
  const middle = most + 1;
  const trace: Int32Array[] = [];
  for (let d = 0; d <= most; d++) {
    // Only diagonals that this step may read are kept.
    trace.push(reach.slice(middle - d - 1, middle + d + 2));
    for (let k = -d; k <= d; k += 2) {
      let x = k === -d || (k !== d && reach[middle + k - 1]! < reach[middle + k + 1]!) ? reach[middle + k + 1]! : reach[middle + k - 1]! + 1;
      while (x < n && x - k < m && x - k >= 0 && a[x] === b[x - k]) x++;
      reach[middle + k] = x;
      if (x >= n && x - k >= m) return walkBack(trace, n, m, d);
    }
  }
  return [];
}

function walkBack(trace: readonly Int32Array[], n: number, m: number, last: number): (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  let [x, y] = [n, m];
  for (let d = last; d > 0; d--) {
    const reach = trace[d]!;
    const at = (k: number): number => reach[k + d + 1]!;
    const k = x - y;
    const before = k === -d || (k !== d && at(k - 1) < at(k + 1)) ? k + 1 : k - 1;
    const [px, py] = [at(before), at(before) - before];
    while (x > px && y > py) pairs.push([--x, --y]);
    [x, y] = [px, py];
  }
  while (x > 0 && y > 0) pairs.push([--x, --y]);
  return pairs.reverse();
}
