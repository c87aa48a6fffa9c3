import type { BoundBlock } from '../model/bound.ts';

/** Which blocks asked a scope for a key. Most keys have one asker, who needs no set of its own. */
export class Askers {
  readonly #byKey = new Map<string, BoundBlock | Set<BoundBlock>>();

  add(key: string, block: BoundBlock): void {
    const before = this.#byKey.get(key);
    if (before === undefined) this.#byKey.set(key, block);
    else if (before instanceof Set) before.add(block);
    else if (before !== block) this.#byKey.set(key, new Set([before, block]));
  }

  remove(key: string, block: BoundBlock): void {
    const before = this.#byKey.get(key);
    if (before === block) this.#byKey.delete(key);
    else if (before instanceof Set && before.delete(block) && before.size === 0) this.#byKey.delete(key);
  }

  of(key: string): Iterable<BoundBlock> {
    const askers = this.#byKey.get(key);
    return askers === undefined ? [] : askers instanceof Set ? askers : [askers];
  }

  clear(): void {
    this.#byKey.clear();
  }
}
