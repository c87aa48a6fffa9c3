import { isAbove, isBelow } from '../base/compare.ts';

/** What no other item beats; of equals the first. An item beats another that is in no measure higher and in one lower. */
export function paretoFront<T>(items: readonly T[], measures: (item: T) => readonly number[]): T[] {
  const front: { item: T; values: readonly number[] }[] = [];
  for (const item of items) {
    const values = measures(item);
    // As good in all: beaten, or the same once more.
    if (front.some((other) => !values.some((value, i) => isAbove(value, other.values[i]!)))) continue;
    for (let i = front.length - 1; i >= 0; i--) {
      if (!front[i]!.values.some((value, k) => isBelow(values[k]!, value))) front.splice(i, 1);
    }
    front.push({ item, values });
  }
  return front.map(({ item }) => item);
}
