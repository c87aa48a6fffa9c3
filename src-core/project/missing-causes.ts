import type { Finding } from '../assess/finding.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { JudgedBlock } from '../rules/judge-block.ts';
import { sayMissingFact } from '../rules/missing-fact.ts';
import type { NotJudged } from '../rules/judge.ts';

/** Checks that wait for one fact. */
interface Waiting {
  /** The first of each block. */
  readonly blocks: Map<BoundBlock, NotJudged>;
  checks: number;
  /** The block that spoke for all the last time, and those that came since. */
  spoke: BoundBlock[];
  said: readonly Finding[] | undefined;
}

/** The causes why checks of a root could not be made, one finding each. Only those that an edit touches are said anew. */
export class MissingCauses {
  readonly #byKey = new Map<string, Waiting>();

  add({ block, notJudged }: JudgedBlock): void {
    for (const missing of notJudged) {
      const { key } = missing.cause;
      let waiting = this.#byKey.get(key);
      if (waiting === undefined) this.#byKey.set(key, (waiting = { blocks: new Map(), checks: 0, spoke: [], said: undefined }));
      if (!waiting.blocks.has(block)) {
        waiting.blocks.set(block, missing);
        if (waiting.spoke.length > 0) waiting.spoke.push(block);
      }
      waiting.checks++;
      waiting.said = undefined;
    }
  }

  remove({ block, notJudged }: JudgedBlock): void {
    for (const { cause } of notJudged) {
      const waiting = this.#byKey.get(cause.key);
      if (waiting === undefined) continue;
      waiting.blocks.delete(block);
      // Once the one that spoke is gone, any other may be the first.
      if (waiting.spoke[0] === block) waiting.spoke = [];
      waiting.checks--;
      waiting.said = undefined;
      if (waiting.checks === 0) this.#byKey.delete(cause.key);
    }
  }

  clear(): void {
    this.#byKey.clear();
  }

  /** `firstOf` picks the block that stands before all others: it speaks for them. */
  *findings(firstOf: (blocks: Iterable<BoundBlock>) => BoundBlock): Generator<Finding> {
    for (const waiting of this.#byKey.values()) {
      if (waiting.said === undefined) {
        const left = waiting.spoke.filter((block) => waiting.blocks.has(block));
        const first = firstOf(left.length > 0 ? left : waiting.blocks.keys());
        waiting.spoke = [first];
        const { cause, place } = waiting.blocks.get(first)!;
        const finding = sayMissingFact(cause, place, waiting.checks);
        waiting.said = finding === undefined ? [] : [finding];
      }
      yield* waiting.said;
    }
  }
}
