import type { Finding } from '../assess/finding.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { JudgedBlock } from '../rules/judge-block.ts';
import { missingFacts } from '../rules/missing-fact.ts';

/** The causes why checks of a root could not be made. Only those that an edit touches are said anew. */
export class MissingCauses {
  readonly #waiting = new Map<string, Map<BoundBlock, JudgedBlock>>();
  readonly #said = new Map<string, readonly Finding[]>();

  add(judged: JudgedBlock): void {
    for (const { cause } of judged.notJudged) {
      const waiting = this.#waiting.get(cause.key);
      if (waiting === undefined) this.#waiting.set(cause.key, new Map([[judged.block, judged]]));
      else waiting.set(judged.block, judged);
      this.#said.delete(cause.key);
    }
  }

  remove(judged: JudgedBlock): void {
    for (const { cause } of judged.notJudged) {
      const waiting = this.#waiting.get(cause.key);
      waiting?.delete(judged.block);
      if (waiting?.size === 0) this.#waiting.delete(cause.key);
      this.#said.delete(cause.key);
    }
  }

  clear(): void {
    this.#waiting.clear();
    this.#said.clear();
  }

  /** A finding for each cause; `inOrder` sorts blocks by where they stand. */
  *findings(inOrder: (blocks: JudgedBlock[]) => JudgedBlock[]): Generator<Finding> {
    for (const [key, waiting] of this.#waiting) {
      let said = this.#said.get(key);
      if (said === undefined) {
        said = missingFacts(inOrder([...waiting.values()]).map(({ notJudged }) => ({ notJudged: notJudged.filter((n) => n.cause.key === key) })));
        this.#said.set(key, said);
      }
      yield* said;
    }
  }
}
