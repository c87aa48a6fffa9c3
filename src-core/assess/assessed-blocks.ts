import type { BoundBlock } from '../model/bound.ts';

interface Kept {
  readonly result: unknown;
  /** What the scope was asked for it. */
  readonly asked: readonly string[];
}

/** So many results of all roots together make one generation; the one before it is kept as well. */
const generation = 512;
let filled = 0;
/** Those that hold something. */
let holding = new Set<AssessedBlocks>();

/**
 * What blocks came to lately, so that a line that a winch, a chain and a pull speak of is worked out once. It is worked out again
 * the same when somebody asks for it later. Its owner forgets a block when the scope would answer differently what was asked for it.
 */
export class AssessedBlocks {
  #young: Map<BoundBlock, Kept> | undefined;
  #old: Map<BoundBlock, Kept> | undefined;

  get(block: BoundBlock): Kept | undefined {
    const kept = this.#young?.get(block);
    if (kept !== undefined) return kept;
    const old = this.#old?.get(block);
    if (old !== undefined) this.keep(block, old);
    return old;
  }

  keep(block: BoundBlock, kept: Kept): void {
    this.#young ??= new Map();
    this.#young.set(block, kept);
    filled++;
    holding.add(this);
  }

  forget(block: BoundBlock): void {
    this.#young?.delete(block);
    this.#old?.delete(block);
  }

  clear(): void {
    this.#young = undefined;
    this.#old = undefined;
    holding.delete(this);
  }

  /** True while it holds anything. */
  #age(): boolean {
    this.#old = this.#young;
    this.#young = undefined;
    return this.#old !== undefined;
  }

  /** Lets go of what nobody has asked for lately. To be called between judgements: within one, a block has to stay the same thing. */
  static tidy(): void {
    if (filled < generation) return;
    filled = 0;
    const before = holding;
    holding = new Set();
    for (const blocks of before) if (blocks.#age()) holding.add(blocks);
  }
}
