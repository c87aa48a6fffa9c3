import { didYouMean } from '../base/did-you-mean.ts';

/** Up to here every name is compared; with more of them, only names that one slip of a finger turns into each other. */
const comparedAll = 200;
const longestName = 64;

/**
 * Finds the name that was most likely meant. Comparing every unknown name with every known one would take as long as
 * both numbers multiplied; in a large scope each name is filed under itself and under itself less any one letter, where a
 * letter that was missed, added, mistaken or swapped with its neighbour meets it again.
 */
export class NearNames {
  readonly #names = new Set<string>();
  #filed: Map<string, Set<string>> | undefined;

  add(name: string): void {
    this.#names.add(name);
    if (this.#filed !== undefined) file(this.#filed, name);
  }

  remove(name: string): void {
    this.#names.delete(name);
    if (this.#filed === undefined) return;
    for (const key of keysOf(name)) {
      const names = this.#filed.get(key);
      names?.delete(name);
      if (names?.size === 0) this.#filed.delete(key);
    }
  }

  /** `allowed` says which names may stand at the place. */
  like(written: string, allowed: (name: string) => boolean): string | undefined {
    if (written.length > longestName) return undefined;
    if (this.#names.size <= comparedAll) return didYouMean(written, [...this.#names].filter(allowed));
    if (this.#filed === undefined) {
      this.#filed = new Map();
      for (const name of this.#names) file(this.#filed, name);
    }
    const near = new Set<string>();
    for (const key of keysOf(written)) for (const name of this.#filed.get(key) ?? []) if (near.size < comparedAll && allowed(name)) near.add(name);
    return didYouMean(written, near);
  }
}

function file(filed: Map<string, Set<string>>, name: string): void {
  for (const key of keysOf(name)) {
    const names = filed.get(key);
    if (names === undefined) filed.set(key, new Set([name]));
    else names.add(name);
  }
}

function keysOf(name: string): string[] {
  if (name.length > longestName) return [];
  const lower = name.toLowerCase();
  const keys = [lower];
  for (let i = 0; i < lower.length; i++) keys.push(lower.slice(0, i) + lower.slice(i + 1));
  return keys;
}
