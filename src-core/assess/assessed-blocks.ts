import type { BoundBlock } from '../model/bound.ts';

interface Kept {
  readonly result: unknown;
  /** What the scope was asked for it. */
  readonly asked: ReadonlySet<string>;
}

/**
 * What blocks came to, so that a line that a winch, a chain and a pull speak of is worked out once. Its owner forgets a
 * block when the scope would answer differently what was asked for it.
 */
export class AssessedBlocks {
  readonly #kept = new Map<BoundBlock, Kept>();

  get(block: BoundBlock): Kept | undefined {
    return this.#kept.get(block);
  }

  keep(block: BoundBlock, kept: Kept): void {
    this.#kept.set(block, kept);
  }

  forget(block: BoundBlock): void {
    this.#kept.delete(block);
  }

  clear(): void {
    this.#kept.clear();
  }
}
