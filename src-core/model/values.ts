import type { BoundValue } from './bound.ts';

interface Entry {
  readonly key: string;
  value: BoundValue;
  next: Entry | undefined;
}

/**
 * What a statement says, by the keys of its parts, in the order in which it came. Most statements say one or two things: a chain of
 * them takes half the room of a hash table, and is looked through sooner than a key is hashed.
 */
export class Values implements Iterable<readonly [string, BoundValue]> {
  #first: Entry | undefined;

  #find(key: string): Entry | undefined {
    for (let entry = this.#first; entry !== undefined; entry = entry.next) if (entry.key === key) return entry;
    return undefined;
  }

  get(key: string): BoundValue | undefined {
    return this.#find(key)?.value;
  }

  has(key: string): boolean {
    return this.#find(key) !== undefined;
  }

  set(key: string, value: BoundValue): void {
    let last = this.#first;
    for (let entry = last; entry !== undefined; entry = entry.next) {
      if (entry.key === key) {
        entry.value = value;
        return;
      }
      last = entry;
    }
    const added = { key, value, next: undefined };
    if (last === undefined) this.#first = added;
    else last.next = added;
  }

  *[Symbol.iterator](): Generator<readonly [string, BoundValue]> {
    for (let entry = this.#first; entry !== undefined; entry = entry.next) yield [entry.key, entry.value];
  }

  /** The values without their keys. */
  all(): BoundValue[] {
    const all: BoundValue[] = [];
    for (let entry = this.#first; entry !== undefined; entry = entry.next) all.push(entry.value);
    return all;
  }
}

/** The same, to be read only. */
export type ReadonlyValues = Pick<Values, 'get' | 'has' | 'all' | typeof Symbol.iterator>;

/** Of a statement that is not there. */
export const noValues: ReadonlyValues = new Values();
